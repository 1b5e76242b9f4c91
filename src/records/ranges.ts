import { bundledRangeTable, loadRangeTable, putRangeTableInUse, rangeTable } from '../rules/isbn/index.ts';
import type { ReadDb } from '../store/connection.ts';
import { storedRangeTable } from '../store/ranges.ts';

/** The range table in use, as the contract shows it. */
export function rangeFacts(db: ReadDb) {
  const { source, serial, issued, date, groups } = rangeTable();
  return {
    source,
    serial,
    issued,
    date,
    groups: groups.length,
    loadedOn: storedRangeTable(db)?.loadedOn ?? null,
  };
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
