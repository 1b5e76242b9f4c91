import { hyphenateClean } from './clean.ts';
import { groupAt, lengthAt, locate, type RangeTable, rangeTable } from './range-table.ts';
import type { IsbnParts } from './types.ts';

/**
 * The elements of thirteen digits by the range table, or null where prefix, group or range is not in use.
 * Does not judge the check digit.
 */
export function splitIsbn(isbn13: string, table: RangeTable = rangeTable()): IsbnParts | null {
  if (!/^97[89][0-9]{10}$/.test(isbn13)) return null;
  const place = locate(table, isbn13[2] === '9', Number(isbn13.slice(3, 12)));
  const group = groupAt(table, place);
  const length = lengthAt(place);
  if (group === null || length === 0) return null;
  const start = group.digits.length;
  return {
    prefix: group.prefix,
    group: group.group,
    registrant: isbn13.slice(start, start + length),
    publication: isbn13.slice(start + length, 12),
    check: isbn13.slice(12),
    agency: group.agency,
  };
}

/**
 * Thirteen digits with hyphens between the elements, or null where they are not a valid ISBN-13 of a range in use.
 * Validates, splits and hyphenates without putting the record of parseIsbn together: for long lists.
 */
export function hyphenate(isbn13: string, table: RangeTable = rangeTable()): string | null {
  return hyphenateClean(isbn13, table);
}

/** As people read a number: with hyphens where a range in use places them, otherwise as it stands. null stays null. */
export function shownIsbn(isbn13: string): string;
export function shownIsbn(isbn13: string | null): string | null;
export function shownIsbn(isbn13: string | null): string | null {
  return isbn13 === null ? null : (hyphenate(isbn13) ?? isbn13);
}
