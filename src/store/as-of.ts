import type Database from 'better-sqlite3';
import { COUNTED, DATED, EARLY_FORMATS, onDay } from './as-of-dates.ts';
import {
  type Fields,
  fieldsThen,
  firstEntryAfter,
  goneColumn,
  type Later,
  RECORDED_TABLES,
} from './as-of-fields.ts';
import { type ReadDb, wrap } from './connection.ts';

/** A reading connection on its way to a past day. */
interface Past extends Later {
  /** SQL of as-of-dates.ts with the day in it. */
  onDay(sql: string): string;
  /** Makes the tables and views of these names stand on the day, where they do not yet. */
  stand(names: Iterable<string>): void;
}

interface Column {
  name: string;
  type: string;
  dflt_value: string | null;
}

/** A number that was reserved by then and assigned later belonged to no format: its row can be found by none. */
function numberFields({ raw, onDay }: Past): Fields {
  const reassigned = onDay(
    'SELECT 1 FROM main.number WHERE assigned_on > :day AND (reserved_on <= :day OR spent_on <= :day) LIMIT 1',
  );
  const column = (name: string) => `r."${name}"`;
  if (raw.prepare(reassigned).get() === undefined) return { column };
  const then = ['format_id', 'assigned_on'];
  return {
    column: (name) => (then.includes(name) ? `iif(r.assigned_on <= :day, r."${name}", NULL)` : column(name)),
    copied: { by: ['isbn13', 'format_id', 'block_id'] },
  };
}

/** Makes a table or view of the day, after those that its text reads. */
function make(past: Past, sql: string): void {
  past.stand([...sql.matchAll(/\btemp\.(\w+)/g)].map(([, name]) => name ?? ''));
  past.raw.exec(past.onDay(sql));
}

/** The columns of a stored table, also those that are worked out from others. */
const columnsOf = ({ raw }: Past, table: string) =>
  raw
    .prepare("SELECT name, type, dflt_value FROM pragma_table_xinfo(?, 'main') WHERE hidden <> 1")
    .all(table) as Column[];

/**
 * Copies what cannot be read from the stored table row by row. Columns have the types of the stored ones: an index of a
 * column without a type is of no use where it is set against one with a type.
 */
function copy(past: Past, table: string, select: string, by: readonly string[] = []): void {
  const columns = columnsOf(past, table).map(({ name, type }) => `"${name}" ${type}`);
  past.raw.exec(`CREATE TEMP TABLE "${table}" (${columns.join(', ')})`);
  make(past, `INSERT INTO temp."${table}" ${select}`);
  for (const column of by)
    past.raw.exec(`CREATE INDEX temp."past_${table}_by_${column}" ON "${table}" ("${column}")`);
}

/** Shadows a stored table by a view that works out a row when it is asked for, or by a copy where none can. */
function shadow(past: Past, table: string): void {
  const fields = table === 'number' ? numberFields(past) : fieldsThen(past, table);
  const dated = DATED[table] ?? {};
  const columns = columnsOf(past, table);
  const read = columns.map(({ name }) => `${dated.columns?.[name] ?? fields.column(name)} AS "${name}"`);
  const where = [dated.where, fields.where].flatMap((one) => (one === undefined ? [] : [`(${one})`]));
  const stored = `SELECT ${read.join(', ')} FROM main."${table}" r ${where.length > 0 ? `WHERE ${where.join(' AND ')}` : ''}`;
  const { copied } = fields;
  if (copied === undefined) {
    make(past, `CREATE TEMP VIEW "${table}" AS ${stored}`);
    return;
  }
  const gone = columns.map(({ name, dflt_value }) => goneColumn(name, dflt_value)).join(', ');
  copy(past, table, copied.gone ? `${stored} UNION ALL SELECT ${gone} ${copied.gone}` : stored, copied.by);
}

interface Stored {
  name: string;
  type: string;
  sql: string | null;
}

/** How each name that a statement can bear comes to stand on the day. */
function makers(past: Past, stored: readonly Stored[]): Map<string, () => void> {
  const tables = new Set(stored.filter(({ type }) => type === 'table').map(({ name }) => name));
  return new Map<string, () => void>([
    // A file of an older form, open for reading, has fewer tables.
    ...[...Object.keys(DATED), ...RECORDED_TABLES]
      .filter((table) => tables.has(table))
      .map((table) => [table, () => shadow(past, table)] as const),
    ...Object.entries(COUNTED).map(([name, select]) => [name, () => copy(past, name, select)] as const),
    ...stored
      .filter(({ type }) => type === 'view')
      .map(({ name, sql }) => [name, () => standView(past, sql ?? '')] as const),
  ]);
}

/** A stored view reads the shadows, once it is one of the connection's own. */
function standView(past: Past, sql: string): void {
  past.stand(wordsOf(sql));
  past.raw.exec(sql.replace(/^CREATE VIEW/i, 'CREATE TEMP VIEW'));
}

const wordsOf = (sql: string) => new Set(sql.match(/\w+/g));

/** Finds the formats that are older than their plan; there may be none. */
function hasEarlyFormats(raw: Database.Database, day: string): boolean {
  raw.exec('CREATE TEMP TABLE early_format (id INTEGER PRIMARY KEY)');
  return raw.prepare(onDay(EARLY_FORMATS, day, () => false)).run().changes > 0;
}

/** Brings a connection back from the day it stood on. */
function leave(raw: Database.Database): void {
  const made = raw.prepare(
    "SELECT type, name FROM temp.sqlite_schema WHERE type IN ('table', 'view') ORDER BY type DESC",
  );
  for (const { type, name } of made.all() as Stored[]) raw.exec(`DROP ${type} temp."${name}"`);
}

/**
 * Takes a reading connection of its own to a past day; it stays on that day until it is taken to another. Every table that
 * depends on the day is shadowed for this connection under its own name, so that every query runs unchanged and nothing
 * is written to the file; it is shadowed when a statement first names it, so that a look costs what it looks at.
 */
export function rewind(raw: Database.Database, day: string): ReadDb {
  raw.pragma('temp_store = MEMORY');
  leave(raw);
  const stored = raw
    .prepare("SELECT name, type, sql FROM main.sqlite_schema WHERE type <> 'trigger'")
    .all() as Stored[];
  const waiting = new Map<string, () => void>();
  let early: boolean | undefined;
  const past: Past = {
    raw,
    onDay: (sql) =>
      onDay(sql, day, () => {
        early ??= hasEarlyFormats(raw, day);
        return early;
      }),
    since: firstEntryAfter(raw, day),
    indexes: new Set(stored.filter(({ type }) => type === 'index').map(({ name }) => name)),
    stand: (names) => {
      for (const name of names) {
        const stand = waiting.get(name);
        if (stand === undefined) continue;
        waiting.delete(name);
        try {
          stand();
        } catch (error) {
          // Nobody may take what is stored today for the day.
          waiting.set(name, stand);
          throw error;
        }
      }
    },
  };
  for (const [name, stand] of makers(past, stored)) waiting.set(name, stand);
  // The same connection, but that what its statements name is made to stand first.
  const looking: Database.Database = Object.assign(Object.create(raw), {
    prepare: (sql: string) => {
      past.stand(wordsOf(sql));
      return raw.prepare(sql);
    },
  });
  return wrap(looking);
}
