import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openApp } from '../../src/app.ts';
import { blockNumber } from '../../src/rules/isbn/index.ts';
import { setPragmas } from '../../src/store/catalogue-file.ts';
import type { TestCatalogue } from '../support/catalogue.ts';
import { settled, stage } from '../support/staged.ts';

// A CSV of formats taken over by sheets.import (read, grouped, checked, recorded, journal sealed) against bare prepared
// inserts of the very same rows, in one transaction, into the same kind of file under the same settings: with the file's
// own triggers, which write the journal and the search; without triggers, but with the sealed journal as it came to be;
// and without either. Processor time, since other work on the machine stretches any other. `npm run bench -- csv [ROWS]`.

const TABLES = ['work', 'edition', 'edition_contributor', 'format', 'format_price', 'number'];
const SIZES = process.argv[3] === undefined ? [1_000, 10_000, 100_000] : [Number(process.argv[3])];

/** A table of so many formats, two a book. */
export function sheetOf(rows: number): string {
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

/** Milliseconds of processor time that work takes. */
function cpu(work: () => void): number {
  const begun = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1000;
}

/** A prepared insert of the stored columns of a table, and the rows of another catalogue for it, ready in memory. */
function inserts(source: Database.Database, raw: Database.Database, table: string) {
  const columns = raw.prepare('SELECT name FROM pragma_table_xinfo(?) WHERE hidden = 0').pluck().all(table);
  const list = columns.map((name) => `"${String(name)}"`).join(', ');
  const rows = source.prepare(`SELECT ${list} FROM "${table}"`).raw().all() as unknown[][];
  const insert = raw.prepare(
    `INSERT INTO "${table}" (${list}) VALUES (${columns.map(() => '?').join(', ')})`,
  );
  return { insert, rows };
}

/** Milliseconds of bare inserts of all rows of another catalogue into a new one. */
function bare(folder: string, from: string, triggers: boolean, tables: readonly string[]): number {
  const file = join(folder, 'bare.ledger');
  openApp({ file }).close();
  const source = new Database(from, { readonly: true });
  const raw = new Database(file);
  setPragmas(raw, false);
  if (!triggers)
    for (const name of raw.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").pluck().all())
      raw.exec(`DROP TRIGGER "${String(name)}"`);
  const before = new Map(
    tables.map((table) => [table, raw.prepare(`SELECT count(*) FROM "${table}"`).pluck().get()]),
  );
  const work = tables.map((table) => ({ table, ...inserts(source, raw, table) }));
  const taken = cpu(() =>
    raw.transaction(() => {
      for (const { insert, rows, table } of work)
        for (const row of rows.slice(Number(before.get(table)))) insert.run(...row);
    })(),
  );
  source.close();
  raw.close();
  for (const end of ['', '-wal', '-shm', '-lock']) rmSync(`${file}${end}`, { force: true });
  return taken;
}

interface Measured {
  rows: number;
  taken: number;
  withTriggers: number;
  withJournal: number;
  plain: number;
}

function measure(rows: number): Measured {
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
  const taken = cpu(() => call('sheets.import', { file: staged, columns }));
  app.close();
  const measured = {
    rows,
    taken,
    withTriggers: bare(folder, file, true, TABLES),
    withJournal: bare(folder, file, false, [...TABLES, 'search_entry', 'journal']),
    plain: bare(folder, file, false, TABLES),
  };
  rmSync(folder, { recursive: true });
  return measured;
}

/** Prints the timings of each size, their ratios, and how the import grows from one size to the next. */
export function bench(): void {
  let before: Measured | undefined;
  for (const rows of SIZES) {
    const now = measure(rows);
    const line = (what: string, ms: number) =>
      console.log(
        `  ${what.padEnd(60)} ${(ms / 1000).toFixed(2).padStart(8)} s  ×${(now.taken / ms).toFixed(2)}`,
      );
    console.log(`A CSV of ${rows.toLocaleString('en')} rows; × is the import's processor time against it.`);
    line('import: read, grouped, checked, recorded, sealed', now.taken);
    line("bare prepared inserts of the same rows, the file's triggers on", now.withTriggers);
    line('the same rows and the sealed journal, no triggers', now.withJournal);
    line('the same rows alone, no triggers and no journal', now.plain);
    const growth = before && Math.log(now.taken / before.taken) / Math.log(now.rows / before.rows);
    if (growth !== undefined) console.log(`  grows with the ${growth.toFixed(2)}th power of the rows`);
    before = now;
  }
  console.log(`Peak memory ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB, the bare rows in it.`);
}
