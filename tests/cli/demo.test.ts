import { spawn } from 'node:child_process';
import { beforeAll, describe, expect, test } from 'vitest';
import { startStore } from '../../src/thread/start.ts';
import { BIN, CAUTION, cli, here, newFile } from './cli.ts';

const file = newFile();

beforeAll(async () => {
  const made = await cli(file, 'demo');
  expect(made).toMatchObject({ code: 0, err: '' });
  expect(made.out).toContain('now holds the demo press: 4 works');
  expect(made.out).toContain(CAUTION);
});

test('the demo is loaded into an empty catalogue alone', async () => {
  const again = await here(file, ['demo']);
  expect(again).toMatchObject({ code: 1, out: '' });
  expect(again.err.trim().split('\n')).toHaveLength(1);
});

describe('status', () => {
  test('tells standings in words with the caution, aligned', async () => {
    const { code, out } = await cli(file, 'status');
    expect(code).toBe(0);
    expect(out).toMatch(/^Halyard & Fen.* on \d{4}-\d\d-\d\d$/m);
    expect(out).toMatch(/^Formats +planned 4, committed 0, .*live 3, .*retired 1/m);
    expect(out).toMatch(/^live +979-8-969999-01-5 +The Salt Almanac +Paperback$/m);
    expect(out.trimEnd().endsWith(CAUTION)).toBe(true);
    const columns = out.split('\n').map((line) => line.indexOf('979-8-'));
    expect(new Set(columns.filter((column) => column >= 0)).size).toBe(1);
  });

  test('answers for a past day', async () => {
    const past = JSON.parse((await here(file, ['status', '--json', '--as-of', '2021-06-01'])).out);
    expect(past.asOf).toBe('2021-06-01');
    const standing = (isbn: string) =>
      past.list.find((row: { hyphenated: string }) => row.hyphenated === isbn)?.standing;
    expect(standing('979-8-969999-00-8')).toBe('live');
    expect(standing('979-8-969999-03-9')).toBeUndefined();
  });

  test('a day that is none, or none of the past, is refused', async () => {
    const none = await here(file, ['status', '--as-of', '2021-02-30']);
    expect(none).toEqual({
      code: 2,
      out: '',
      err: 'Write the date as YYYY-MM-DD, for example 2026-11-25; the form is: edition-ledger status [--as-of DATE]\n',
    });
    expect(await here(file, ['status', '--as-of', '2999-01-01'])).toMatchObject({ code: 1, out: '' });
  });
});

describe('audit', () => {
  test('is clean on the demo and carries the caution once, as text and as CSV', async () => {
    for (const form of [[], ['--csv']]) {
      const { code, out, err } = await here(file, ['audit', ...form]);
      expect([code, err]).toEqual([0, '']);
      expect(out.split(CAUTION)).toHaveLength(2);
    }
  });

  test('as JSON it is the operation’s own output, with the caution on stderr', async () => {
    const { out, err } = await here(file, ['audit', '--json']);
    expect(JSON.parse(out)).toMatchObject({ demo: true, fileName: 'catalogue.ledger' });
    expect(err.trim()).toBe(CAUTION);
  });

  test('ends with 2 when it cannot run', async () => {
    expect(await here(newFile(), ['audit'])).toMatchObject({ code: 2, out: '' });
    expect(await here(file, ['audit', '--as-of', '2999-01-01'])).toMatchObject({ code: 2, out: '' });
  });
});

test('blocks are listed with what is left', async () => {
  const { out } = await here(file, ['block', 'list']);
  expect(out).toMatch(/^979-8-969999 +Demo block +100 +93 +0 +7 +0 +979-8-969999-07-7 +2015-02-02$/m);
  expect(out).toContain(CAUTION);
});

test('the journal is listed newest first, cut by --count and by --work', async () => {
  const { entries } = JSON.parse((await here(file, ['journal', '--json', '--count', '3'])).out);
  expect(entries).toHaveLength(3);
  expect(entries[0].seq).toBeGreaterThan(entries[1].seq);
  const text = (await here(file, ['journal', '--count', '3'])).out;
  expect(text.split('\n')[0]).toMatch(new RegExp(`^${entries[0].seq} .*catalogue\\.demo`));
  expect(text).toContain('There are more');
  const work = JSON.parse((await here(file, ['journal', '--json', '--work', '1', '--count', '1000'])).out);
  expect(new Set(work.entries.map((entry: { workId: number }) => entry.workId))).toEqual(new Set([1]));
});

test('a change shows what stood before and after', async () => {
  const moved = newFile();
  await here(moved, ['call', 'settings.update'], { catalogueName: 'First' });
  await here(moved, ['call', 'settings.update'], { catalogueName: 'Second' });
  expect((await here(moved, ['journal', '--count', '1'])).out).toMatch(/First.* → .*Second/);
});

test('the file is found sound, and the chain’s head is told', async () => {
  const { code, out } = await here(file, ['check']);
  expect(code).toBe(0);
  expect(out).toMatch(/Journal head: [0-9a-f]{64}/);
});

test('a reader that goes away early ends the command without a word', async () => {
  const child = spawn(process.execPath, [BIN, 'call', '--list', '--json']);
  let err = '';
  child.stderr.on('data', (part: Buffer) => (err += part.toString()));
  child.stdout.once('data', () => child.stdout.destroy());
  const code = await new Promise((resolve) => child.on('close', resolve));
  expect([code, err]).toEqual([0, '']);
});

test('reading works while another process holds the file for writing; writing is refused and names the holder', async () => {
  const store = await startStore({ file });
  try {
    expect(await cli(file, 'status')).toMatchObject({ code: 0 });
    const write = await cli(file, 'block', 'add', '979-8-969998', '--json');
    expect(write).toMatchObject({ code: 2, out: '' });
    expect(JSON.parse(write.err)).toMatchObject({ code: 'CATALOGUE_IN_USE' });
    expect(write.err).toContain(String(process.pid));
  } finally {
    await store.close();
  }
});
