import Papa from 'papaparse';
import { delimiterOf } from '../owned-records.ts';
import { MOST_COLUMNS, MOST_ROWS, type TableIn, TableTrouble } from './table.ts';
import { decodeText } from './text-in.ts';
import { readXlsx } from './xlsx-in.ts';
import { isXlsx } from './xlsx-parts.ts';

/**
 * Reads CSV (comma, semicolon or tab; UTF-8, UTF-16 or windows-1252) or XLSX. Blank rows are left out. Throws
 * TableTrouble, and nothing else, when the bytes are no table.
 */
export function readTable(bytes: Uint8Array, sheet?: string): TableIn {
  const table = isXlsx(bytes) ? readXlsx(bytes, sheet) : readCsv(bytes);
  if (table.rows.length > MOST_ROWS)
    throw new TableTrouble(`This table has more than ${MOST_ROWS.toLocaleString('en')} rows; split it.`);
  if (table.rows.some((row) => row.cells.length > MOST_COLUMNS))
    throw new TableTrouble(`This table has more than ${MOST_COLUMNS} columns; take out what is not needed.`);
  return table;
}

function readCsv(bytes: Uint8Array): TableIn {
  const text = decodeText(bytes);
  if (text.includes('\u0000'))
    throw new TableTrouble('This file is neither a CSV nor an XLSX file; save it as one of them.');
  const delimiter = delimiterOf(text);
  const { data } = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false });
  const rows = data
    .map((cells, index) => ({ number: index + 1, cells }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  return { kind: 'csv', sheets: [''], sheet: '', rows };
}
