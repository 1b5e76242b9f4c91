import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

// Plain SQL past the program, one statement at a time and rolled back.

let catalogue: TestCatalogue;
let raw: Database.Database;

beforeAll(() => {
  catalogue = openTestCatalogue('2026-03-02');
  const { channelId } = catalogue.call('channels.create', { name: 'Printworks Direct' });
  catalogue.call('channels.create', { name: 'Broadside Wholesale' });
  const quotes = [100, 300].map((pages) => ({ pages, amountMinor: pages }));
  catalogue.call('printCosts.add', { channelId, currency: 'EUR', price: { kind: 'quotes', quotes } });
  catalogue.call('printCosts.add', {
    channelId,
    currency: 'USD',
    price: { kind: 'stated', fixedParts: 900_000, pageParts: 12_500 },
  });
  raw = new Database(catalogue.file);
});
afterAll(() => {
  raw.close();
  catalogue.close();
});

function refusalOf(sql: string): string | null {
  raw.exec('BEGIN');
  try {
    raw.exec(sql);
    return null;
  } catch (error) {
    return (error as Error).message;
  } finally {
    if (raw.inTransaction) raw.exec('ROLLBACK');
  }
}

describe('the tables of print-cost cards', () => {
  it.each([
    [
      'a quote beside a stated cost',
      "INSERT INTO print_quote (card_id, pages, amount_minor, currency) VALUES (2, 9, 9, 'USD')",
      'STEP_REFUSED',
    ],
    [
      'a quote in another currency',
      "INSERT INTO print_quote (card_id, pages, amount_minor, currency) VALUES (1, 9, 9, 'USD')",
      'STEP_REFUSED',
    ],
    [
      'a stated cost beside quotes',
      'UPDATE print_card SET fixed_parts = 1, page_parts = 1 WHERE id = 1',
      'STEP_REFUSED',
    ],
    ['another currency over quotes', "UPDATE print_card SET currency = 'GBP' WHERE id = 1", 'STEP_REFUSED'],
    ['a card on another channel', 'UPDATE print_card SET channel_id = 2 WHERE id = 1', 'FIELD_LOCKED'],
    ['a quote on another card', 'UPDATE print_quote SET card_id = 2 WHERE id = 1', 'FIELD_LOCKED'],
    [
      'a quote in another currency later',
      "UPDATE print_quote SET currency = 'USD' WHERE id = 1",
      'FIELD_LOCKED',
    ],
    ['half of a stated cost', 'UPDATE print_card SET page_parts = NULL WHERE id = 2', 'CHECK'],
    ['half of a trim', 'UPDATE print_card SET trim_width_um = 5 WHERE id = 2', 'CHECK'],
    [
      'a kind of case of a paperback',
      "UPDATE print_card SET case_kind = 'cloth', form = 'BC' WHERE id = 2",
      'CHECK',
    ],
    [
      'a range that ends before it begins',
      'UPDATE print_card SET pages_from = 9, pages_to = 8 WHERE id = 2',
      'CHECK',
    ],
    ['a day that is none', "UPDATE print_card SET valid_from = '2026-02-30' WHERE id = 2", 'CHECK'],
    ['a negative quote', 'UPDATE print_quote SET amount_minor = -1 WHERE id = 1', 'CHECK'],
    ['no pages', 'UPDATE print_quote SET pages = 0 WHERE id = 1', 'CHECK'],
    ['text for a number', "UPDATE print_quote SET pages = 'many' WHERE id = 1", 'cannot store TEXT'],
    [
      'a twin',
      "INSERT INTO print_card (channel_id, currency, fixed_parts, page_parts) VALUES (1, 'USD', 1, 1)",
      'ALREADY_EXISTS',
    ],
    [
      'a twin by replacing',
      "INSERT OR REPLACE INTO print_card (channel_id, currency, fixed_parts, page_parts) VALUES (1, 'USD', 1, 1)",
      'ALREADY_EXISTS',
    ],
    ['a card of no channel', "INSERT INTO print_card (channel_id, currency) VALUES (9, 'USD')", 'NOT_FOUND'],
    ['a card away from its quotes', 'DELETE FROM print_card WHERE id = 1', 'IN_USE'],
  ])('refuse %s', (_name, sql, code) => {
    expect(refusalOf(sql)).toContain(code);
  });

  it('write to the journal what is changed in them', () => {
    raw.exec('BEGIN; UPDATE print_quote SET amount_minor = 7 WHERE id = 1');
    const row = raw.prepare('SELECT entity, before, after FROM journal ORDER BY seq DESC LIMIT 1').get();
    raw.exec('ROLLBACK');
    expect(row).toMatchObject({ entity: 'print_quote' });
    expect(JSON.stringify(row)).toContain('\\"amount_minor\\":7');
  });
});
