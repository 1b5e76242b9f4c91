import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, expect, it } from 'vitest';
import { rewind } from '../../src/store/as-of.ts';
import { openCatalogueFile } from '../../src/store/catalogue-file.ts';
import { wrap } from '../../src/store/connection.ts';
import { randomNumbers } from '../support/history.ts';
import { dayAt, playHistory } from '../support/past-days/history.ts';
import { type Row, replayedTo } from '../support/past-days/replay.ts';

const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-past-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Rows in an order of their own, each with its columns in order. */
const inOrder = (rows: readonly Row[]) =>
  rows.map((row) => JSON.stringify(Object.entries(row).toSorted(([a], [b]) => (a < b ? -1 : 1)))).toSorted();

it.each(Array.from({ length: 40 }, (_, at) => 100 + at))(
  'a past day is what the whole journal says when it is replayed up to it: history %i',
  (seed) => {
    const path = join(folder, `${seed}.ledger`);
    const file = openCatalogueFile(path, { at: '2020-01-01T10:00:00.000Z' });
    const last = playHistory(file, seed, 150);
    const next = randomNumbers(seed + 1);
    // One connection goes from day to day, as the program's do.
    const raw = new Database(path, { readonly: true });
    const stored = wrap(file.rawRead);
    for (let look = 0; look < 6; look += 1) {
      const day = dayAt(look === 0 ? last : next() % (last + 20));
      const past = rewind(raw, day);
      const must = replayedTo(stored, day);
      // What is named first may not matter.
      const tables = Object.keys(must).toSorted(() => (next() % 2) - 0.5);
      for (const table of tables)
        expect([day, table, inOrder(past.all<Row>(`SELECT * FROM ${table}`))]).toEqual([
          day,
          table,
          inOrder(must[table] ?? []),
        ]);
    }
    raw.close();
    file.close();
  },
);
