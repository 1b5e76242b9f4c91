import { afterEach, beforeEach, expect, test } from 'vitest';
import { KeptAudit } from '../../src/records/kept-audit.ts';
import { readAuditBase, readAuditRows } from '../../src/store/audit.ts';
import type { ReadDb, WriteDb } from '../../src/store/connection.ts';
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

/** The tables that each statement goes through whole, by what SQLite plans. */
function wholeTables(db: ReadDb, sql: string, params: unknown[]): string[] {
  return db
    .all<{ detail: string }>(`EXPLAIN QUERY PLAN ${sql}`, ...params)
    .map(({ detail }) => detail)
    .filter((detail) => detail.startsWith('SCAN') && !detail.includes('VIRTUAL TABLE'));
}

/** What is small or belongs to the change: channels and cards, settings, and rows a statement has gathered itself. */
const SMALL = /^SCAN (channel|number_block|setting|print_card|print_quote|own|k|j)\b|CONSTANT ROW/;

test('after a change only rows of its works are read, none by going through a table', () => {
  const channelId = file.command(({ db }) => seedChannel(db, 'Printworks Direct'));
  file.command(({ db }) => seed(db, 150, channelId));
  const read = file.file.read;
  const run: { sql: string; params: unknown[]; rows: number }[] = [];
  const kept = new KeptAudit({
    ...read,
    all: <T>(sql: string, ...params: unknown[]) => {
      const rows = read.all<T>(sql, ...params);
      run.push({ sql, params, rows: rows.length });
      return rows;
    },
  });
  const count = () => kept.on('2026-11-25', '2026-11-25', read).facts.formats.length;
  expect(count()).toBe(300);
  run.length = 0;
  file.command(({ db }) => {
    db.run("UPDATE edition SET description = 'A year on the marsh.' WHERE id = 7");
    db.run(
      "INSERT INTO task (work_id, kind, title, due_on) VALUES (9, 'other', 'Write again', '2026-12-01')",
    );
  });
  expect(count()).toBe(300);
  expect(run.filter(({ sql }) => sql.includes('FROM format')).map(({ rows }) => rows)).toContain(4);
  // Two works of two formats with a listing each: no statement needs more rows than their steps.
  expect(Math.max(...run.map(({ rows }) => rows))).toBeLessThanOrEqual(4 * 4);
  const whole = run.flatMap(({ sql, params }) => wholeTables(read, sql, params));
  expect(whole.filter((detail) => !SMALL.test(detail))).toEqual([]);
});
