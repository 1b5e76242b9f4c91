import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { CAUTION, here, newFile } from './cli.ts';

describe('report', () => {
  const file = newFile();
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-report-'));
  const at = (name: string) => join(folder, name);
  beforeAll(async () => {
    expect((await here(file, ['demo'])).code).toBe(0);
  });

  test('writes every form it is asked for and says so', async () => {
    const told = await here(file, [
      ...['report', '--pdf', at('r.pdf'), '--html', at('r.html'), '--csv', at('r.csv')],
      ...['--text', at('r.txt'), '--paper', 'Letter'],
    ]);
    expect(told.code).toBe(0);
    for (const name of ['r.pdf', 'r.html', 'r.csv', 'r.txt'])
      expect(told.out).toContain(`Written: ${at(name)}`);
    expect(readFileSync(at('r.pdf')).subarray(0, 5).toString('latin1')).toBe('%PDF-');
    expect(readFileSync(at('r.html'), 'utf8')).toMatch(/^<!doctype html>/i);
    for (const name of ['r.html', 'r.csv', 'r.txt']) {
      const text = readFileSync(at(name), 'utf8');
      expect(text).toContain(CAUTION);
      expect(text).toMatch(/rule set [0-9a-f]{8}/);
      expect(text).toMatch(/[0-9a-f]{64}/);
      expect(text).toContain('979-8-969999-01-5');
    }
  });

  test('speaks of a past day', async () => {
    const told = await here(file, ['report', '--text', at('then.txt'), '--as-of', '2020-01-01']);
    expect(told.code).toBe(0);
    expect(readFileSync(at('then.txt'), 'utf8')).toContain('Speaks of       2020-01-01, a past day');
  });

  test('refuses to write nothing, another paper and a day that is none', async () => {
    for (const args of [
      [],
      ['--pdf', at('x.pdf'), '--paper', 'A3'],
      ['--csv', at('x.csv'), '--as-of', 'May'],
    ]) {
      const told = await here(file, ['report', ...args]);
      expect(told.code).not.toBe(0);
      expect(told.err.length).toBeGreaterThan(10);
    }
  });
});
