import type { NumberRow } from '../../../src/contract/numbers.ts';

/** What a spreadsheet may run as a formula when a cell begins with it. */
const FORMULA = /^\s*[=+\-@＝＋－＠]|^[\t\r]/;

const HEAD = ['ISBN', 'Standing', 'Used for', 'Since', 'Why spent'];

/** Byte order mark: without it some spreadsheets read the file in an old alphabet. */
const MARK = '\uFEFF';

function field(text: string): string {
  const safe = FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) || safe !== safe.trim() ? `"${safe.replaceAll('"', '""')}"` : safe;
}

const record = (fields: readonly string[]): string => `${fields.map(field).join(',')}\r\n`;

/** The first record of the file, with what goes before it. */
export const CSV_HEAD = MARK + record(HEAD);

/**
 * Rows as CSV records (RFC 4180): the ISBN hyphenated, which spreadsheets keep as text where thirteen bare digits
 * would become a rounded figure; texts that would run as a formula get an apostrophe in front.
 */
export function csvRecords(rows: readonly NumberRow[]): string {
  return rows
    .map((row) => record([row.hyphenated, row.standing, row.usedFor, row.since ?? '', row.spentReason ?? '']))
    .join('');
}
