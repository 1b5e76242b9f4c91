import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

// Hostile SQL straight at the file, past every command: the triggers alone must hold.

let catalogue: TestCatalogue;
let raw: Database.Database;

beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
  catalogue.call('catalogue.demo', {});
  raw = new Database(catalogue.file);
});
afterEach(() => {
  raw.close();
  catalogue.close();
});

const refused = (sql: string) => () => raw.exec(sql);
const one = (sql: string) => raw.prepare(sql).pluck().get();

describe('numbers', () => {
  it.each([
    [
      'a second row for a number',
      "INSERT INTO number (isbn13, block_id, block_index, reserved_on) VALUES ('9798969999008', 1, 0, '2026-01-01')",
    ],
    [
      'a replaced row',
      "INSERT OR REPLACE INTO number (isbn13, block_id, block_index, reserved_on) VALUES ('9798969999008', 1, 0, '2026-01-01')",
    ],
    [
      'a number taken over through its format',
      "INSERT OR REPLACE INTO number (isbn13, block_id, block_index, format_id, assigned_on) VALUES ('9798969999992', 1, 99, 1, '2026-01-01')",
    ],
    ['another format', 'UPDATE number SET format_id = 8 WHERE format_id = 1'],
    [
      'freeing',
      'UPDATE number SET format_id = NULL, assigned_on = NULL, reserved_on = assigned_on WHERE format_id = 4',
    ],
    ['deleting', 'DELETE FROM number WHERE format_id = 4'],
    ['other digits', "UPDATE number SET isbn13 = '9798969999992' WHERE format_id = 4"],
    [
      'a wrong check digit',
      "INSERT INTO number (isbn13, reserved_on) VALUES ('9780306406158', '2026-01-01')",
    ],
    [
      'a number of a block recorded outside it',
      "INSERT INTO number (isbn13, reserved_on) VALUES ('9798969999992', '2026-01-01')",
    ],
    [
      'a wrong place in its block',
      "INSERT INTO number (isbn13, block_id, block_index, reserved_on) VALUES ('9798969999992', 1, 98, '2026-01-01')",
    ],
    [
      'spending a submitted number',
      "UPDATE number SET spent_on = '2026-01-01', spent_reason = 'x' WHERE format_id = 2",
    ],
    [
      'overlapping blocks',
      "INSERT INTO number_block (digits, hyphenated_prefix, agency) VALUES ('979896999', '979-8-96999', 'x')",
    ],
  ])('refuses %s', (_what, sql) => {
    expect(refused(sql)).toThrow();
  });

  it('keeps a spent number spent, whatever is tried', () => {
    catalogue.call('numbers.spend', { isbn: '979-8-969999-99-2', reason: 'misprinted' });
    for (const sql of [
      "DELETE FROM number WHERE isbn13 = '9798969999992'",
      "UPDATE number SET spent_on = NULL, spent_reason = NULL, reserved_on = '2026-01-01' WHERE isbn13 = '9798969999992'",
      "INSERT OR REPLACE INTO number (isbn13, block_id, block_index, reserved_on) VALUES ('9798969999992', 1, 99, '2026-01-01')",
      "UPDATE OR REPLACE number SET isbn13 = '9798969999992' WHERE format_id = 4",
    ])
      expect(refused(sql), sql).toThrow();
    expect(one("SELECT standing FROM number WHERE isbn13 = '9798969999992'")).toBe('spent');
  });
});

describe('locks', () => {
  const columns = {
    title: "'Other'",
    subtitle: "'Other'",
    number: '7',
    statement: "'Other'",
    language: "'fre'",
    imprint: "'Other'",
    series: "'Other'",
    series_number: "'7'",
    work_id: '1',
  };
  it.each(Object.entries(columns))(
    'keeps %s of a sent edition and lets it change before',
    (column, value) => {
      expect(refused(`UPDATE edition SET ${column} = ${value} WHERE id = 2`)).toThrow(/FIELD_LOCKED/);
      expect(refused(`UPDATE edition SET ${column} = ${value} WHERE id = 3`)).not.toThrow();
    },
  );

  it.each([
    "INSERT INTO edition_contributor (edition_id, position, role, name) VALUES (2, 9, 'A01', 'X')",
    "UPDATE edition_contributor SET name = 'X' WHERE edition_id = 2",
    'DELETE FROM edition_contributor WHERE edition_id = 2',
    'UPDATE edition_contributor SET edition_id = 2, position = 9 WHERE edition_id = 3 AND position = 2',
  ])('keeps the contributors of a sent edition: %s', (sql) => {
    expect(refused(sql)).toThrow(/FIELD_LOCKED/);
  });

  it.each(["form = 'BE'", "form_detail = 'B504'", 'large_print = 1', 'edition_id = 3'])(
    'keeps the product form of a sent format: %s',
    (change) => {
      expect(refused(`UPDATE format SET ${change} WHERE id = 2`)).toThrow(/FIELD_LOCKED/);
      expect(refused(`UPDATE format SET ${change} WHERE id = 4`)).not.toThrow();
    },
  );

  it('leaves the open fields of a live format open and closes all of a retired one', () => {
    expect(refused("UPDATE edition SET description = 'x' WHERE id = 2")).not.toThrow();
    expect(refused('UPDATE format_price SET amount_minor = 1099 WHERE format_id = 2')).not.toThrow();
    expect(refused("UPDATE format SET note = 'x' WHERE id = 1")).toThrow(/FIELD_LOCKED/);
    expect(refused('UPDATE format_price SET amount_minor = 1 WHERE format_id = 1')).toThrow(/FIELD_LOCKED/);
    expect(refused('DELETE FROM format_price WHERE format_id = 1')).toThrow(/FIELD_LOCKED/);
    expect(refused("UPDATE listing SET note = 'x' WHERE format_id = 1")).toThrow(/FIELD_LOCKED/);
  });
});

describe('standings', () => {
  it.each([
    "UPDATE listing SET standing = 'gone' WHERE id = 3",
    "INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date) VALUES (3, 'selling', 'gone', '2026-01-01')",
    "INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date) VALUES (3, 'unsent', 'sent', '2026-01-01')",
    "INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date) VALUES (3, 'selling', 'leaving', '2001-01-01')",
    "UPDATE listing_step SET on_date = '2001-01-01'",
    'DELETE FROM listing_step',
    "INSERT INTO listing (format_id, channel_id, standing, first_sent_on) VALUES (8, 1, 'selling', '2026-01-01')",
    'INSERT INTO listing (format_id, channel_id) VALUES (1, 3)',
    'DELETE FROM listing WHERE id = 3',
    "UPDATE format SET cancelled_on = '2026-01-01', cancel_reason = 'x' WHERE id = 2",
  ])('refuses %s', (sql) => {
    expect(refused(sql)).toThrow();
  });

  it('refuses to send a format without a number', () => {
    raw.exec('INSERT INTO listing (format_id, channel_id) VALUES (8, 1)');
    const id = one('SELECT max(id) FROM listing');
    expect(
      refused(
        `INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date) VALUES (${id}, 'unsent', 'sent', '2026-01-01')`,
      ),
    ).toThrow(/NOT_READY/);
  });

  it('spends the number of a cancelled format in the same statement', () => {
    raw.exec("UPDATE format SET cancelled_on = '2026-01-01', cancel_reason = 'dropped' WHERE id = 5");
    expect(one('SELECT standing FROM number WHERE format_id = 5')).toBe('spent');
    expect(refused('UPDATE format SET cancelled_on = NULL, cancel_reason = NULL WHERE id = 5')).toThrow(
      /FIELD_LOCKED/,
    );
  });
});

describe('journal', () => {
  it.each([
    'DELETE FROM journal',
    "UPDATE journal SET operation = 'x'",
    "UPDATE journal SET after = '{}'",
    "INSERT OR REPLACE INTO journal (seq, entity, row_key, action, after) VALUES (1, 'work', '1', 'added', '{}')",
  ])('refuses %s', (sql) => {
    expect(refused(sql)).toThrow();
  });

  it('records a change made past the program, and the check names it', () => {
    expect(catalogue.call('catalogue.check', {}).ok).toBe(true);
    raw.exec("UPDATE work SET note = 'changed behind its back' WHERE id = 1");
    const after = catalogue.call('catalogue.check', {});
    expect(after.ok).toBe(false);
    expect(after.journal.firstBroken).toBe(Number(one('SELECT max(seq) FROM journal')));
  });

  it('names an altered entry even when its trigger was taken away', () => {
    raw.exec('DROP TRIGGER journal_sealed');
    raw.exec(`UPDATE journal SET after = json_set(after, '$.title', 'Another') WHERE seq = 20`);
    expect(catalogue.call('catalogue.check', {}).journal).toMatchObject({ ok: false, firstBroken: 20 });
  });
});
