import { spawn } from 'node:child_process';
import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { BIN, here, newFile } from './cli.ts';

test('a catalogue goes out as a table and comes back without a change', async () => {
  const file = newFile();
  const sheet = join(dirname(file), 'formats.xlsx');
  await here(file, ['demo']);
  const out = await here(file, ['export', sheet]);
  expect(out).toMatchObject({ code: 0 });
  expect(out.out).toContain('8 records');
  expect(await here(file, ['export', sheet])).toMatchObject({ code: 2 });
  const back = await here(file, ['import', sheet]);
  expect(back.code).toBe(0);
  expect(back.out).toContain('0 new, 0 changed, 8 unchanged, 0 refused');
});

test('a table with a wrong row is recorded not at all, or without it when that is asked for', async () => {
  const file = newFile();
  const sheet = join(dirname(file), 'list.csv');
  const refused = join(dirname(file), 'refused.csv');
  writeFileSync(sheet, 'Title,Form,Out\nMarsh Bells,paperback,03/04/2027\nTide Tables,parchment,\n');
  const columns = ['--columns', 'Out=publicationDate', '--dates', 'dmy'];
  const none = await here(file, ['import', sheet, ...columns, '--refused', refused]);
  expect(none.code).toBe(1);
  expect(none.out).toContain('This names no form');
  expect(none.err).toContain('Nothing was recorded');
  expect(readFileSync(refused, 'utf8')).toContain('Tide Tables,parchment');
  const tried = await here(file, ['import', sheet, ...columns, '--good-rows-only', '--dry-run', '--json']);
  expect(JSON.parse(tried.out)).toMatchObject({ counts: { new: 1, refused: 1 } });
  expect(await here(file, ['import', sheet, ...columns, '--good-rows-only'])).toMatchObject({ code: 0 });
  const found = await here(file, ['call', 'works.list']);
  expect(JSON.parse(found.out).works.map(({ title }: { title: string }) => title)).toEqual(['Marsh Bells']);
});

test('a whole catalogue goes out as JSON and into an empty one', async () => {
  const file = newFile();
  const json = join(dirname(file), 'whole.json');
  await here(file, ['demo']);
  expect(await here(file, ['export', json])).toMatchObject({ code: 0 });
  const other = newFile();
  const tried = await here(other, ['import', json, '--dry-run']);
  expect(tried.out).toContain('4 works, 8 formats');
  expect(await here(other, ['import', json])).toMatchObject({ code: 0 });
  const again = join(dirname(other), 'whole.json');
  await here(other, ['export', again]);
  expect(readFileSync(again, 'utf8')).toBe(readFileSync(json, 'utf8'));
  expect(await here(other, ['import', json])).toMatchObject({ code: 1 });
});

test('what was done in a copy comes back as changes, and a side is named where both have changed the same', async () => {
  const file = newFile();
  await here(file, ['demo']);
  const copy = newFile();
  copyFileSync(file, copy);
  const rename = (at: string, name: string) => here(at, ['call', 'channels.update'], { id: 1, name });
  expect(await rename(copy, 'In the Copy')).toMatchObject({ code: 0 });
  const changes = join(dirname(copy), 'copy.changes.json');
  expect(await here(copy, ['export', changes])).toMatchObject({ code: 0 });
  expect((await here(file, ['import', changes, '--dry-run'])).out).toContain(
    'Would be taken over: 1 changes',
  );
  await rename(file, 'Here');
  const asked = await here(file, ['import', changes]);
  expect(asked).toMatchObject({
    code: 1,
    err: expect.stringContaining('here: Here   in the copy: In the Copy'),
  });
  expect(await here(file, ['import', changes, '--keep', 'there'])).toMatchObject({ code: 0 });
  const { out } = await here(file, ['call', 'channels.list']);
  expect(JSON.parse(out).channels.map(({ name }: { name: string }) => name)).toContain('In the Copy');
});

test('what cannot be read is told in one sentence', async () => {
  const file = newFile();
  await here(file, ['demo']);
  const missing = await here(file, ['import', '/nowhere/list.csv']);
  expect(missing).toMatchObject({ code: 2, err: expect.stringContaining('cannot be read (ENOENT)') });
  expect(await here(file, ['import', 'list.odt'])).toMatchObject({ code: 2 });
  expect(await here(file, ['import', 'list.csv', '--columns', 'A=nothing'])).toMatchObject({ code: 2 });
  expect(await here(file, ['export', '/nowhere/list.csv'])).toMatchObject({ code: 2 });
  expect(existsSync('/nowhere')).toBe(false);
});

test('a report of a channel is set against the record, and kept once its rows can be read', async () => {
  const file = newFile();
  const report = join(dirname(file), 'report.csv');
  await here(file, ['demo']);
  writeFileSync(report, 'EAN,Item\n979-8-969999-77-0,A Stranger\n,Total\n');
  const input = ['import', report, '--as', 'report'];
  const nobody = await here(file, input);
  expect(nobody.code).toBe(2);
  expect(nobody.err).toContain("'Lanternshelf'");
  const channel = ['--channel', 'nettlewick bookshop', '--partial'];
  const half = await here(file, [...input, ...channel]);
  expect(half.code).toBe(1);
  expect(half.err).toContain('Nothing was kept');
  const kept = await here(file, [...input, ...channel, '--good-rows-only']);
  expect(kept).toMatchObject({ code: 0 });
  expect(kept.out).toContain('new, only there: A Stranger is listed at Nettlewick Bookshop');
  const again = await here(file, [...input, ...channel, '--good-rows-only', '--dry-run']);
  expect(again.out).toContain('told before, only there');
});

test('work that is ended from the keyboard is told of until then, and leaves the catalogue as it was', async () => {
  const file = newFile();
  const sheet = join(dirname(file), 'long.csv');
  const rows = Array.from({ length: 40_000 }, (_, at) => `Long Winter ${at},Person ${at % 90},Paperback`);
  writeFileSync(sheet, ['Title,Author,Form', ...rows].join('\n'));
  await here(file, ['call', 'settings.get']);
  const child = spawn(process.execPath, [BIN, 'import', sheet, '--catalogue', file]);
  const ended = new Promise((resolve) => child.on('close', (code, signal) => resolve(signal ?? code)));
  const told = await new Promise<string>((resolve) => {
    child.stderr.on('data', (part: Buffer) => resolve(part.toString()));
  });
  expect(told).toMatch(/^[\d,]+( of 40,000)? (rows|works) \w+/);
  child.kill('SIGINT');
  expect(['SIGINT', 2]).toContain(await ended);
  expect(await here(file, ['check'])).toMatchObject({ code: 0 });
  const works = await here(file, ['call', 'works.list']);
  expect(JSON.parse(works.out).works).toEqual([]);
});
