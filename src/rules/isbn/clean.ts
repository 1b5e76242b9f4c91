import { type GroupRanges, groupAt, lengthAt, locate, type RangeTable } from './range-table.ts';
import { IsbnRecord } from './record.ts';
import type { IsbnForm, ParsedIsbn } from './types.ts';

const CHECKS = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'X'];
const TAILS = CHECKS.map((check) => `-${check}`);
const SPACE = 32;
const HYPHEN = 45;
const CAPITAL_X = 88;
const LABEL = 'ISBN ';
const URN = 'urn:isbn:';

/** Sums over the nine digits read last, without the parts of prefix and check digit; see readNine. */
let sum13 = 0;
let sum10 = 0;

/**
 * The quick way for numbers written without any blemish: 13 or 10 characters, or the same with all hyphens or spaces in
 * their places. Answers null for everything else, valid or not: the careful reader then decides and explains.
 * The forms are written out one by one because one reader for all is a quarter slower (npm run bench -- isbn).
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
    if (digit === -3 || digit === -16) continue;
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

/** 978 and 979 before the nine add 9 + 3·7 + 8 = 38 and 39 to the weighted sum. */
function check13(prefix979: boolean): number {
  return (10 - ((sum13 + (prefix979 ? 39 : 38)) % 10)) % 10;
}

function check10(): number {
  return (11 - (sum10 % 11)) % 11;
}

function isCheck10(code: number, check: number): boolean {
  return check === 10 ? code === CAPITAL_X : code === check + 48;
}

function hasBookPrefix(text: string): boolean {
  const third = text.charCodeAt(2);
  return text.charCodeAt(0) === 57 && text.charCodeAt(1) === 55 && (third === 56 || third === 57);
}

function joined(group: GroupRanges, registrant: string, publication: string, check: number): string {
  return `${group.head + registrant}-${publication}${TAILS[check] ?? ''}`;
}

/** The number of thirteen digits with hyphens between its elements; null where it is no valid number of a range in use. */
export function hyphenateClean(isbn13: string, table: RangeTable): string | null {
  const nine = isbn13.length === 13 && hasBookPrefix(isbn13) ? readNine(isbn13, 3, 12) : -1;
  if (nine < 0) return null;
  const prefix979 = isbn13.charCodeAt(2) === 57;
  const check = check13(prefix979);
  if (isbn13.charCodeAt(12) !== check + 48) return null;
  const place = locate(table, prefix979, nine);
  const group = groupAt(table, place);
  if (group === null || lengthAt(place) === 0) return null;
  const start = group.digits.length;
  const split = start + lengthAt(place);
  return joined(group, isbn13.substring(start, split), isbn13.substring(split, 12), check);
}

function found(
  group: GroupRanges,
  registrant: string,
  publication: string,
  check: number,
  hyphenated: string,
  form: IsbnForm,
): ParsedIsbn {
  const isbn = new IsbnRecord(group, registrant, publication, CHECKS[check] ?? '', hyphenated);
  return { ok: true, isbn, form, addOn: null };
}

function thirteen(text: string, table: RangeTable): ParsedIsbn | null {
  const nine = hasBookPrefix(text) ? readNine(text, 3, 12) : -1;
  if (nine < 0) return null;
  const prefix979 = text.charCodeAt(2) === 57;
  const check = check13(prefix979);
  if (text.charCodeAt(12) !== check + 48) return null;
  const place = locate(table, prefix979, nine);
  const group = groupAt(table, place);
  if (group === null || lengthAt(place) === 0) return null;
  const start = group.digits.length;
  const split = start + lengthAt(place);
  const registrant = text.substring(start, split);
  const publication = text.substring(split, 12);
  const hyphenated = joined(group, registrant, publication, check);
  return found(group, registrant, publication, check, hyphenated, 'isbn13');
}

function partedThirteen(text: string, table: RangeTable): ParsedIsbn | null {
  const mark = text.charCodeAt(3);
  const nine = separates(mark) && hasBookPrefix(text) ? readNine(text, 4, 15) : -1;
  if (nine < 0) return null;
  const prefix979 = text.charCodeAt(2) === 57;
  const check = check13(prefix979);
  if (text.charCodeAt(16) !== check + 48 || text.charCodeAt(15) !== mark) return null;
  const place = locate(table, prefix979, nine);
  const group = groupAt(table, place);
  if (group === null || lengthAt(place) === 0) return null;
  const start = group.head.length;
  const split = start + lengthAt(place);
  if (text.charCodeAt(start - 1) !== mark || text.charCodeAt(split) !== mark) return null;
  const registrant = text.substring(start, split);
  const publication = text.substring(split + 1, 15);
  const hyphenated = mark === HYPHEN ? text : joined(group, registrant, publication, check);
  return found(group, registrant, publication, check, hyphenated, 'isbn13');
}

function ten(text: string, table: RangeTable): ParsedIsbn | null {
  const nine = readNine(text, 0, 9);
  if (nine < 0 || !isCheck10(text.charCodeAt(9), check10())) return null;
  const place = locate(table, false, nine);
  const group = groupAt(table, place);
  if (group === null || lengthAt(place) === 0) return null;
  const start = group.group.length;
  const split = start + lengthAt(place);
  const registrant = text.substring(start, split);
  const publication = text.substring(split, 9);
  const check = check13(false);
  const hyphenated = joined(group, registrant, publication, check);
  return found(group, registrant, publication, check, hyphenated, 'isbn10');
}

function partedTen(text: string, table: RangeTable): ParsedIsbn | null {
  const mark = text.charCodeAt(11);
  const nine = readNine(text, 0, 11);
  if (nine < 0 || !isCheck10(text.charCodeAt(12), check10())) return null;
  const place = locate(table, false, nine);
  const group = groupAt(table, place);
  if (group === null || lengthAt(place) === 0) return null;
  const start = group.group.length + 1;
  const split = start + lengthAt(place);
  if (text.charCodeAt(start - 1) !== mark || text.charCodeAt(split) !== mark) return null;
  const registrant = text.substring(start, split);
  const publication = text.substring(split + 1, 11);
  const check = check13(false);
  const last = CHECKS[check] ?? '';
  const hyphenated =
    mark === HYPHEN ? `978-${text.substring(0, 12)}${last}` : joined(group, registrant, publication, check);
  return found(group, registrant, publication, check, hyphenated, 'isbn10');
}
