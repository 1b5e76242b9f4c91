export type CsvCell = string | number | null;

/** What a spreadsheet may run as a formula when a cell begins with it, also behind blanks or in full width. */
const FORMULA = /^\s*[=+\-@＝＋－＠]|^[\t\r]/;

function field(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const safe = FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(safe) || safe !== safe.trim() ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * A CSV text of records with equal numbers of fields, the header first: CRLF after every record, fields quoted
 * where they hold a comma, quote or line break, quotes doubled (RFC 4180, section 2). Texts that a spreadsheet
 * would run as a formula get an apostrophe in front; numbers are written as they are. Throws RangeError when a
 * record is longer or shorter than the header, which is a programming error.
 */
export function csvText(header: readonly string[], records: readonly (readonly CsvCell[])[]): string {
  for (const record of records)
    if (record.length !== header.length)
      throw new RangeError(`A record has ${record.length} fields, the header ${header.length}.`);
  return [header, ...records].map((record) => `${record.map(field).join(',')}\r\n`).join('');
}
