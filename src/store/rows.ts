import { getTableColumns } from 'drizzle-orm';
import type { SQLiteTable } from 'drizzle-orm/sqlite-core';
import type { ReadDb } from './connection.ts';

// Rows as SQLite gives them, by statements that are prepared once: on large reads the usual mapper takes as long as
// SQLite itself, and building its statements longer than reading a few rows.

/** Columns of a table, read under the names they have in the program. */
export interface Columns<Row> {
  text: string;
  /** Those that hold 0 or 1 for no or yes. */
  flags: readonly string[];
  /** Those that hold texts which more rows than one may have. */
  texts: readonly string[];
  /** Stands for the shape of a row; never there. */
  row?: Row;
}

/** The named columns of a table, or all of them; texts, numbers and flags, no JSON. */
export function columns<T extends SQLiteTable, K extends keyof T['$inferSelect'] & string>(
  table: T,
  ...names: readonly K[]
): Columns<Pick<T['$inferSelect'], K>> {
  const all = getTableColumns(table);
  const chosen = Object.entries(all).filter(([name]) => names.length === 0 || names.includes(name as K));
  return {
    text: chosen.map(([name, column]) => `"${column.name}" AS "${name}"`).join(', '),
    flags: chosen.flatMap(([name, column]) => (column.dataType === 'boolean' ? [name] : [])),
    texts: chosen.flatMap(([name, column]) =>
      column.dataType === 'string' && !column.primary && !column.isUnique ? [name] : [],
    ),
  };
}

/** Columns with more that SQL works out, each under its name. */
export function withMore<Row, More>(of: Columns<Row>, ...more: string[]): Columns<Row & More> {
  return { text: [of.text, ...more].join(', '), flags: of.flags, texts: of.texts };
}

/** Reads columns: `rest` is the statement from FROM on. */
export function rows<Row>(db: ReadDb, of: Columns<Row>, rest: string, ...params: unknown[]): Row[] {
  const found = db.all<Row>(`SELECT ${of.text} ${rest}`, ...params);
  for (const flag of of.flags)
    for (const row of found) {
      const fields = row as Record<string, unknown>;
      // SQLite has no booleans; null stays what is not known.
      if (fields[flag] !== null) fields[flag] = fields[flag] === 1;
    }
  return found;
}

/** Longer texts are titles and notes, of which few are alike. */
const SHORT = 24;
const MOST_KEPT = 20_000;
const kept = new Map<string, string>();

/** The same text as an earlier one, so that a day or a standing stands in memory once and not with every row. */
function same(text: string): string {
  if (text.length > SHORT) return text;
  const known = kept.get(text);
  if (known !== undefined) return known;
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(text, text);
  return text;
}

/** Reads columns as `rows` does, for rows that stay in memory: texts that are alike are kept once. */
export function lastingRows<Row>(db: ReadDb, of: Columns<Row>, rest: string, ...params: unknown[]): Row[] {
  const found = rows(db, of, rest, ...params);
  for (const row of found) {
    const fields = row as Record<string, unknown>;
    for (const name of of.texts) {
      const value = fields[name];
      if (typeof value === 'string') fields[name] = same(value);
    }
  }
  return found;
}
