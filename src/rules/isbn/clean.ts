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

/** Sums over the nine digits read last, without the parts of prefix and check digit; see nineInARow. */
let sum13 = 0;
let sum10 = 0;

/**
 * The quick way for numbers written without any blemish: 13 or 10 characters, or the same with all hyphens or spaces in
 * their places, perhaps behind the commonest label or `urn:isbn:`. Answers null for everything else, valid or not: the
 * careful reader then decides and explains.
 */
export function readClean(text: string, table: RangeTable): ParsedIsbn | null {
  const bare = readBare(text, table, null);
  if (bare !== null || text.length < 15 || text.length > 26) return bare;
  if (text.startsWith(LABEL)) return readBare(text.substring(LABEL.length), table, null);
  return text.startsWith(URN) ? readBare(text.substring(URN.length), table, 'urn') : null;
}

/** The forms are written out one by one because one reader for all is a quarter slower (npm run bench -- isbn). */
function readBare(text: string, table: RangeTable, form: IsbnForm | null): ParsedIsbn | null {
  switch (text.length) {
    case 13:
      return separates(text.charCodeAt(11))
        ? partedTen(text, table, form ?? 'isbn10')
        : thirteen(text, table, form ?? 'isbn13');
    case 17:
      return partedThirteen(text, table, form ?? 'isbn13');
    case 10:
      return ten(text, table, form ?? 'isbn10');
    default:
      return null;
  }
}

function separates(code: number): boolean {
  return code === HYPHEN || code === SPACE;
}

/**
 * The value of the nine digits from `at` on; -1 when anything else is among them. Leaves the sums as readNine does.
 * Written out digit by digit: this takes a third of the time of the loop that skips hyphens.
 */
function nineInARow(text: string, at: number): number {
  const a = text.charCodeAt(at) - 48;
  const b = text.charCodeAt(at + 1) - 48;
  const c = text.charCodeAt(at + 2) - 48;
  const d = text.charCodeAt(at + 3) - 48;
  const e = text.charCodeAt(at + 4) - 48;
  const f = text.charCodeAt(at + 5) - 48;
  const g = text.charCodeAt(at + 6) - 48;
  const h = text.charCodeAt(at + 7) - 48;
  const i = text.charCodeAt(at + 8) - 48;
  if (!(isDigit(a) && isDigit(b) && isDigit(c) && isDigit(d) && isDigit(e))) return -1;
  if (!(isDigit(f) && isDigit(g) && isDigit(h) && isDigit(i))) return -1;
  // The first of the nine is the fourth of thirteen, whose weight is 3; in the older form weights run from 10 to 2.
  sum13 = 3 * (a + c + e + g + i) + b + d + f + h;
  sum10 = 10 * a + 9 * b + 8 * c + 7 * d + 6 * e + 5 * f + 4 * g + 3 * h + 2 * i;
  const front = ((a * 10 + b) * 10 + c) * 10 + d;
  return front * 100_000 + (((e * 10 + f) * 10 + g) * 10 + h) * 10 + i;
}

function isDigit(value: number): boolean {
  return value >= 0 && value <= 9;
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
    const code = text.charCodeAt(i);
    const digit = code - 48;
    if (digit < 0 || digit > 9) {
      if (separates(code)) continue;
      return -1;
    }
    value = (value * 10 + digit) | 0;
    total = (total + digit) | 0;
    running = (running + total) | 0;
    if ((count & 1) === 0) odd = (odd + digit) | 0;
    count += 1;
  }
  if (count !== 9) return -1;
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

/** The short back half is put together first: one copy of the long front half less. */
function joined(group: GroupRanges, registrant: string, publication: string, check: number): string {
  const back = `-${publication}${TAILS[check] ?? ''}`;
  return group.head + registrant + back;
}

/** The number of thirteen digits with hyphens between its elements; null where it is no valid number of a range in use. */
export function hyphenateClean(isbn13: string, table: RangeTable): string | null {
  const nine = isbn13.length === 13 && hasBookPrefix(isbn13) ? nineInARow(isbn13, 3) : -1;
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

function thirteen(text: string, table: RangeTable, form: IsbnForm): ParsedIsbn | null {
  const nine = hasBookPrefix(text) ? nineInARow(text, 3) : -1;
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
  return found(group, registrant, publication, check, hyphenated, form);
}

function partedThirteen(text: string, table: RangeTable, form: IsbnForm): ParsedIsbn | null {
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
  return found(group, registrant, publication, check, hyphenated, form);
}

function ten(text: string, table: RangeTable, form: IsbnForm): ParsedIsbn | null {
  const nine = nineInARow(text, 0);
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
  return found(group, registrant, publication, check, hyphenated, form);
}

function partedTen(text: string, table: RangeTable, form: IsbnForm): ParsedIsbn | null {
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
  return found(group, registrant, publication, check, hyphenated, form);
}
