import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, it } from 'vitest';
import { wholeCatalogue } from '../../src/contract/whole.ts';
import { openCatalogueFile } from '../../src/store/catalogue-file.ts';
import { wrap } from '../../src/store/connection.ts';
import { carriedTables, LEFT_OUT } from '../../src/store/whole.ts';
import { grownCatalogue, openStill } from '../faults/files.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { exported, stage } from '../support/staged.ts';

const opened: TestCatalogue[] = [];
const empty = () => {
  const catalogue = openTestCatalogue('2026-11-25');
  opened.push(catalogue);
  return catalogue;
};
afterEach(() => {
  for (const catalogue of opened.splice(0)) catalogue.close();
});

/** A random catalogue of the fault tests, as its JSON. */
function grown(commands: number, seed: number): string {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-whole-'));
  const file = join(folder, 'grown.ledger');
  grownCatalogue(file, commands, seed);
  const app = openStill(file);
  try {
    const call = (name: string, input: unknown) => {
      const answer = app.call(name, input);
      if (!answer.ok) throw new Error(answer.error.message);
      return answer.value;
    };
    return exported({ call } as Pick<TestCatalogue, 'call'>, 'json').toString('utf8');
  } finally {
    app.close();
    rmSync(folder, { recursive: true });
  }
}

describe('a whole catalogue as JSON', () => {
  it('goes out, into an empty catalogue and out again without a byte changed: the demo', () => {
    const from = empty();
    from.call('catalogue.demo', {});
    const first = exported(from, 'json').toString('utf8');
    expect(exported(from, 'json').toString('utf8')).toBe(first);
    const to = empty();
    const taken = to.call('catalogue.import', { file: stage(to, first) });
    expect(taken).toMatchObject({ works: 4, formats: 8 });
    expect(exported(to, 'json').toString('utf8')).toBe(first);
    expect(to.call('catalogue.check', {})).toMatchObject({ ok: true, replay: [], schema: [] });
    expect(to.call('catalogue.status', {}).numbers).toEqual(from.call('catalogue.status', {}).numbers);
    expect(to.call('works.list', { search: 'lantern' }).total).toBe(1);
    // The guards are in force again, and the rows are as they were: a spent or sent one stays.
    expect(to.refusal('editions.update', { id: 1, title: 'Other' })).toMatchObject({ code: 'FIELD_LOCKED' });
  });

  it.each([3, 11, 29])('goes out, in and out without a byte changed: random history %i', (seed) => {
    const first = grown(150, seed);
    const to = empty();
    to.call('catalogue.import', { file: stage(to, first) });
    expect(exported(to, 'json').toString('utf8')).toBe(first);
    expect(to.call('catalogue.check', {})).toMatchObject({ ok: true, replay: [], schema: [] });
  });

  it('is of the form that is documented', () => {
    const from = empty();
    from.call('catalogue.demo', {});
    const parsed = wholeCatalogue.parse(JSON.parse(exported(from, 'json').toString('utf8')));
    expect(Object.keys(parsed.tables)).toEqual([...Object.keys(parsed.tables)].sort());
    for (const table of ['work', 'listing_step', 'number', 'plan', 'task', 'setting', 'channel'])
      expect(parsed.tables).toHaveProperty(table);
  });

  it('carries every table of the catalogue but those that are named as left out', () => {
    const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-whole-'));
    const file = openCatalogueFile(join(folder, 'a.ledger'), { at: '2026-11-25T10:00:00.000Z' });
    file.close();
    const raw = new Database(join(folder, 'a.ledger'));
    const undecided = () => {
      const carried = new Set(carriedTables(wrap(raw)).map(({ table }) => table));
      const tables = raw
        .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
        .pluck()
        .all() as string[];
      return tables.filter((table) => carried.has(table) === LEFT_OUT.some((pattern) => pattern.test(table)));
    };
    expect(undecided()).toEqual([]);
    raw.exec('CREATE TABLE keyless (a TEXT) STRICT');
    expect(undecided()).toEqual(['keyless']);
    raw.close();
    rmSync(folder, { recursive: true });
  });
});

describe('a JSON file is refused', () => {
  const demo = () => {
    const from = empty();
    from.call('catalogue.demo', {});
    return JSON.parse(exported(from, 'json').toString('utf8'));
  };
  const refusal = (content: unknown) => {
    const to = empty();
    const text = typeof content === 'string' ? content : JSON.stringify(content);
    const refused = to.refusal('catalogue.import', { file: stage(to, text) });
    expect(to.call('catalogue.info', {})).toMatchObject({ empty: true, journalEntries: 0 });
    expect(to.call('catalogue.check', {}).ok).toBe(true);
    return refused;
  };

  it('by a catalogue that is not empty', () => {
    const to = empty();
    to.call('catalogue.demo', {});
    const file = stage(to, exported(to, 'json'));
    expect(to.refusal('catalogue.import', { file })).toMatchObject({ code: 'ALREADY_EXISTS' });
  });

  it('when it is none, another, or of a newer form', () => {
    expect(refusal('{"editionLedger":').message).toContain('no JSON');
    expect(refusal('[1,2]').message).toContain('no whole catalogue');
    expect(refusal({ ...demo(), form: 9_999 })).toMatchObject({ code: 'CATALOGUE_NEWER' });
  });

  it('for tables, columns, values and references that the catalogue does not have', () => {
    const whole = demo();
    expect(refusal({ ...whole, tables: { ...whole.tables, moods: [{ id: 1 }] } }).message).toContain('moods');
    const { work } = whole.tables;
    const odd = (rows: unknown[]) => refusal({ ...whole, tables: { ...whole.tables, work: rows } }).message;
    expect(odd([{ ...work[0], mood: 'glad' }])).toContain(
      'Row 1 of table work: there is no column called mood',
    );
    expect(odd([...work, work[0]])).toContain('Row 5 of table work does not fit');
    expect(odd([{ ...work[0], title: ' ' }, ...work.slice(1)])).toContain('Row 1 of table work');
    expect(odd([{ ...work[0], id: 'one' }, ...work.slice(1)])).toContain('Row 1 of table work');
    expect(odd(work.slice(1))).toContain('that is not in the file');
  });

  it('never by settings of odd names, which are kept and count for nothing', () => {
    const whole = demo();
    for (const name of ['__proto__', 'constructor', 'toString', 'mood']) {
      const to = empty();
      const { setting } = whole.tables;
      const tables = { ...whole.tables, setting: [...setting, { name, value: '"x"' }] };
      to.call('catalogue.import', { file: stage(to, JSON.stringify({ ...whole, tables })) });
      expect(to.call('settings.get', {}).publisher).toBe('Halyard & Fen');
      expect(to.call('catalogue.info', {}).empty).toBe(false);
    }
  });

  it('for what could be stored and never be shown again', () => {
    const whole = demo();
    const { edition_contributor: people, edition_keyword: keywords } = whole.tables;
    const changed = (tables: object) => refusal({ ...whole, tables: { ...whole.tables, ...tables } });
    const long = changed({
      edition_contributor: [{ ...people[0], name: 'x'.repeat(2_001) }, ...people.slice(1)],
    });
    expect(long).toMatchObject({ code: 'BAD_INPUT', field: 'file' });
    expect(long.message).toMatch(
      /^Edition \d+ of this file .* at contributors\.0\.name: Keep this under 2,000/,
    );
    const many = Array.from({ length: 201 }, (_, at) => ({
      ...keywords[0],
      id: 10_000 + at,
      position: 100 + at,
      keyword: `keyword ${at}`,
    }));
    expect(changed({ edition_keyword: [...keywords, ...many] }).message).toContain('keywords');
  });

  it('for a history that cannot have been', () => {
    const whole = demo();
    const { listing, listing_step: steps, number } = whole.tables;
    const broken = (tables: object) => refusal({ ...whole, tables: { ...whole.tables, ...tables } }).message;
    expect(broken({ listing_step: [{ ...steps[0], to_standing: 'gone' }, ...steps.slice(1)] })).toMatch(
      /Step \d+ of a listing|Listing \d+ does not stand/,
    );
    expect(
      broken({
        listing: listing.map((row: object) => ({ ...row, first_sent_on: '2001-01-01', standing: 'selling' })),
      }),
    ).toContain('does not stand');
    expect(
      broken({ number: number.map((row: object) => ({ ...row, block_id: null, block_index: null })) }),
    ).toContain('under the block');
  });
});
