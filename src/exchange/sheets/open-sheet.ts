import type { Step } from '../../contract/jobs.ts';
import { Refusal } from '../../contract/refusal.ts';
import type { TableIn, TableRow } from './table.ts';
import { TableTrouble } from './table.ts';
import { readTable } from './table-in.ts';

/** A table with its header apart. */
export interface OpenSheet extends TableIn {
  header: string[];
  /** The rows below the header. */
  body: TableRow[];
}

/**
 * Reads a table whose first row that is not blank is its header; `step` is told of each row. Throws BAD_INPUT in one
 * sentence.
 */
export function openSheet(bytes: Uint8Array, sheet: string | undefined, step: Step): OpenSheet {
  try {
    const table = readTable(bytes, { sheet, onRow: (rows) => step(rows, null, 'rows found') });
    const [first, ...body] = table.rows;
    if (!first) throw new TableTrouble('This table is empty: it needs a header and rows below it.');
    const width = table.rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
    const header = Array.from({ length: width }, (_, index) => (first.cells[index] ?? '').trim());
    return { ...table, header, body };
  } catch (error) {
    if (error instanceof TableTrouble) throw new Refusal('BAD_INPUT', error.message, 'file');
    throw error;
  }
}
