import Papa from 'papaparse';
import { delimiterOf } from '../owned-records.ts';
import { MOST_COLUMNS, MOST_ROWS, type TableIn, type TableRow, TableTrouble } from './table.ts';
import { decodeText } from './text-in.ts';
import { readXlsx } from './xlsx-in.ts';
import { isXlsx } from './xlsx-parts.ts';

export interface TableWish {
  /** The sheet of a workbook; the first where it is left out. */
  sheet?: string | undefined;
  /** Told after each row how many there are; what it throws ends the reading. */
  onRow?: ((rows: number) => void) | undefined;
}

/**
 * Reads CSV (comma, semicolon or tab; UTF-8, UTF-16 or windows-1252) or XLSX. Blank rows are left out. Throws
 * TableTrouble, and nothing else, when the bytes are no table.
 */
export function readTable(bytes: Uint8Array, { sheet, onRow = () => {} }: TableWish = {}): TableIn {
  const table = isXlsx(bytes) ? readXlsx(bytes, sheet, onRow) : readCsv(bytes, onRow);
  if (table.rows.length > MOST_ROWS)
    throw new TableTrouble(`This table has more than ${MOST_ROWS.toLocaleString('en')} rows; split it.`);
  if (table.rows.some((row) => row.cells.length > MOST_COLUMNS))
    throw new TableTrouble(`This table has more than ${MOST_COLUMNS} columns; take out what is not needed.`);
  return table;
}

function readCsv(bytes: Uint8Array, onRow: (rows: number) => void): TableIn {
  const text = decodeText(bytes);
  if (text.includes('\u0000'))
    throw new TableTrouble('This file is neither a CSV nor an XLSX file; save it as one of them.');
  const delimiter = delimiterOf(text);
  const { data } = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false });
  const rows: TableRow[] = [];
  for (const [index, cells] of data.entries()) {
    if (cells.some((cell) => cell.trim() !== '')) rows.push({ number: index + 1, cells });
    onRow(rows.length);
  }
  return { kind: 'csv', sheets: [''], sheet: '', rows };
}
