import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, expect, test } from 'vitest';
import { openApp } from '../../src/app.ts';
import type { Audit } from '../../src/contract/audit.ts';
import { FORMAT_STANDINGS, LISTING_STANDINGS } from '../../src/contract/terms.ts';
import { rewind } from '../../src/store/as-of.ts';
import { type ReadDb, wrap } from '../../src/store/connection.ts';
import { examine } from '../../src/store/examine.ts';
import { journalHead } from '../../src/store/journal.ts';
import { brokenRule } from '../../src/store/whole-check.ts';
import { grow, grown, grownCopy, LAST_DAY } from '../support/generator/index.ts';

// The catalogues that everything is measured with are such as the program itself would have made.

const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-'));
afterAll(() => rmSync(folder, { recursive: true }));

const FIVE_YEARS_BACK = '2021-11-25';
const full = grown({ formats: 300 });

function reading<T>(file: string, work: (db: ReadDb) => T): T {
  const raw = new Database(file, { readonly: true });
  try {
    return work(wrap(raw));
  } finally {
    raw.close();
  }
}

test('a generated catalogue passes the check of the program, its journal and its replay included', () => {
  const found = reading(full, examine);
  expect(found.faults).toEqual([]);
  expect(found.journal.entries).toBeGreaterThan(300 * 30);
  expect(reading(full, brokenRule)).toBeNull();
});

test('it has as many formats as asked for, three listings each, and every standing occurs', () => {
  const standings = (sql: string) => reading(full, (db) => db.all<{ s: string }>(sql).map(({ s }) => s));
  const count = (table: string) =>
    reading(full, (db) => db.one<{ n: number }>(`SELECT count(*) AS n FROM ${table}`)?.n);
  expect([count('format'), count('listing')]).toEqual([300, 900]);
  expect(standings('SELECT DISTINCT standing AS s FROM listing').toSorted()).toEqual(
    LISTING_STANDINGS.toSorted(),
  );
  expect(standings('SELECT DISTINCT standing AS s FROM format_standing').toSorted()).toEqual(
    FORMAT_STANDINGS.toSorted(),
  );
});

test('the same seed gives the same catalogue, another one another', () => {
  const head = (name: string, seed: number) => {
    const file = join(folder, name);
    grow(file, { formats: 40, seed });
    return reading(file, journalHead).hash;
  };
  expect(head('first.ledger', 7)).toBe(head('second.ledger', 7));
  expect(head('third.ledger', 8)).not.toBe(head('fourth.ledger', 9));
});

test('five years back it stands as a catalogue that came only to that day', () => {
  const until = join(folder, 'until.ledger');
  grow(until, { formats: 300, until: FIVE_YEARS_BACK });
  const raw = new Database(full, { readonly: true });
  const then = rewind(raw, FIVE_YEARS_BACK);
  for (const table of [
    'work',
    'edition',
    'edition_contributor',
    'format',
    'format_price',
    'number',
    'listing',
    'listing_step',
    'plan',
    'number_run',
    'number_tally',
  ]) {
    const must = reading(until, (db) =>
      db.all<Record<string, unknown>>(`SELECT * FROM ${table} ORDER BY 1, 2`),
    );
    const columns = Object.keys(must[0] ?? {}).map((name) => `"${name}"`);
    expect(then.all(`SELECT ${columns.join(', ')} FROM ${table} ORDER BY 1, 2`), table).toEqual(must);
  }
  raw.close();
});

test('the program opens it without a caution, and its audit finds little', () => {
  const app = openApp({ file: full, readOnly: true, today: () => LAST_DAY });
  const answer = app.call('audit.run', {});
  app.close();
  if (!answer.ok) throw new Error(answer.error.message);
  const { findings } = answer.value as Audit;
  expect(findings.length).toBeGreaterThan(0);
  expect(findings.length).toBeLessThan(300 / 5);
});

test('a copy of it can be worked with like any other catalogue', () => {
  const app = openApp({ file: grownCopy({ formats: 300 }, folder), today: () => LAST_DAY });
  const move = (id: number, to: string) => app.call('listings.move', { id, to });
  const sent = reading(full, (db) =>
    db.one<{ id: number }>("SELECT id FROM listing WHERE standing = 'sent'"),
  );
  expect(move(sent?.id ?? 0, 'proof')).toMatchObject({ ok: true, value: { standing: 'proof' } });
  expect(app.call('catalogue.check', {})).toMatchObject({ ok: true, value: { ok: true } });
  app.close();
});
