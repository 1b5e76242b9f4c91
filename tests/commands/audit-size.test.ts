import { afterEach, beforeEach, expect, test } from 'vitest';
import { readAuditBase, readAuditRows } from '../../src/store/audit.ts';
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

/** How many statements are run while the rows of an audit are read, and how many rows of formats come. */
function reading(): { statements: number; formats: number } {
  return file.query(({ db, today }) => {
    let statements = 0;
    const orm = new Proxy(db.orm, {
      get: (target, key) => {
        if (key === 'select') statements += 1;
        return Reflect.get(target, key);
      },
    });
    const counting = {
      ...db,
      orm,
      all: <T>(sql: string, ...params: unknown[]) => {
        statements += 1;
        return db.all<T>(sql, ...params);
      },
    };
    const rows = { ...readAuditBase(counting), ...readAuditRows(counting, today) };
    return { statements, formats: rows.formats.length };
  });
}

test('a catalogue of any size is read in the same number of statements', () => {
  const channelId = file.command(({ db }) => seedChannel(db, 'Printworks Direct'));
  file.command(({ db }) => seed(db, 1, channelId));
  const small = reading();
  file.command(({ db }) => seed(db, 150, channelId));
  const large = reading();
  expect(small.formats).toBe(2);
  expect(large.formats).toBe(302);
  expect(large.statements).toBe(small.statements);
  expect(small.statements).toBeLessThanOrEqual(16);
  expect(small.statements).toBeGreaterThan(0);
});
