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
