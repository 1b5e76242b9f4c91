import { type GroupRanges, groupAt, lengthAt, locate, type RangeTable } from './range-table.ts';
import type { ParsedIsbn } from './types.ts';

const CHECKS = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'X'];
const TAILS = CHECKS.map((check) => `-${check}`);
const HYPHEN = 45;

/** Sums over the nine digits read last, without the parts of prefix and check digit; see readNine. */
let sum13 = 0;
let sum10 = 0;

/**
 * The quick way for numbers written without any blemish: 13 or 10 characters, or the same with all hyphens in their
 * places. Answers null for everything else, valid or not: the careful reader then decides and explains.
 */
export function readClean(text: string, table: RangeTable): ParsedIsbn | null {
  const size = text.length;
  if (size === 10) return read(text, table, 0, 9, 0);
  if (size === 13)
    return text.charCodeAt(11) === HYPHEN ? read(text, table, 0, 11, 1) : read(text, table, 3, 12, 0);
  return size === 17 ? read(text, table, 3, 15, 1) : null;
}

/**
 * The value of nine digits, skipping hyphens; -1 when anything else turns up or there are not nine. Leaves both
 * weighted sums in module variables: an object for each number would cost more than the reading.
 */
function readNine(text: string, from: number, end: number): number {
  let value = 0;
  let odd = 0;
  let total = 0;
  let running = 0;
  let count = 0;
  for (let i = from; i < end; i += 1) {
    const digit = text.charCodeAt(i) - 48;
    if (digit === -3) continue;
    if (digit < 0 || digit > 9) return -1;
    value = (value * 10 + digit) | 0;
    total = (total + digit) | 0;
    running = (running + total) | 0;
    if ((count & 1) === 0) odd = (odd + digit) | 0;
    count += 1;
  }
  if (count !== 9) return -1;
  // The first of the nine is the fourth of thirteen, whose weight is 3; in the older form weights run from 10 to 2.
  sum13 = total + 2 * odd;
  sum10 = running + total;
  return value;
}

/**
 * Reads text whose nine digits between prefix and check stand from `from` to `end`; `gap` is 1 where hyphens part the
 * elements, otherwise 0.
 */
function read(text: string, table: RangeTable, from: number, end: number, gap: number): ParsedIsbn | null {
  const nine = readNine(text, from, end);
  if (nine < 0) return null;
  const third = from === 0 ? 56 : text.charCodeAt(2);
  if (
    from !== 0 &&
    (text.charCodeAt(0) !== 57 || text.charCodeAt(1) !== 55 || (third !== 56 && third !== 57))
  )
    return null;
  const prefix979 = third === 57;
  // 978 and 979 before the nine add 9 + 3·7 + 8 = 38 and 39 to the weighted sum.
  const check = (10 - ((sum13 + third - 18) % 10)) % 10;
  const check10 = (11 - (sum10 % 11)) % 11;
  const last = text.charCodeAt(end + gap) - 48;
  if (from === 0 ? last !== (check10 === 10 ? 40 : check10) : last !== check) return null;
  const place = locate(table, prefix979, nine);
  const group = groupAt(table, place);
  if (group === null || lengthAt(place) === 0) return null;
  const start = from + gap + group.group.length + (from === 0 ? 0 : gap);
  const split = start + lengthAt(place);
  if (
    gap === 1 &&
    (text.charCodeAt(start - 1) !== HYPHEN ||
      text.charCodeAt(split) !== HYPHEN ||
      text.charCodeAt(end) !== HYPHEN ||
      (from !== 0 && text.charCodeAt(3) !== HYPHEN))
  )
    return null;
  return assemble(
    text,
    group,
    text.substring(start, split),
    text.substring(split + gap, end),
    check,
    check10,
    from,
    gap,
  );
}

function assemble(
  text: string,
  group: GroupRanges,
  registrant: string,
  publication: string,
  check: number,
  check10: number,
  from: number,
  gap: number,
): ParsedIsbn {
  const last = CHECKS[check] ?? '';
  let isbn10: string | null = null;
  if (from === 0 && gap === 0) isbn10 = text;
  else if (group.prefix === '978') isbn10 = group.group + registrant + publication + (CHECKS[check10] ?? '');
  return {
    ok: true,
    isbn: {
      isbn13: from === 3 && gap === 0 ? text : group.digits + registrant + publication + last,
      prefix: group.prefix,
      group: group.group,
      registrant,
      publication,
      check: last,
      hyphenated:
        from === 3 && gap === 1 ? text : `${group.head + registrant}-${publication}${TAILS[check] ?? ''}`,
      agency: group.agency,
      isbn10,
    },
    form: from === 0 ? 'isbn10' : 'isbn13',
    addOn: null,
  };
}
