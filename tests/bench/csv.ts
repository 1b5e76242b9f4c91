import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openApp } from '../../src/app.ts';
import { blockNumber } from '../../src/rules/isbn/index.ts';
import type { TestCatalogue } from '../support/catalogue.ts';
import { settled, stage } from '../support/staged.ts';

// A CSV of formats taken over by sheets.import (read, grouped, checked, recorded, journal sealed) against bare prepared
// inserts of the very same rows into the same tables, in one transaction, with the catalogue's triggers in force and
// without any. `npm run bench -- csv [ROWS]`.

const TABLES = ['work', 'edition', 'edition_contributor', 'format', 'format_price', 'number'];

function sheetOf(rows: number): string {
  const lines = ['Title,Author,Edition number,Binding,ISBN,Published,Price GBP,Price EUR,Pages'];
  for (let row = 0; row < rows; row += 1) {
    const book = row >> 1;
    const isbn = blockNumber({ digits: '978014', publicationDigits: 6 }, row);
    const form = row % 2 === 0 ? 'Paperback' : 'E-book (EPUB)';
    lines.push(
      `Book ${book},Person ${book % 900},1,${form},${isbn},2024-05-01,9.99,11.50,${200 + (row % 300)}`,
    );
  }
  return `${lines.join('\n')}\n`;
}

/** Milliseconds that work takes. */
function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Milliseconds of bare inserts of all rows of another catalogue into a new one. */
function bare(folder: string, from: string, triggers: boolean): number {
  const file = join(folder, `bare-${triggers}.ledger`);
  openApp({ file }).close();
  const source = new Database(from, { readonly: true });
  const raw = new Database(file);
  raw.pragma('synchronous = FULL');
  if (!triggers)
    for (const name of raw.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").pluck().all())
      raw.exec(`DROP TRIGGER "${String(name)}"`);
  const work = TABLES.map((table) => {
    const rows = source.prepare(`SELECT * FROM "${table}"`).raw().all() as unknown[][];
    const columns = raw.prepare('SELECT name, hidden FROM pragma_table_xinfo(?)').all(table) as {
      name: string;
      hidden: number;
    }[];
    const kept = columns.map((column, place) => ({ ...column, place })).filter(({ hidden }) => hidden === 0);
    const list = kept.map(({ name }) => `"${name}"`).join(', ');
    const insert = raw.prepare(`INSERT INTO "${table}" (${list}) VALUES (${kept.map(() => '?').join(', ')})`);
    return { insert, rows: rows.map((row) => kept.map(({ place }) => row[place])) };
  });
  const taken = timed(() =>
    raw.transaction(() => {
      for (const { insert, rows } of work) for (const row of rows) insert.run(...row);
    })(),
  );
  source.close();
  raw.close();
  return taken;
}

/** Prints the three timings and their ratios. */
export function bench(): void {
  const rows = Number(process.argv[3] ?? 100_000);
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-bench-'));
  const file = join(folder, 'import.ledger');
  const app = openApp({ file });
  const call = ((name: string, input: unknown) => {
    const answer = app.call(name, input);
    if (!answer.ok) throw new Error(answer.error.message);
    return answer.value;
  }) as TestCatalogue['call'];
  const staged = stage({ call }, sheetOf(rows));
  const columns = settled({ call }, staged);
  const taken = timed(() => call('sheets.import', { file: staged, columns }));
  app.close();
  const withTriggers = bare(folder, file, true);
  const without = bare(folder, file, false);
  const line = (what: string, ms: number) =>
    console.log(`${what.padEnd(58)} ${(ms / 1000).toFixed(2).padStart(8)} s  ×${(taken / ms).toFixed(2)}`);
  console.log(`A CSV of ${rows.toLocaleString('en')} rows; × is the import's time against it.`);
  line('import: read, grouped, checked, recorded, sealed', taken);
  line('bare prepared inserts of the same rows, triggers on', withTriggers);
  line('bare prepared inserts of the same rows, triggers off', without);
  rmSync(folder, { recursive: true });
}
