import type { CarriedEntry } from '../contract/changes.ts';
import type { Step } from '../contract/jobs.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { CHAIN_START } from './journal.ts';
import { journalledTables } from './journal-triggers.ts';

type Value = string | number | null;
type Row = Record<string, Value>;

interface StoredEntry {
  seq: number;
  hash: string;
  entity: string;
  row_key: string;
  action: CarriedEntry['action'];
  before: string | null;
  after: string | null;
}

const AT_ONCE = 1_000;

/** Seal of the journal's first entry, which all copies of one list share. */
export function birthOf(db: ReadDb): string {
  return (
    db.one<{ hash: string }>('SELECT hash FROM journal WHERE hash IS NOT NULL ORDER BY seq LIMIT 1')?.hash ??
    CHAIN_START
  );
}

/** Writes what the journal tells, of the whole list or of one work, piece by piece; answers the number of entries. */
export function writeChanges(
  db: ReadDb,
  { form, workId }: { form: number; workId: number | undefined },
  write: (piece: string) => void,
  step: Step,
): number {
  write(
    `{\n"editionLedger": "changes",\n"layout": 1,\n"form": ${form},\n"birth": "${birthOf(db)}",\n"entries": [`,
  );
  let entries = 0;
  for (let last = 0; ; ) {
    const page = db.all<StoredEntry>(
      `SELECT seq, hash, entity, row_key, action, before, after FROM journal
       WHERE hash IS NOT NULL AND seq > ? AND (? IS NULL OR work_id = ? OR entity = 'merged_row') ORDER BY seq LIMIT ${AT_ONCE}`,
      last,
      workId ?? null,
      workId ?? null,
    );
    for (const { seq, hash, entity, row_key, action, before, after } of page) {
      const head = JSON.stringify({ seq, hash, entity, key: row_key, action }).slice(0, -1);
      write(`${entries === 0 ? '' : ','}\n${head},"before":${before},"after":${after}}`);
      entries += 1;
    }
    step(entries, null, 'entries written');
    const end = page.at(-1);
    if (!end || page.length < AT_ONCE) break;
    last = end.seq;
  }
  write('\n]\n}\n');
  return entries;
}

/** Whether the journal here holds an entry, so that both lists had it before they parted. */
export function isShared(db: ReadDb, { seq, hash }: Pick<CarriedEntry, 'seq' | 'hash'>): boolean {
  return db.one('SELECT 1 FROM journal WHERE seq = ? AND hash = ?', seq, hash) !== undefined;
}

/** Where a row that a copy added was put here by an earlier merge; undefined where it was not. */
export function mergedAs(db: ReadDb, hash: string): string | undefined {
  return db.one<{ key: string }>('SELECT row_key AS key FROM merged_row WHERE origin_hash = ?', hash)?.key;
}

/** Key here of a row that was first added here, by the seal of the entry that added it. */
export function cameFrom(db: ReadDb, hash: string): string | undefined {
  return db.one<{ key: string }>(
    "SELECT row_key AS key FROM journal WHERE hash = ? AND action = 'added'",
    hash,
  )?.key;
}

export function noteMerged(db: WriteDb, hash: string, entity: string, key: string): void {
  db.run('INSERT INTO merged_row (origin_hash, entity, row_key) VALUES (?, ?, ?)', hash, entity, key);
}

export interface MergeTable {
  columns: readonly string[];
  key: string;
  /** Keys are numbers given by the store, which may be given anew. */
  counted: boolean;
  /** Columns that hold the key of another table, by column. */
  refersTo: ReadonlyMap<string, string>;
}

/** The tables of the journal as a merge needs them, by name. */
export function mergeTables(db: ReadDb): ReadonlyMap<string, MergeTable> {
  return new Map(
    journalledTables(db).map(({ table, columns, key }) => {
      const type = db.one<{ type: string }>(
        'SELECT type FROM pragma_table_info(?) WHERE name = ?',
        table,
        key,
      )?.type;
      const references = db.all<{ from: string; table: string }>(
        'SELECT "from", "table" FROM pragma_foreign_key_list(?)',
        table,
      );
      const refersTo = new Map(references.map((one) => [one.from, one.table]));
      // An accepted finding names its work without a reference, so that it outlives it.
      if (columns.includes('work_id')) refersTo.set('work_id', 'work');
      return [table, { columns, key, counted: type === 'INTEGER', refersTo }];
    }),
  );
}

export function rowAt(db: ReadDb, table: string, { columns, key }: MergeTable, at: string): Row | undefined {
  const list = columns.map((column) => `"${column}"`).join(', ');
  return db.one<Row>(`SELECT ${list} FROM "${table}" WHERE "${key}" = ?`, at);
}

/** A key that neither this table nor anything up to `atLeast` has. */
export function freeKey(db: ReadDb, table: string, { key }: MergeTable, atLeast: number): number {
  const newest = db.one<{ n: number }>(`SELECT coalesce(max("${key}"), 0) AS n FROM "${table}"`)?.n ?? 0;
  return Math.max(newest, atLeast) + 1;
}

export function insertRow(db: WriteDb, table: string, row: Row): void {
  const columns = Object.keys(row);
  db.run(
    `INSERT INTO "${table}" (${columns.map((column) => `"${column}"`).join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
    ...Object.values(row),
  );
}

export function updateRow(db: WriteDb, table: string, { key }: MergeTable, at: string, values: Row): void {
  const columns = Object.keys(values);
  db.run(
    `UPDATE "${table}" SET ${columns.map((column) => `"${column}" = ?`).join(', ')} WHERE "${key}" = ?`,
    ...Object.values(values),
    at,
  );
}

export function removeRow(db: WriteDb, table: string, { key }: MergeTable, at: string): void {
  db.run(`DELETE FROM "${table}" WHERE "${key}" = ?`, at);
}

/** Tries one change; what it did is taken back when it throws, and the rest of the transaction stands. */
export function tried(db: WriteDb, change: () => void): void {
  db.run('SAVEPOINT one_change');
  try {
    change();
  } catch (error) {
    db.run('ROLLBACK TO one_change');
    throw error;
  } finally {
    db.run('RELEASE one_change');
  }
}
