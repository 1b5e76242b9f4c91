import { fromSafe } from './cells.ts';
import type { TableRow } from './table.ts';

/** What a cell shows whose formula failed (ISO/IEC 29500-1, section 18.17.3). */
export const FAILED_FORMULA = /^#(?:N\/A|NAME\?|REF!|VALUE!|DIV\/0!|NUM!|NULL!)$/;

/** What the person has put in place of a cell, by row and column: `5 2`. */
export type Repairs = ReadonlyMap<string, string>;

/** The text of a cell, as repaired, without an apostrophe that guarded it. */
export function cellText(row: TableRow, column: number, repairs: Repairs): string {
  return fromSafe(repairs.get(`${row.number} ${column}`) ?? row.cells[column] ?? '').trim();
}
