import type { Step } from '../contract/jobs.ts';
import { Refusal } from '../contract/refusal.ts';
import type { WholeCatalogue } from '../contract/whole.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { journalledTables } from './journal-triggers.ts';
import { withSearchLater } from './search-later.ts';
import { brokenRule } from './whole-check.ts';

/**
 * Tables that a catalogue written as one file leaves out: the journal, which stays with the file it tells of, and
 * what follows from the other tables; and pictures of the pages of checked files, which would make it too large for
 * any reader and are made anew by checking the file again. Every table is either carried or named here; a test holds
 * that.
 */
export const LEFT_OUT: readonly RegExp[] = [
  /^journal$/,
  /^migration$/,
  /^number_(?:run|tally)$/,
  /^search_/,
  /^proof_check_picture$/,
];

/** Carried beside the tables that are journalled. */
const EVIDENCE = { table: 'proof_check_facts', columns: ['check_id', 'facts'], key: 'check_id' };

type Value = string | number | null | Uint8Array;
type Row = Record<string, Value>;

/** The tables that are carried, with their columns by name and their key. */
export function carriedTables(db: ReadDb): { table: string; columns: string[]; key: string }[] {
  return [...journalledTables(db), EVIDENCE]
    .map(({ table, columns, key }) => ({ table, key, columns: [...columns].sort() }))
    .sort((a, b) => (a.table < b.table ? -1 : 1));
}

const written = (value: Value) =>
  value instanceof Uint8Array ? { base64: Buffer.from(value).toString('base64') } : value;

/** Rows read at once. */
const AT_ONCE = 1_000;

/**
 * Writes the whole catalogue, piece by piece: the same catalogue gives the same bytes. Answers the number of rows.
 */
export function writeWhole(db: ReadDb, form: number, write: (piece: string) => void, step: Step): number {
  let rows = 0;
  write(`{\n"editionLedger": "catalogue",\n"layout": 1,\n"form": ${form},\n"tables": {`);
  for (const [place, { table, columns, key }] of carriedTables(db).entries()) {
    write(`${place === 0 ? '' : ','}\n${JSON.stringify(table)}: [`);
    const list = columns.map((column) => `"${column}"`).join(', ');
    let first = true;
    for (let last: Value | undefined; ; ) {
      const after = last === undefined ? '' : `WHERE "${key}" > ?`;
      const page = db.all<Row>(
        `SELECT ${list} FROM "${table}" ${after} ORDER BY "${key}" LIMIT ${AT_ONCE}`,
        ...(last === undefined ? [] : [last]),
      );
      for (const row of page) {
        const values = Object.fromEntries(columns.map((column) => [column, written(row[column] ?? null)]));
        write(`${first ? '' : ','}\n${JSON.stringify(values)}`);
        first = false;
      }
      rows += page.length;
      step(rows, null, 'rows written');
      last = page.at(-1)?.[key];
      if (page.length < AT_ONCE) break;
    }
    write(first ? ']' : '\n]');
  }
  write('\n}\n}\n');
  return rows;
}

/** Tables in an order in which every row finds those it refers to; tables that refer to each other stay by name. */
function inOrder(db: ReadDb, names: readonly string[]): string[] {
  const parents = new Map(
    names.map((name) => [
      name,
      db
        .all<{ table: string }>('SELECT "table" FROM pragma_foreign_key_list(?)', name)
        .map((row) => row.table)
        .filter((parent) => parent !== name),
    ]),
  );
  const done = new Set<string>();
  const visit = (name: string, way: readonly string[]) => {
    if (done.has(name) || way.includes(name)) return;
    for (const parent of parents.get(name) ?? []) visit(parent, [...way, name]);
    done.add(name);
  };
  for (const name of names) visit(name, []);
  return [...done];
}

/**
 * Triggers that stay in force while a catalogue is taken over: those that write the journal, the runs and tallies of
 * numbers and the index of the search. The others guard steps in time, which the file has behind it, or carry steps
 * out, whose results stand in the file.
 */
const KEPT =
  /\b(?:INTO|UPDATE(?: OR [A-Z]+)?|FROM)\s+"?(?:journal|number_run|number_run_place|number_tally|search_\w+)\b/i;
const isKept = ({ sql }: { sql: string }) =>
  !/\bRAISE\s*\(/i.test(sql) && KEPT.test(sql.replace(/^[\s\S]*?\bBEGIN\b/i, ''));

/** Runs work while no trigger but the kept ones is in force; they are all as before afterwards. */
function withoutGuards(db: WriteDb, work: () => void): void {
  const triggers = db
    .all<{ name: string; sql: string }>(
      "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY rowid",
    )
    .filter((trigger) => !isKept(trigger));
  for (const { name } of triggers) db.run(`DROP TRIGGER "${name}"`);
  work();
  for (const { sql } of triggers) db.run(sql);
}

/** Why a row was not taken, in a sentence that names it. */
function refuseRow(table: string, index: number, error: unknown): never {
  if (error instanceof Refusal) throw error;
  const code = (error as { code?: unknown }).code;
  if (typeof code !== 'string' || !code.startsWith('SQLITE_CONSTRAINT')) {
    if (!(error instanceof TypeError || error instanceof RangeError) && code !== 'SQLITE_MISMATCH')
      throw error;
  }
  const why = error instanceof Error ? error.message : String(error);
  throw new Refusal(
    'BAD_INPUT',
    `Row ${index + 1} of table ${table} does not fit the catalogue (${why.slice(0, 200)}); write the file anew from where it came.`,
    'file',
  );
}

function insertRows(
  db: WriteDb,
  table: string,
  rows: WholeCatalogue['tables'][string],
  told: () => void,
): void {
  for (const [index, row] of rows.entries()) {
    const columns = Object.keys(row);
    const values = Object.values(row).map((value) =>
      value !== null && typeof value === 'object' ? Buffer.from(value.base64, 'base64') : value,
    );
    const marks = columns.map(() => '?').join(', ');
    const list = columns.map((column) => `"${column}"`).join(', ');
    try {
      db.run(`INSERT INTO "${table}" (${list}) VALUES (${marks})`, ...values);
    } catch (error) {
      refuseRow(table, index, error);
    }
    told();
  }
}

/** Refuses tables and columns that this catalogue does not have: nothing of a file is dropped unseen. */
function checkNames(db: ReadDb, tables: WholeCatalogue['tables']): void {
  const known = new Map(carriedTables(db).map(({ table, columns }) => [table, new Set(columns)]));
  for (const [table, rows] of Object.entries(tables)) {
    const columns = known.get(table);
    if (!columns && rows.length > 0)
      throw new Refusal('BAD_INPUT', `This program knows no table called ${table.slice(0, 60)}.`, 'file');
    for (const [index, row] of rows.entries()) {
      const strange = Object.keys(row).find((column) => !columns?.has(column));
      if (strange !== undefined)
        throw new Refusal(
          'BAD_INPUT',
          `Row ${index + 1} of table ${table}: there is no column called ${strange.slice(0, 60)}.`,
          'file',
        );
    }
  }
}

/**
 * Puts a whole catalogue into an empty one. The rules that the tables declare hold for every row; the guards, which
 * judge steps one by one, are off meanwhile, and what they guard is checked at the end. Throws a Refusal that names
 * table and row; the caller's transaction then takes all of it back.
 */
export function loadWhole(db: WriteDb, whole: WholeCatalogue, step: Step): void {
  checkNames(db, whole.tables);
  const total = Object.values(whole.tables).reduce((sum, rows) => sum + rows.length, 0);
  let done = 0;
  db.run('PRAGMA defer_foreign_keys = ON');
  const names = carriedTables(db).map(({ table }) => table);
  const putIn = () => {
    for (const table of inOrder(db, names).reverse()) db.run(`DELETE FROM "${table}"`);
    for (const table of inOrder(db, names))
      insertRows(db, table, whole.tables[table] ?? [], () => {
        done += 1;
        step(done, total, 'rows taken over');
      });
  };
  withoutGuards(db, () => withSearchLater(db, step, putIn));
  const [nowhere] = db.all<{ table: string; parent: string }>('PRAGMA foreign_key_check');
  if (nowhere)
    throw new Refusal(
      'CATALOGUE_DAMAGED',
      `A row of table ${nowhere.table} refers to a row of ${nowhere.parent} that is not in the file.`,
      'file',
    );
  const broken = brokenRule(db);
  if (broken !== null) throw new Refusal('CATALOGUE_DAMAGED', `${broken} Nothing was taken over.`, 'file');
}
