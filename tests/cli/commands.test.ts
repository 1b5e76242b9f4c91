import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { operations } from '../../src/contract/index.ts';
import { runNode } from '../support/spawn.ts';
import { BIN, cli, here, newFile } from './cli.ts';

const file = newFile();

describe('help', () => {
  test('lists every command, and each shows its forms', async () => {
    const { code, out } = await runNode([BIN, '--help']);
    expect(code).toBe(0);
    const names = [
      'status',
      'audit',
      'block',
      'isbn',
      'journal',
      'check',
      'backup',
      'restore',
      'demo',
      'call',
    ];
    for (const name of names) expect(out).toMatch(new RegExp(`^  ${name} `, 'm'));
    expect(await runNode([BIN])).toMatchObject({ code: 0, out });
    const block = await runNode([BIN, 'block', '--help']);
    expect(block.out).toContain('edition-ledger block add PREFIX');
    expect((await runNode([BIN, 'help', 'block'])).out).toBe(block.out);
  });

  test('the version is the package’s', async () => {
    const { version } = JSON.parse(readFileSync(join(import.meta.dirname, '../../package.json'), 'utf8'));
    expect((await runNode([BIN, '--version'])).out).toBe(`${version}\n`);
  });
});

describe('what is written wrongly ends with 2 and one sentence that shows the right form', () => {
  test.each([
    [['stats'], "There is no command 'stats'; edition-ledger --help shows them all."],
    [['status', 'now'], "'now' is one word too many; the form is: edition-ledger status [--as-of DATE]"],
    [['status', '--today'], "Unknown option '--today'; the form is: edition-ledger status [--as-of DATE]"],
    [
      ['status', '--as-of'],
      "Option '--as-of' argument is ambiguous; the form is: edition-ledger status [--as-of DATE]",
    ],
    [['isbn'], 'Something is missing; the form is: edition-ledger isbn check TEXT…'],
    [['isbn', 'check'], 'There is nothing to check; the form is: edition-ledger isbn check TEXT…'],
    [['isbn', 'chekc', 'x'], "There is no 'isbn chekc'; the form is: edition-ledger isbn check TEXT…"],
    [['block', 'add'], 'Something is missing; the form is: edition-ledger block add PREFIX'],
    [['block', 'drop'], "There is no 'block drop'; the form is: edition-ledger block add PREFIX"],
    [
      ['journal', '--count', '0'],
      'Write the count as a number from 1 to 1000; the form is: edition-ledger journal',
    ],
    [
      ['journal', '--work', 'x'],
      'Write the work as its number, for example --work 3; the form is: edition-ledger journal',
    ],
    [['call'], 'Name an operation, or see them all with call --list; the form is: edition-ledger call'],
    [
      ['call', 'works.lost'],
      'There is no operation called works.lost; edition-ledger call --list shows them all.',
    ],
  ])('%j', async (args, sentence) => {
    const { code, out, err } = await here(file, args);
    expect([code, out]).toEqual([2, '']);
    expect(err.startsWith(sentence)).toBe(true);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(existsSync(file)).toBe(false);
  });

  test('with --json it is an object', async () => {
    const { err } = await here(file, ['status', '--json', 'now']);
    expect(JSON.parse(err)).toMatchObject({
      code: 'BAD_INPUT',
      message: expect.stringContaining('one word too many'),
    });
  });
});

describe('a catalogue that is not there', () => {
  test('is not made by a command that reads; the sentence says how to make one', async () => {
    const missing = newFile();
    const { code, out, err } = await cli(missing, 'status');
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(`There is no catalogue at ${missing}; npm start, edition-ledger demo or`);
    expect(existsSync(missing)).toBe(false);
  });

  test('lies in the user’s data folder unless it is named', async () => {
    const data = mkdtempSync(join(tmpdir(), 'edition-ledger-data-'));
    const env = { XDG_DATA_HOME: data, LOCALAPPDATA: data, HOME: data };
    expect((await runNode([BIN, 'block', 'add', '979-8-969999'], { env })).code).toBe(0);
    const named = join(data, 'edition-ledger/catalogue.ledger');
    if (process.platform === 'linux') expect(existsSync(named)).toBe(true);
  });

  test('a file that is no catalogue is refused and left as it is', async () => {
    const other = newFile();
    writeFileSync(
      other,
      'Not a catalogue at all, only some text that is long enough to be looked at. '.repeat(60),
    );
    const before = readFileSync(other);
    for (const args of [['status'], ['block', 'add', '979-8-969999']]) {
      const { code, out, err } = await here(other, [...args, '--json']);
      expect([code, out]).toEqual([2, '']);
      expect(JSON.parse(err).code).toMatch(/^CATALOGUE_(FOREIGN|DAMAGED)$/);
    }
    expect(readFileSync(other).equals(before)).toBe(true);
  });
});

describe('block add', () => {
  test('records a block with what it cost, to the minor unit of its currency', async () => {
    const made = newFile();
    const facts = ['--label', 'First ten', '--bought-on', '2026-01-05', '--note', 'by mail'];
    const euro = await here(made, ['block', 'add', '979-8-969999', ...facts, '--cost', '250.5', '--json']);
    expect(JSON.parse(euro.out)).toMatchObject({
      label: 'First ten',
      note: 'by mail',
      boughtOn: '2026-01-05',
      cost: { amountMinor: 25_050, currency: 'EUR' },
      capacity: 100,
    });
    const yen = await here(made, [
      'block',
      'add',
      '979-8-969998',
      '--cost',
      '2500',
      '--currency',
      'JPY',
      '--json',
    ]);
    expect(JSON.parse(yen.out).cost).toEqual({ amountMinor: 2500, currency: 'JPY' });
  });

  test.each([
    ['250,00', 'EUR', 'for example 250.00'],
    ['1.234', 'EUR', 'for example 250.00'],
    ['2500.5', 'JPY', 'for example 250;'],
    ['-1', 'EUR', 'missing|ambiguous'],
    ['10', 'euro', 'three capital letters'],
  ])('a cost of %s %s is refused', async (cost, currency, hint) => {
    const made = newFile();
    const ran = await here(made, ['block', 'add', '979-8-969999', '--cost', cost, '--currency', currency]);
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.err).toMatch(new RegExp(hint));
  });

  test('a block that is owned already is refused with 1', async () => {
    const made = newFile();
    await here(made, ['block', 'add', '979-8-969999']);
    const { code, out, err } = await cli(made, 'block', 'add', '979-8-969999', '--json');
    expect([code, out]).toEqual([1, '']);
    expect(JSON.parse(err)).toMatchObject({ code: 'BLOCK_OVERLAP' });
  });
});

describe('isbn check', () => {
  // 978-0-306-40615-7 is the worked example of the ISBN article most textbooks print; common practice, no source.
  test('judges words and lines, with and without a catalogue, and makes none', async () => {
    const missing = newFile();
    const words = await here(missing, ['isbn', 'check', '9780306406157', '978-0-306-40615-8']);
    expect(words.code).toBe(1);
    expect(words.out).toMatch(/^978-0-306-40615-7 +valid/m);
    expect(words.out).toMatch(/^978-0-306-40615-8 +not valid/m);
    expect(existsSync(missing)).toBe(false);
    const stdin = '978-0-306-40615-7\r\n\r\n0-306-40615-2\n';
    const lines = await runNode([BIN, 'isbn', 'check', '--json', '--catalogue', missing], { stdin });
    expect(lines.code).toBe(0);
    expect(JSON.parse(lines.out).checks.map((check: { isbn13: string }) => check.isbn13)).toEqual([
      '9780306406157',
      '9780306406157',
    ]);
  });

  test('tells where a number stands when there is a catalogue', async () => {
    const made = newFile();
    await here(made, ['block', 'add', '979-8-969999']);
    expect((await here(made, ['isbn', 'check', '9798969999008'])).out).toMatch(/valid +free/);
  });
});

describe('call', () => {
  test('every operation is listed with its schemas', async () => {
    const listed = JSON.parse((await runNode([BIN, 'call', '--list', '--json'])).out);
    expect(listed.map((entry: { name: string }) => entry.name)).toEqual(Object.keys(operations));
    for (const entry of listed) {
      expect(entry).toMatchObject({
        kind: expect.stringMatching(/^(command|query|errand|reading)$/),
        summary: expect.any(String),
        errors: expect.arrayContaining(['BAD_INPUT']),
        input: { type: 'object' },
        output: { type: 'object' },
      });
    }
    const text = (await runNode([BIN, 'call', '--list'])).out;
    for (const name of Object.keys(operations)) expect(text).toContain(name);
  });

  test('carries out a command and a query; an empty input counts as {}', async () => {
    const made = newFile();
    const ran = await runNode([BIN, 'call', 'works.create', '--catalogue', made], {
      stdin: '{"title":"The Salt Almanac"}',
    });
    expect([ran.code, ran.err]).toEqual([0, '']);
    const works = await here(made, ['call', 'works.list']);
    expect(works.out).toContain('The Salt Almanac');
  });

  test('a refusal ends with 1 and its body on stderr', async () => {
    const made = newFile();
    await here(made, ['block', 'add', '979-8-969999']);
    const lost = await here(made, ['call', 'works.get', '--json'], { id: 99 });
    expect([lost.code, lost.out]).toEqual([1, '']);
    expect(JSON.parse(lost.err)).toMatchObject({ code: 'NOT_FOUND', message: expect.any(String) });
    const bad = await here(made, ['call', 'works.get', '--json'], { id: 'one' });
    expect(bad.code).toBe(1);
    expect(JSON.parse(bad.err)).toMatchObject({ code: 'BAD_INPUT', field: 'id' });
  });

  test('an input that is not JSON ends with 2 before the catalogue is touched', async () => {
    const made = newFile();
    const ran = await here(made, ['call', 'works.create', '--json'], '{"title":');
    expect([ran.code, ran.out]).toEqual([2, '']);
    expect(JSON.parse(ran.err).message).toMatch(/^The standard input is not JSON/);
    expect(existsSync(made)).toBe(false);
  });
});

test('npx finds the command in the package’s own folder, without the network', async () => {
  const cache = mkdtempSync(join(tmpdir(), 'edition-ledger-npx-'));
  const npx = process.env.npm_execpath?.replace(/npm-cli\.js$/, 'npx-cli.js');
  if (npx === undefined || !existsSync(npx)) return console.log('Not run: npm does not say where it is.');
  const env = { npm_config_cache: cache, npm_config_offline: 'true' };
  const ran = await runNode([npx, 'edition-ledger', '--version'], {
    cwd: join(import.meta.dirname, '../..'),
    env,
  });
  expect(ran).toMatchObject({ code: 0, out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/) });
});
