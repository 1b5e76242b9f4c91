import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { readAuditRows } from '../../src/store/audit.ts';
import type { WriteDb } from '../../src/store/connection.ts';
import { openTestFile, type TestFile } from '../support/catalogue.ts';
import { seedChannel, seedEdition, seedFormat, seedListing } from '../support/seed.ts';

let file: TestFile;
beforeEach(() => {
  file = openTestFile('2026-11-25');
});
afterEach(() => file.close());

function seed(db: WriteDb, works: number, channelId: number): void {
  for (let n = 0; n < works; n += 1) {
    const editionId = seedEdition(db, { title: `Work ${n}`, number: 1 });
    for (const form of ['BC', 'BB']) {
      const formatId = seedFormat(db, editionId, { form });
      seedListing(db, formatId, channelId, { standing: 'selling' });
    }
  }
}

/** How many statements are prepared while the rows of an audit are read, and how many rows of formats come. */
function reading(): { statements: number; formats: number } {
  const prepare = vi.spyOn(Database.prototype, 'prepare');
  const rows = file.query(({ db, today }) => readAuditRows(db, today));
  const statements = prepare.mock.calls.length;
  prepare.mockRestore();
  return { statements, formats: rows.formats.length };
}

test('a catalogue of any size is read in the same number of statements', () => {
  const channelId = file.command(({ db }) => seedChannel(db, 'Printworks Direct'));
  file.command(({ db }) => seed(db, 1, channelId));
  reading();
  const small = reading();
  file.command(({ db }) => seed(db, 150, channelId));
  const large = reading();
  expect(small.formats).toBe(2);
  expect(large.formats).toBe(302);
  expect(large.statements).toBe(small.statements);
  expect(small.statements).toBeLessThanOrEqual(14);
  expect(small.statements).toBeGreaterThan(0);
});
