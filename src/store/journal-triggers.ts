import type Database from 'better-sqlite3';
import { type ReadDb, wrap } from './connection.ts';

/** Tables that are not journalled: the journal itself, the list of applied migrations, and what is derived. */
const UNJOURNALLED = new Set([
  'journal',
  'migration',
  'number_run',
  'number_tally',
  // What was read from checked files is large and never changes; its hashes stand in proof_check, which is journalled.
  'proof_check_facts',
  'proof_check_picture',
]);

/** Derived too: the search's entries, its index and the tables SQLite keeps for it. */
const isSearch = (table: string) => table.startsWith('search_');

interface Column {
  name: string;
  pk: number;
  /** 0 plain, 2 or 3 generated: generated columns follow from the others and are left out. */
  hidden: number;
}

/** The journalled tables with their stored columns and key column, read from the file itself; each has a key. */
export function journalledTables(db: ReadDb): { table: string; columns: string[]; key: string }[] {
  const tables = db.all<{ name: string }>(
    "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name",
  );
  return tables
    .map(({ name }) => name)
    .filter((table) => !UNJOURNALLED.has(table) && !isSearch(table))
    .flatMap((table) => {
      const columns = db
        .all<Column>('SELECT name, pk, hidden FROM pragma_table_xinfo(?)', table)
        .filter((column) => column.hidden === 0);
      const key = columns.find((column) => column.pk === 1)?.name;
      return key ? [{ table, columns: columns.map((column) => column.name), key }] : [];
    });
}

interface UniqueSet {
  columns: string[];
  /** Condition of a partial index, '' for a whole one. */
  where: string;
}

/** The unique column sets of a table beside its key. */
function uniqueSets(raw: Database.Database, table: string, key: string): UniqueSet[] {
  const indexes = raw.pragma(`index_list(${table})`) as { name: string; unique: number }[];
  return indexes
    .filter((index) => index.unique === 1)
    .map((index) => {
      const columns = (raw.pragma(`index_info(${index.name})`) as { name: string }[]).map((c) => c.name);
      const sql = raw.prepare('SELECT sql FROM sqlite_schema WHERE name = ?').pluck().get(index.name);
      const where = typeof sql === 'string' ? (/\bWHERE\b(.*)$/s.exec(sql)?.[1]?.trim() ?? '') : '';
      return { columns, where };
    })
    .filter((set) => set.columns.join() !== key);
}

interface Reference {
  from: string;
  table: string;
  to: string;
}

const referencesOf = (raw: Database.Database, table: string) =>
  raw.pragma(`foreign_key_list(${table})`) as Reference[];

/**
 * Holds references for writers that turned foreign keys off too: a row others refer to is kept (removed and put
 * back under its key it could say anything), and a reference leads to a row that is there.
 */
function referenceGuards(raw: Database.Database, table: string, key: string, tables: string[]): string {
  const used = tables.flatMap((child) =>
    referencesOf(raw, child)
      .filter((reference) => reference.table === table)
      .map(({ from }) => `EXISTS (SELECT 1 FROM "${child}" WHERE "${from}" = OLD."${key}")`),
  );
  const own = referencesOf(raw, table).map(
    ({ from, table: parent, to }) =>
      `(NEW."${from}" IS NOT NULL AND NOT EXISTS (SELECT 1 FROM "${parent}" WHERE "${to}" = NEW."${from}"))`,
  );
  const kept = `BEGIN SELECT RAISE(ABORT, 'IN_USE: other rows refer to this row of ${table}.'); END`;
  const nowhere = `BEGIN SELECT RAISE(ABORT, 'NOT_FOUND: a row of ${table} refers to a row that is not there.'); END`;
  return `
    ${used.length > 0 ? `CREATE TRIGGER journal_${table}_in_use BEFORE DELETE ON "${table}" WHEN ${used.join(' OR ')} ${kept};` : ''}
    ${own.length > 0 ? `CREATE TRIGGER journal_${table}_refers BEFORE INSERT ON "${table}" WHEN ${own.join(' OR ')} ${nowhere};` : ''}
    ${own.length > 0 ? `CREATE TRIGGER journal_${table}_refers_update BEFORE UPDATE ON "${table}" WHEN ${own.join(' OR ')} ${nowhere};` : ''}`;
}

/**
 * Guards against changed keys (also by way of `rowid`, which `UPDATE OF` does not see), and against `OR REPLACE`,
 * whose hidden deletions fire no triggers.
 */
function keyGuards(raw: Database.Database, table: string, key: string): string {
  const sets = uniqueSets(raw, table, key);
  const clash = (set: UniqueSet, row: string) =>
    `EXISTS (SELECT 1 FROM "${table}" o WHERE ${set.columns.map((c) => `o."${c}" = NEW."${c}"`).join(' AND ')}${set.where ? ` AND (${set.where})` : ''}${row})`;
  const taken = `BEGIN SELECT RAISE(ABORT, 'ALREADY_EXISTS: a row with this key is already in ${table}.'); END`;
  const whenInserted = [{ columns: [key], where: '' }, ...sets].map((set) => clash(set, '')).join(' OR ');
  const whenUpdated = sets.map((set) => clash(set, ` AND o."${key}" <> OLD."${key}"`)).join(' OR ');
  return `
    CREATE TRIGGER journal_${table}_key_stays BEFORE UPDATE ON "${table}" WHEN OLD."${key}" IS NOT NEW."${key}"
    BEGIN SELECT RAISE(ABORT, 'FIELD_LOCKED: a row of ${table} keeps its key.'); END;
    CREATE TRIGGER journal_${table}_no_replace BEFORE INSERT ON "${table}" WHEN ${whenInserted} ${taken};
    ${sets.length > 0 ? `CREATE TRIGGER journal_${table}_no_replace_update BEFORE UPDATE ON "${table}" WHEN ${whenUpdated} ${taken};` : ''}`;
}

/** Takes the derived triggers away, so that the steps of an upgrade can reshape what they stand on. */
export function dropJournalTriggers(raw: Database.Database): void {
  const old = raw
    .prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'trigger' AND name GLOB 'journal_*' AND tbl_name <> 'journal'",
    )
    .pluck()
    .all() as string[];
  for (const name of old) raw.exec(`DROP TRIGGER "${name}"`);
}

/**
 * Derives the journal's triggers from each table's own columns and puts them in place of the old ones. Run
 * after every migration, inside its transaction, so that a new column is journalled from its first day.
 */
export function raiseJournalTriggers(raw: Database.Database): void {
  dropJournalTriggers(raw);
  const tables = journalledTables(wrap(raw));
  const names = tables.map(({ table }) => table);
  for (const { table, columns, key } of tables) {
    const row = (side: 'OLD' | 'NEW') =>
      `json_object(${columns.map((column) => `'${column}', ${side}."${column}"`).join(', ')})`;
    const changed = columns.map((column) => `OLD."${column}" IS NOT NEW."${column}"`).join(' OR ');
    const write = (action: string, keySide: string, before: string, after: string) =>
      `INSERT INTO journal (entity, row_key, action, before, after)
       VALUES ('${table}', CAST(${keySide}."${key}" AS TEXT), '${action}', ${before}, ${after});`;
    raw.exec(`
      CREATE TRIGGER journal_${table}_added AFTER INSERT ON "${table}"
      BEGIN ${write('added', 'NEW', 'NULL', row('NEW'))} END;
      CREATE TRIGGER journal_${table}_changed AFTER UPDATE ON "${table}" WHEN ${changed}
      BEGIN ${write('changed', 'OLD', row('OLD'), row('NEW'))} END;
      CREATE TRIGGER journal_${table}_removed AFTER DELETE ON "${table}"
      BEGIN ${write('removed', 'OLD', row('OLD'), 'NULL')} END;`);
    raw.exec(keyGuards(raw, table, key));
    raw.exec(referenceGuards(raw, table, key, names));
  }
}
