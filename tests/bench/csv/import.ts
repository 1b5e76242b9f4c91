import { rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openApp } from '../../../src/app.ts';
import { blockNumber } from '../../../src/rules/isbn/index.ts';
import { setPragmas } from '../../../src/store/opening.ts';
import type { TestCatalogue } from '../../support/catalogue.ts';
import { settled, stage } from '../../support/staged.ts';
import { processorTime } from '../scale/turns.ts';

// A CSV of formats taken over into a new catalogue, and bare inserts of the very rows that came of it.

export const TABLES = ['work', 'edition', 'edition_contributor', 'format', 'format_price', 'number'];
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

/** Milliseconds of processor time of bare inserts of all rows of another catalogue into a new one. */
export function bareInserts(
  folder: string,
  from: string,
  triggers: boolean,
  tables: readonly string[],
): number {
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
  const taken = processorTime(() =>
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

/** Takes a CSV of so many rows over into a new catalogue at `file`; answers milliseconds of processor time. */
export function importCsv(file: string, rows: number): number {
  const app = openApp({ file });
  const call = ((name: string, input: unknown) => {
    const answer = app.call(name, input);
    if (!answer.ok) throw new Error(answer.error.message);
    return answer.value;
  }) as TestCatalogue['call'];
  const staged = stage({ call }, sheetOf(rows));
  const columns = settled({ call }, staged);
  const taken = processorTime(() => call('sheets.import', { file: staged, columns }));
  app.close();
  return taken;
}
