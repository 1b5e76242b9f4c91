import { parseIsbn, type RangeTable, tryIsbn } from '../rules/isbn/index.ts';
import type { DelimitedRecord } from './owned-records.ts';

/** Which column of a list holds what; -1 where none does. */
export interface OwnedColumns {
  /** Columns whose cells are numbers. */
  isbns: readonly number[];
  use: number;
  date: number;
  title: number;
  /** Whether the first record is a header. */
  header: boolean;
}

const USE = /\b(?:status|standing|state|use|used|assigned|availab)/i;
const DATE = /\bdate|\bon$|\bday\b/i;
const TITLE = /\btitle|\bbook\b|\bname\b|\bwork\b/i;

/** Recognises columns by their cells where they hold numbers, by the header otherwise. Looks at the first 200 records. */
export function ownedColumns(records: readonly DelimitedRecord[], table: RangeTable): OwnedColumns {
  const sample = records.slice(0, 200);
  const width = sample.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  const first = sample[0]?.cells ?? [];
  const isbns = Array.from({ length: width }, (_, column) => column).filter((column) =>
    holdsNumbers(
      sample.map(({ cells }) => cells[column] ?? ''),
      table,
    ),
  );
  const header =
    isbns.length > 0 ? isbns.every((column) => !looksLikeNumber(first[column] ?? '', table)) : false;
  const named = (pattern: RegExp): number =>
    header ? first.findIndex((cell, column) => !isbns.includes(column) && pattern.test(cell)) : -1;
  const date = named(DATE);
  const use = header
    ? first.findIndex((cell, column) => column !== date && !isbns.includes(column) && USE.test(cell))
    : -1;
  return { isbns, use, date, title: named(TITLE), header };
}

/** At least half of the filled cells, the header aside, are numbers or damaged ones. */
function holdsNumbers(cells: readonly string[], table: RangeTable): boolean {
  const filled = cells.filter((cell, row) => cell.trim() !== '' && (row > 0 || looksLikeNumber(cell, table)));
  const numbers = filled.filter((cell) => looksLikeNumber(cell, table));
  return numbers.length > 0 && numbers.length * 2 >= filled.length;
}

/** A valid number, or one whose damage is that of a number; lost zeros and short quantities look too much like others. */
function looksLikeNumber(cell: string, table: RangeTable): boolean {
  if (tryIsbn(cell, table) !== null) return true;
  const digits = cell.replace(/[^0-9]/g, '');
  if (digits.length < 3) return false;
  const parsed = parseIsbn(cell, table);
  if (parsed.ok) return true;
  const { code, repair } = parsed.problem;
  if (code === 'spreadsheet-damage' || code === 'several-numbers') return true;
  if (code === 'lost-zeros') return /^[0-9 ]+$/.test(cell);
  return repair !== null || (/^97[89]/.test(digits) && digits.length >= 9);
}
