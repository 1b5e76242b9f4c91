import type Database from 'better-sqlite3';
import type { JournalEntry } from '../contract/journal.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { journalledTables } from './journal-triggers.ts';

type Tables = Map<string, Map<string, string>>;

/** What the journal alone says the tables hold: every row as canonical JSON, by table and key. */
function replayed(db: ReadDb): Tables {
  const tables: Tables = new Map();
  const page = 5_000;
  for (let from = 0; ; ) {
    const entries = db.all<{ seq: number; entity: string; row_key: string; after: string | null }>(
      'SELECT seq, entity, row_key, after FROM journal WHERE seq > ? ORDER BY seq LIMIT ?',
      from,
      page,
    );
    for (const { entity, row_key, after } of entries) {
      const rows = tables.get(entity) ?? new Map<string, string>();
      tables.set(entity, rows);
      if (after === null) rows.delete(row_key);
      else rows.set(row_key, after);
    }
    const last = entries.at(-1);
    if (!last || entries.length < page) return tables;
    from = last.seq;
  }
}

/**
 * Replays the journal and sets it against the tables. Answers the rows that differ ('work 3'), at most `most`
 * of them; none means that the journal tells the whole story.
 */
export function replayDifferences(raw: Database.Database, db: ReadDb, most = 20): string[] {
  const tables = replayed(db);
  const differences: string[] = [];
  for (const { table, columns, key } of journalledTables(raw)) {
    const rows = tables.get(table) ?? new Map<string, string>();
    const pairs = columns.map((column) => `'${column}', "${column}"`).join(', ');
    const stored = raw.prepare(
      `SELECT CAST("${key}" AS TEXT) AS k, json_object(${pairs}) AS j FROM "${table}"`,
    );
    for (const row of stored.iterate() as Iterable<{ k: string; j: string }>) {
      if (rows.get(row.k) !== row.j) differences.push(`${table} ${row.k}`);
      rows.delete(row.k);
      if (differences.length >= most) return differences;
    }
    for (const left of rows.keys()) differences.push(`${table} ${left}`);
  }
  return differences.slice(0, most);
}

const quoted = (name: string) => `"${name.replaceAll('"', '')}"`;

/** The key column of a journalled table. */
function keyOf(db: ReadDb, table: string): string {
  const column = db.one<{ name: string }>('SELECT name FROM pragma_table_info(?) WHERE pk = 1', table);
  if (!column) throw new Error(`The journal names a table ${table} that is not there.`);
  return column.name;
}

/**
 * Takes journal entries back, newest first: an added row is removed, a removed one put back, a changed one
 * given its earlier values. The triggers decide whether that is allowed, and journal it like any change.
 */
export function takeBack(db: WriteDb, entries: readonly Omit<JournalEntry, 'about'>[]): void {
  for (const entry of entries) {
    const table = quoted(entry.entity);
    const key = quoted(keyOf(db, entry.entity));
    const before = Object.entries(entry.before ?? {});
    if (entry.action === 'added') db.run(`DELETE FROM ${table} WHERE ${key} = ?`, entry.rowKey);
    else if (entry.action === 'removed')
      db.run(
        `INSERT INTO ${table} (${before.map(([name]) => quoted(name)).join(', ')}) VALUES (${before.map(() => '?').join(', ')})`,
        ...before.map(([, value]) => value),
      );
    else {
      const changed = before.filter(([name, value]) => entry.after?.[name] !== value);
      db.run(
        `UPDATE ${table} SET ${changed.map(([name]) => `${quoted(name)} = ?`).join(', ')} WHERE ${key} = ?`,
        ...changed.map(([, value]) => value),
        entry.rowKey,
      );
    }
  }
}
