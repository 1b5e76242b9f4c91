import { bundledRangeTable, loadRangeTable, putRangeTableInUse } from '../rules/isbn/index.ts';
import type { ReadDb, WriteDb } from './connection.ts';

interface StoredTable {
  loadedOn: string;
  data: string;
}

/** The range table the user loaded, if any. */
export function storedRangeTable(db: ReadDb): StoredTable | undefined {
  return db.one<StoredTable>('SELECT loaded_on AS loadedOn, data FROM range_table WHERE id = 1');
}

/** Keeps a range table in the place of an earlier one. */
export function writeRangeTable(db: WriteDb, loadedOn: string, data: string): void {
  db.run('DELETE FROM range_table');
  db.run('INSERT INTO range_table (id, loaded_on, data) VALUES (1, ?, ?)', loadedOn, data);
}

let inUse: string | null = null;

/** Puts the catalogue's own table in use where it is newer than the bundled one; costs nothing when it is unchanged. */
export function adoptRangeTable(db: ReadDb): void {
  const stored = storedRangeTable(db);
  if ((stored?.data ?? null) === inUse) return;
  inUse = stored?.data ?? null;
  const table = stored ? loadRangeTable(JSON.parse(stored.data)) : null;
  putRangeTableInUse(table && table.date >= bundledRangeTable().date ? table : null);
}
