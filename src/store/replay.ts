import type { JournalEntry } from '../contract/journal.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { journalledTables } from './journal-triggers.ts';

type Tables = Map<string, Map<string, string>>;

/** A row that does not stand as the journal tells it: canonical JSON of what it tells and of what the table holds. */
export interface Divergence {
  table: string;
  key: string;
  told: string | null;
  held: string | null;
}

/**
 * What the journal alone says the tables hold: every row as canonical JSON, by table and key. `broken` names the
 * rows ('work 3') of entries that do not start from where the entry before them left the row.
 */
function replayed(db: ReadDb): { tables: Tables; broken: string[] } {
  const tables: Tables = new Map();
  const broken: string[] = [];
  const page = 5_000;
  for (let from = 0; ; ) {
    const entries = db.all<{
      seq: number;
      entity: string;
      row_key: string;
      before: string | null;
      after: string | null;
    }>(
      'SELECT seq, entity, row_key, before, after FROM journal WHERE seq > ? ORDER BY seq LIMIT ?',
      from,
      page,
    );
    for (const { entity, row_key, before, after } of entries) {
      const rows = tables.get(entity) ?? new Map<string, string>();
      tables.set(entity, rows);
      if ((rows.get(row_key) ?? null) !== before) broken.push(`${entity} ${row_key}`);
      if (after === null) rows.delete(row_key);
      else rows.set(row_key, after);
    }
    const last = entries.at(-1);
    if (!last || entries.length < page) return { tables, broken };
    from = last.seq;
  }
}

/** Every row that stands otherwise than the journal tells, table by table. */
function* divergencesFrom(db: ReadDb, tables: Tables): Generator<Divergence> {
  for (const { table, columns, key } of journalledTables(db)) {
    const rows = tables.get(table) ?? new Map<string, string>();
    const pairs = columns.map((column) => `'${column}', "${column}"`).join(', ');
    for (const row of db.all<{ key: string; held: string }>(
      `SELECT CAST("${key}" AS TEXT) AS key, json_object(${pairs}) AS held FROM "${table}"`,
    )) {
      const told = rows.get(row.key) ?? null;
      if (told !== row.held) yield { table, key: row.key, told, held: row.held };
      rows.delete(row.key);
    }
  }
  for (const [table, rows] of tables) for (const [key, told] of rows) yield { table, key, told, held: null };
}

/** Every row that stands otherwise than the journal tells; used where the journal is brought up to the tables. */
export function divergences(db: ReadDb): Divergence[] {
  return [...divergencesFrom(db, replayed(db).tables)];
}

/** Blocks whose runs of taken numbers are not as the numbers make them. */
const WRONG_RUNS = `
  WITH placed AS (
    SELECT block_id, block_index, block_index - row_number() OVER (PARTITION BY block_id ORDER BY block_index) AS run
    FROM number WHERE block_id IS NOT NULL
  ), must AS (
    SELECT block_id, min(block_index) AS first_index, max(block_index) AS last_index FROM placed GROUP BY block_id, run
  ), kept AS (SELECT block_id, first_index, last_index FROM number_run)
  SELECT DISTINCT 'number_run of block ' || block_id AS what FROM (
    SELECT * FROM (SELECT * FROM must EXCEPT SELECT * FROM kept)
    UNION ALL SELECT * FROM (SELECT * FROM kept EXCEPT SELECT * FROM must))`;

/** Blocks whose counts of numbers are not as the numbers make them. */
const WRONG_TALLIES = `
  SELECT 'number_tally of block ' || coalesce(b.id, t.block_id) AS what
  FROM number_block b FULL JOIN number_tally t ON t.block_id = b.id
  WHERE (t.reserved, t.assigned, t.spent) IS NOT (
    SELECT coalesce(sum(n.standing = 'reserved'), 0), coalesce(sum(n.standing = 'assigned'), 0),
      coalesce(sum(n.standing = 'spent'), 0) FROM number n WHERE n.block_id = b.id)`;

/** Records that the search would not find by what they say now. */
const WRONG_ENTRIES = `
  SELECT DISTINCT 'search_entry of ' || kind || ' ' || record_id AS what FROM (
    SELECT * FROM (SELECT id, kind, record_id, name, words FROM search_source
      EXCEPT SELECT id, kind, record_id, name, words FROM search_entry)
    UNION ALL SELECT * FROM (SELECT id, kind, record_id, name, words FROM search_entry
      EXCEPT SELECT id, kind, record_id, name, words FROM search_source))`;

/** What is derived from other rows; a file of an older form, opened for reading, has no search yet. */
function wrongDerived(db: ReadDb): { what: string }[] {
  const search = db.one("SELECT 1 FROM sqlite_schema WHERE name = 'search_entry'") !== undefined;
  return db.all(`${WRONG_RUNS} UNION ALL ${WRONG_TALLIES}${search ? ` UNION ALL ${WRONG_ENTRIES}` : ''}`);
}

/**
 * Replays the journal and sets it against the tables, and what is derived from other rows against those.
 * Answers the rows that differ ('work 3', 'number_run of block 1'), at most `most` of them; none means that the
 * journal tells the whole story.
 */
export function replayDifferences(db: ReadDb, most = 20): string[] {
  const { tables, broken } = replayed(db);
  const differences = new Set(broken.slice(0, most));
  for (const { table, key } of divergencesFrom(db, tables)) {
    if (differences.size >= most) break;
    differences.add(`${table} ${key}`);
  }
  for (const { what } of wrongDerived(db)) differences.add(what);
  return [...differences].slice(0, most);
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
