import { type GroupRanges, groupOf, type RangeTable, registrantLength } from './range-table.ts';
import type { Isbn, IsbnForm } from './types.ts';

const CHECK_10 = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'X'];

/** A valid number together with how it was written. */
export interface CleanNumber {
  ok: true;
  isbn: Isbn;
  form: IsbnForm;
  addOn: string | null;
}

/**
 * The quick way for numbers written without any blemish: 13 or 10 characters, or the same with all hyphens in their
 * places. Answers null for everything else, valid or not: the careful reader then decides and explains.
 */
export function readClean(text: string, table: RangeTable): CleanNumber | null {
  switch (text.length) {
    case 10:
      return readTen(text, table);
    case 13:
      return text.charCodeAt(11) === 45 ? readHyphenatedTen(text, table) : readThirteen(text, table);
    case 17:
      return readHyphenatedThirteen(text, table);
    default:
      return null;
  }
}

/** The weighted sums of the nine digits between prefix and check digit, gathered while reading them. */
interface Nine {
  value: number;
  sum13: number;
  sum10: number;
}

/** Reads digits up to `end`, skipping hyphens; null when anything else turns up or there are not nine. */
function readNine(text: string, from: number, end: number): Nine | null {
  let value = 0;
  let odd = 0;
  let total = 0;
  let running = 0;
  let count = 0;
  for (let i = from; i < end; i += 1) {
    const digit = text.charCodeAt(i) - 48;
    if (digit === -3) continue;
    if (digit < 0 || digit > 9) return null;
    value = value * 10 + digit;
    total += digit;
    running += total;
    if ((count & 1) === 0) odd += digit;
    count += 1;
  }
  // The first of the nine stands at the fourth place of thirteen, whose weight is 3.
  return count === 9 ? { value, sum13: total + 2 * odd, sum10: running + total } : null;
}

/** 978 and 979 before the nine add 9 + 3·7 + 8 = 38 and 39 to the weighted sum. */
function check13(nine: Nine, prefix979: boolean): number {
  return (10 - ((nine.sum13 + (prefix979 ? 39 : 38)) % 10)) % 10;
}

function check10(nine: Nine): string {
  return CHECK_10[(11 - (nine.sum10 % 11)) % 11] ?? '';
}

/** 978 → false, 979 → true, anything else → null. */
function readPrefix(text: string): boolean | null {
  if (text.charCodeAt(0) !== 57 || text.charCodeAt(1) !== 55) return null;
  const third = text.charCodeAt(2);
  return third === 56 ? false : third === 57 ? true : null;
}

function readThirteen(text: string, table: RangeTable): CleanNumber | null {
  const prefix979 = readPrefix(text);
  const nine = readNine(text, 3, 12);
  if (prefix979 === null || nine === null) return null;
  if (text.charCodeAt(12) - 48 !== check13(nine, prefix979)) return null;
  const group = groupOf(table, prefix979, nine.value);
  const length = group === null ? 0 : registrantLength(group, nine.value);
  if (group === null || length === 0) return null;
  const start = group.digits.length;
  const registrant = text.substring(start, start + length);
  const publication = text.substring(start + length, 12);
  const check = text.substring(12);
  return {
    ok: true,
    isbn: {
      isbn13: text,
      prefix: group.prefix,
      group: group.group,
      registrant,
      publication,
      check,
      hyphenated: `${group.head + registrant}-${publication}-${check}`,
      agency: group.agency,
      isbn10: prefix979 ? null : text.substring(3, 12) + check10(nine),
    },
    form: 'isbn13',
    addOn: null,
  };
}

function readHyphenatedThirteen(text: string, table: RangeTable): CleanNumber | null {
  const prefix979 = readPrefix(text);
  const nine = readNine(text, 3, 15);
  if (prefix979 === null || nine === null || text.charCodeAt(15) !== 45) return null;
  if (text.charCodeAt(16) - 48 !== check13(nine, prefix979)) return null;
  const group = groupOf(table, prefix979, nine.value);
  const length = group === null ? 0 : registrantLength(group, nine.value);
  if (group === null || length === 0) return null;
  const start = group.head.length;
  if (
    text.charCodeAt(3) !== 45 ||
    text.charCodeAt(start - 1) !== 45 ||
    text.charCodeAt(start + length) !== 45
  )
    return null;
  const registrant = text.substring(start, start + length);
  const publication = text.substring(start + length + 1, 15);
  const check = text.substring(16);
  return {
    ok: true,
    isbn: {
      isbn13: group.digits + registrant + publication + check,
      prefix: group.prefix,
      group: group.group,
      registrant,
      publication,
      check,
      hyphenated: text,
      agency: group.agency,
      isbn10: prefix979 ? null : group.group + registrant + publication + check10(nine),
    },
    form: 'isbn13',
    addOn: null,
  };
}

function readTen(text: string, table: RangeTable): CleanNumber | null {
  const nine = readNine(text, 0, 9);
  if (nine === null || text.substring(9) !== check10(nine)) return null;
  const group = groupOf(table, false, nine.value);
  const length = group === null ? 0 : registrantLength(group, nine.value);
  if (group === null || length === 0) return null;
  const start = group.group.length;
  return fromTen(group, nine, text.substring(start, start + length), text.substring(start + length, 9), text);
}

function readHyphenatedTen(text: string, table: RangeTable): CleanNumber | null {
  const nine = readNine(text, 0, 11);
  if (nine === null || text.substring(12) !== check10(nine)) return null;
  const group = groupOf(table, false, nine.value);
  const length = group === null ? 0 : registrantLength(group, nine.value);
  if (group === null || length === 0) return null;
  const start = group.group.length + 1;
  if (text.charCodeAt(start - 1) !== 45 || text.charCodeAt(start + length) !== 45) return null;
  const registrant = text.substring(start, start + length);
  const publication = text.substring(start + length + 1, 11);
  return fromTen(
    group,
    nine,
    registrant,
    publication,
    group.group + registrant + publication + text.substring(12),
  );
}

function fromTen(
  group: GroupRanges,
  nine: Nine,
  registrant: string,
  publication: string,
  isbn10: string,
): CleanNumber {
  const check = CHECK_10[check13(nine, false)] ?? '';
  return {
    ok: true,
    isbn: {
      isbn13: group.digits + registrant + publication + check,
      prefix: '978',
      group: group.group,
      registrant,
      publication,
      check,
      hyphenated: `${group.head + registrant}-${publication}-${check}`,
      agency: group.agency,
      isbn10,
    },
    form: 'isbn10',
    addOn: null,
  };
}
