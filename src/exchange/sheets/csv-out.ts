import { toSafe } from './cells.ts';
import type { OutCell } from './sheet-out.ts';

function field(cell: OutCell): string {
  if (cell === null) return '';
  const safe = cell.as === 'text' ? toSafe(cell.value) : cell.value;
  return /[",;\r\n\t]/.test(safe) || safe !== safe.trim() ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** One record of a CSV file, CRLF at its end (RFC 4180, section 2); texts a spreadsheet would run are made safe. */
export function csvLine(cells: readonly OutCell[]): string {
  return `${cells.map(field).join(',')}\r\n`;
}

/** What a CSV file begins with, so that spreadsheets read it as UTF-8. */
export const CSV_MARK = '\uFEFF';
