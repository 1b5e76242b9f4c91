import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type App, openApp } from '../../src/app.ts';
import type { InputOf, OperationName, OutputOf } from '../../src/contract/index.ts';
import { unsoundness } from '../../src/store/backup.ts';
import { isAsLeft, notedMarkBeside } from '../../src/store/left-as.ts';

// The day's backup of a large catalogue, taken in a thread of its own; here every catalogue counts as large.

let folder: string;
let file: string;
let now: string;
let app: App | undefined;

const open = () => {
  app = openApp({
    file,
    now: () => new Date(now),
    today: () => now.slice(0, 10),
    backup: { besideFrom: 0 },
  });
};
const call = <N extends OperationName>(name: N, input: InputOf<N>): OutputOf<N> => {
  const answer = app?.call(name, input);
  if (!answer?.ok) throw new Error(`${name}: ${answer?.error.message}`);
  return answer.value as OutputOf<N>;
};
const close = () => {
  app?.close();
  app = undefined;
};
const daily = () => call('backups.list', {}).backups.filter(({ kind }) => kind === 'daily');
const unproven = () =>
  readdirSync(join(folder, 'press backups')).filter((name) => name.endsWith('.unproven'));
const taken = () => vi.waitFor(() => expect(daily()).toHaveLength(1), 20_000);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edition-ledger-'));
  file = join(folder, 'press.ledger');
  now = '2026-03-02T10:00:00.000Z';
  open();
  call('catalogue.demo', {});
  close();
  now = '2026-03-03T09:00:00.000Z';
});
afterEach(() => {
  close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the backup of a large catalogue', () => {
  it('is taken while the catalogue answers, and is sound', async () => {
    open();
    expect(daily()).toEqual([]);
    call('works.create', { title: 'Entered meanwhile' });
    await taken();
    const [backup] = daily();
    expect(backup?.at).toBe(now);
    expect(unsoundness(backup?.path ?? '')).toBeNull();
    expect(unproven()).toEqual([]);
    expect(call('backups.preview', { name: backup?.name ?? '' }).sameStory).toBe(true);
  });

  it('is left when the catalogue is closed before, and taken the next time; the file stays as it was left', async () => {
    open();
    close();
    expect(isAsLeft(file, notedMarkBeside(file))).toBe(true);
    open();
    await taken();
    close();
    expect(isAsLeft(file, notedMarkBeside(file))).toBe(true);
    expect(unproven()).toEqual([]);
  });

  it('clears away a copy that was never proven, and none of another kind', async () => {
    open();
    await taken();
    close();
    const left = join(folder, 'press backups', 'press_2026-03-02T10-00-00-000Z_daily.ledger.unproven');
    const other = left.replace('daily', 'by-hand');
    for (const path of [left, other]) writeFileSync(path, 'half a copy');
    now = '2026-03-04T09:00:00.000Z';
    open();
    call('works.create', { title: 'Another day' });
    close();
    now = '2026-03-05T09:00:00.000Z';
    open();
    await vi.waitFor(() => expect(daily()[0]?.at).toBe(now), 20_000);
    expect(unproven()).toEqual([other.split('/').at(-1)]);
  });

  it('tells when it fails, and lets the user work', async () => {
    open();
    await taken();
    writeFileSync(join(folder, 'no folder'), 'a file');
    call('settings.update', { backupFolder: join(folder, 'no folder', 'backups') });
    close();
    now = '2026-03-04T09:00:00.000Z';
    open();
    await vi.waitFor(
      () => expect(call('catalogue.info', {}).warnings.join()).toContain('backup could not be taken'),
      20_000,
    );
    expect(call('works.create', { title: 'Still working' }).workId).toBeGreaterThan(0);
  });

  it('is out of the way of a restore', async () => {
    open();
    const made = call('backups.make', {});
    call('works.create', { title: 'Afterthought' });
    now = '2026-03-04T09:00:00.000Z';
    call('works.create', { title: 'The first change of another day' });
    call('backups.restore', { name: made.name });
    expect(call('works.list', {}).works.map(({ title }) => title)).not.toContain('Afterthought');
    expect(call('catalogue.check', {}).ok).toBe(true);
  });
});
