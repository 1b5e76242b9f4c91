import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

// Ways round the guards that plain statements do not take: hidden row ids, hidden deletions by OR REPLACE,
// foreign keys turned off. Each statement runs alone and is rolled back.

let catalogue: TestCatalogue;
let raw: Database.Database;

beforeAll(() => {
  catalogue = openTestCatalogue('2026-03-02');
  catalogue.call('catalogue.demo', {});
  catalogue.call('numbers.spend', { isbn: '979-8-969999-99-2', reason: 'misprinted' });
  catalogue.call('numbers.reserve', { isbn: '979-8-969999-98-5', reservedFor: 'a series' });
  raw = new Database(catalogue.file);
  raw.pragma('foreign_keys = OFF');
});
afterAll(() => {
  raw.close();
  catalogue.close();
});

/** Why the file refuses the statements; null when it takes them. Nothing stays. */
function refusalOf(...statements: string[]): string | null {
  raw.exec('BEGIN');
  try {
    for (const sql of statements) raw.exec(sql);
    return null;
  } catch (error) {
    return (error as Error).message;
  } finally {
    if (raw.inTransaction) raw.exec('ROLLBACK');
  }
}

describe('keys', () => {
  it.each(['work', 'edition', 'format', 'listing', 'number_block', 'channel', 'edition_contributor'])(
    'of %s cannot be moved by any name of the row id',
    (table) => {
      for (const name of ['id', 'rowid', 'oid', '_rowid_'])
        for (const or of ['', 'OR REPLACE', 'OR IGNORE'])
          expect(refusalOf(`UPDATE ${or} ${table} SET ${name} = 900 WHERE id = 1`), `${or} ${name}`).toMatch(
            /keeps its key|FIELD_LOCKED/,
          );
    },
  );

  it('of numbers and settings have no hidden row id to be replaced by', () => {
    for (const table of ['number', 'setting', 'number_run'])
      expect(refusalOf(`SELECT rowid FROM ${table}`), table).toContain('no such column');
  });

  it('of the journal cannot be taken by a hash that stands already', () => {
    const seal = `at = 'x', operation = 'x', command_seq = 1, previous_hash = 'x'`;
    expect(
      refusalOf(
        "UPDATE work SET note = 'x' WHERE id = 1",
        `UPDATE OR REPLACE journal SET ${seal}, hash = (SELECT hash FROM journal WHERE seq = 5) WHERE hash IS NULL`,
      ),
    ).toContain('never removed');
  });
});

describe('references, with foreign keys off', () => {
  it.each([
    'DELETE FROM work WHERE id = 2',
    'DELETE FROM edition WHERE id = 2',
    'DELETE FROM channel WHERE id = 1',
    'DELETE FROM number_block',
    'DELETE FROM format WHERE id = 8',
  ])('keep a row that others refer to: %s', (sql) => {
    if (sql.includes('format'))
      expect(refusalOf('INSERT INTO listing (format_id, channel_id) VALUES (8, 1)', sql)).toContain('IN_USE');
    else expect(refusalOf(sql)).toContain('IN_USE');
  });

  it.each([
    "INSERT INTO number (isbn13, format_id, assigned_on) VALUES ('9780306406157', 900, '2026-01-01')",
    'INSERT INTO listing (format_id, channel_id) VALUES (8, 900)',
    "INSERT INTO edition (work_id, title, language) VALUES (900, 'Nowhere', 'eng')",
    'UPDATE edition SET replaces_id = 900 WHERE id = 3',
    'UPDATE format SET edition_id = 900 WHERE id = 8',
  ])('lead somewhere: %s', (sql) => {
    expect(refusalOf(sql)).toContain('NOT_FOUND');
  });
});

describe('numbers', () => {
  const cancelled =
    "INSERT INTO format (id, edition_id, form, planned_on, cancelled_on, cancel_reason) VALUES (90, 3, 'BC', '2026-01-01', '2026-01-02', 'dropped')";
  const open = "INSERT INTO format (id, edition_id, form, planned_on) VALUES (90, 3, 'BC', '2026-01-01')";
  const added = (columns: string, values: string) =>
    `INSERT INTO number (isbn13, block_id, block_index, format_id, assigned_on${columns}) VALUES ('9798969999978', 1, 97, 90, '2026-01-03'${values})`;
  const given = (more: string) =>
    `UPDATE number SET format_id = 90, assigned_on = '2026-01-03'${more} WHERE isbn13 = '9798969999985'`;

  it.each([added('', ''), given('')])('are not given to a cancelled format: %s', (sql) => {
    expect(refusalOf(cancelled, sql)).toContain('a cancelled format takes no number');
    expect(refusalOf(open, sql)).toBeNull();
  });

  it.each([
    added(', spent_on, spent_reason', ", '2026-01-03', 'x'"),
    given(", spent_on = '2026-01-03', spent_reason = 'x'"),
  ])('are not given to a format as spent ones: %s', (sql) => {
    expect(refusalOf(open, sql)).toContain('no format a spent one');
  });

  it('that are spent can still be taken in by a block recorded later, and nothing else of them changes', () => {
    const own = openTestCatalogue('2026-03-02');
    const { editionId } = own.call('works.create', { title: 'Tide Tables' });
    const { formatId } = own.call('formats.create', { editionId, form: 'BC' });
    own.call('numbers.assign', { formatId, isbn: '979-8-969999-07-7', outsideBlocks: true });
    own.call('numbers.spend', { isbn: '979-8-969999-07-7', reason: 'misprinted' });
    expect(own.call('blocks.add', { prefix: '979-8-969999' }).counts).toMatchObject({ free: 99, spent: 1 });
    const file = new Database(own.file);
    for (const change of [
      'block_id = NULL, block_index = NULL',
      "spent_reason = 'other'",
      'format_id = NULL',
    ])
      expect(() => file.exec(`UPDATE number SET ${change}`), change).toThrow(
        /NUMBER_SPENT|NUMBER_TAKEN|FIELD_LOCKED/,
      );
    file.close();
    own.close();
  });
});

it('keeps a cancelled format for the record, with prices or without', () => {
  const cancel = "UPDATE format SET cancelled_on = '2026-01-01', cancel_reason = 'dropped' WHERE id = 8";
  expect(
    refusalOf('DELETE FROM format_price WHERE format_id = 8', cancel, 'DELETE FROM format WHERE id = 8'),
  ).toContain('a cancelled format is kept');
});

it('lets a block without numbers be taken back', () => {
  const own = openTestCatalogue('2026-03-02');
  own.call('blocks.add', { prefix: '979-8-969999' });
  own.call('journal.undo', { commandSeq: 1 });
  expect(own.call('blocks.list', {}).blocks).toEqual([]);
  expect(own.call('catalogue.check', {}).ok).toBe(true);
  own.close();
});
