import { type GroupRanges, groupAt, lengthAt, locate, type RangeTable } from './range-table.ts';
import { IsbnRecord } from './record.ts';
import type { ParsedIsbn } from './types.ts';

const CHECKS = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'X'];
const TAILS = CHECKS.map((check) => `-${check}`);
const SPACE = 32;
const HYPHEN = 45;
const CAPITAL_X = 88;
/** Where nothing stands between the elements. */
const NO_MARK = 0;
const LABEL = 'ISBN ';
const URN = 'urn:isbn:';

/** Sums over the nine digits read last, without the parts of prefix and check digit; see readNine. */
let sum13 = 0;
let sum10 = 0;

/**
 * The quick way for numbers written without any blemish: 13 or 10 characters, or the same with all hyphens or spaces in
 * their places. Answers null for everything else, valid or not: the careful reader then decides and explains.
 * Each form reads its own digits and all share what follows: in a list of mixed forms that is quicker than four ways
 * written out to the end, and than one reader for all of them (npm run bench -- isbn).
 */
export function readClean(text: string, table: RangeTable): ParsedIsbn | null {
  switch (text.length) {
    case 13:
      return separates(text.charCodeAt(11)) ? partedTen(text, table) : thirteen(text, table);
    case 17:
      return partedThirteen(text, table);
    case 10:
      return ten(text, table);
    default:
      return null;
  }
}

/** The same behind the commonest label or `urn:isbn:`. */
export function readLabelled(text: string, table: RangeTable): ParsedIsbn | null {
  if (text.length < 15 || text.length > 26) return null;
  if (text.startsWith(LABEL)) return readClean(text.substring(LABEL.length), table);
  if (!text.startsWith(URN)) return null;
  const read = readClean(text.substring(URN.length), table);
  return read === null ? null : { ok: true, isbn: read.isbn, form: 'urn', addOn: null };
}

function separates(code: number): boolean {
  return code === HYPHEN || code === SPACE;
}

/**
 * The value of nine digits, skipping hyphens and spaces; -1 when anything else turns up or there are not nine. Leaves
 * both weighted sums in module variables: an object for each number would cost more than the reading.
 */
function readNine(text: string, from: number, end: number): number {
  let value = 0;
  let odd = 0;
  let total = 0;
  let running = 0;
  let count = 0;
  for (let i = from; i < end; i += 1) {
    const digit = text.charCodeAt(i) - 48;
    // One comparison for a digit, by far the commonest; -3 and -16 are the hyphen and the space.
    if (digit >>> 0 <= 9) {
      value = (value * 10 + digit) | 0;
      total = (total + digit) | 0;
      running = (running + total) | 0;
      if ((count & 1) === 0) odd = (odd + digit) | 0;
      count += 1;
    } else if (digit !== -3 && digit !== -16) return -1;
  }
  if (count !== 9) return -1;
  // The first of the nine is the fourth of thirteen, whose weight is 3; in the older form weights run from 10 to 2.
  sum13 = total + 2 * odd;
  sum10 = running + total;
  return value;
}

/** 978 and 979 (prefix 0 and 1) before the nine add 9 + 3·7 + 8 = 38 and 39 to the weighted sum. */
function check13(prefix: number): number {
  return (10 - ((sum13 + 38 + prefix) % 10)) % 10;
}

function check10(): number {
  return (11 - (sum10 % 11)) % 11;
}

function isCheck10(code: number, check: number): boolean {
  return check === 10 ? code === CAPITAL_X : code === check + 48;
}

/** 0 for a beginning of 978, 1 for 979, -1 for any other. */
function bookPrefix(text: string): number {
  const last = text.charCodeAt(2) - 56;
  return last >>> 0 <= 1 && text.charCodeAt(1) === 55 && text.charCodeAt(0) === 57 ? last : -1;
}

function joined(group: GroupRanges, registrant: string, publication: string, check: number): string {
  return `${group.head + registrant}-${publication}${TAILS[check] ?? ''}`;
}

/** The number of thirteen digits with hyphens between its elements; null where it is no valid number of a range in use. */
export function hyphenateClean(isbn13: string, table: RangeTable): string | null {
  const prefix = isbn13.length === 13 ? bookPrefix(isbn13) : -1;
  const nine = prefix < 0 ? -1 : readNine(isbn13, 3, 12);
  if (nine < 0) return null;
  const check = check13(prefix);
  if (isbn13.charCodeAt(12) !== check + 48) return null;
  const place = locate(table, prefix === 1, nine);
  const group = groupAt(table, place);
  if (group === null || lengthAt(place) === 0) return null;
  const start = group.digits.length;
  const split = start + lengthAt(place);
  return joined(group, isbn13.substring(start, split), isbn13.substring(split, 12), check);
}

function thirteen(text: string, table: RangeTable): ParsedIsbn | null {
  const prefix = bookPrefix(text);
  const nine = prefix < 0 ? -1 : readNine(text, 3, 12);
  if (nine < 0 || text.charCodeAt(12) !== check13(prefix) + 48) return null;
  return part(text, 3, 12, NO_MARK, prefix, nine, table);
}

function partedThirteen(text: string, table: RangeTable): ParsedIsbn | null {
  const mark = text.charCodeAt(3);
  const prefix = separates(mark) ? bookPrefix(text) : -1;
  const nine = prefix < 0 ? -1 : readNine(text, 4, 15);
  if (nine < 0 || text.charCodeAt(16) !== check13(prefix) + 48 || text.charCodeAt(15) !== mark) return null;
  return part(text, 4, 15, mark, prefix, nine, table);
}

function ten(text: string, table: RangeTable): ParsedIsbn | null {
  const nine = readNine(text, 0, 9);
  if (nine < 0 || !isCheck10(text.charCodeAt(9), check10())) return null;
  return part(text, 0, 9, NO_MARK, 0, nine, table);
}

function partedTen(text: string, table: RangeTable): ParsedIsbn | null {
  const nine = readNine(text, 0, 11);
  if (nine < 0 || !isCheck10(text.charCodeAt(12), check10())) return null;
  return part(text, 0, 11, text.charCodeAt(11), 0, nine, table);
}

/**
 * Takes group, registrant and publication out of `text` between `from` and `end`, where the digits of `nine` were just
 * read. `mark` is what stands between the elements, and must stand in its places.
 */
function part(
  text: string,
  from: number,
  end: number,
  mark: number,
  prefix: number,
  nine: number,
  table: RangeTable,
): ParsedIsbn | null {
  const place = locate(table, prefix === 1, nine);
  const group = groupAt(table, place);
  if (group === null || lengthAt(place) === 0) return null;
  const check = check13(prefix);
  let start = from + group.group.length;
  let split = start + lengthAt(place);
  let rest = split;
  if (mark !== NO_MARK) {
    if (text.charCodeAt(start) !== mark || text.charCodeAt(split + 1) !== mark) return null;
    start += 1;
    split += 1;
    rest = split + 1;
  }
  const registrant = text.substring(start, split);
  const publication = text.substring(rest, end);
  const last = CHECKS[check] ?? '';
  const written = mark === HYPHEN ? hyphenatedAs(text, last) : joined(group, registrant, publication, check);
  const isbn = new IsbnRecord(group, registrant, publication, last, written);
  return { ok: true, isbn, form: from < 3 ? 'isbn10' : 'isbn13', addOn: null };
}

/** A text with its hyphens in place is the hyphenated form, but for the prefix and check digit that ten digits lack. */
function hyphenatedAs(text: string, check: string): string {
  return text.length === 17 ? text : `978-${text.substring(0, 12)}${check}`;
}
