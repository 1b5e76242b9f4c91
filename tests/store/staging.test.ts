import { existsSync, mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { Staging } from '../../src/store/staging.ts';

let parent: string;
beforeEach(() => {
  parent = mkdtempSync(join(tmpdir(), 'edition-ledger-'));
  vi.stubEnv('TMPDIR', parent);
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(parent, { recursive: true });
});

/** No process has this number: it is beyond the largest that Linux gives out (proc(5), pid_max). */
const GONE = 4_194_305;

function folder(owner: number, hours: number): string {
  const path = join(parent, `edition-ledger-files-${owner}-abc`);
  mkdirSync(path);
  writeFileSync(join(path, 'a'), 'left behind');
  const then = Date.now() / 1000 - hours * 3_600;
  utimesSync(path, then, then);
  return path;
}

it('throws away what an ended program left a day ago, and nothing of a running one', () => {
  const old = folder(GONE, 25);
  const running = folder(process.ppid, 25);
  const other = join(parent, 'edition-ledger-other');
  mkdirSync(other);
  utimesSync(other, 0, 0);
  const files = new Staging();
  const id = files.begin('list.csv');
  expect([old, running, other].map((path) => existsSync(path))).toEqual([false, true, true]);
  expect(files.size(id)).toBe(0);
  files.close();
});

it('leaves what was left less than a day ago', () => {
  const young = folder(GONE, 23);
  const files = new Staging();
  files.begin('list.csv');
  expect(existsSync(young)).toBe(true);
  files.close();
});
