import { plainText } from './characters.ts';
import { checkDigit10, checkDigit13, checkFits10, checkFits13, toIsbn13 } from './check-digit.ts';
import { readClean } from './clean.ts';
import { type RangeTable, rangeTable } from './range-table.ts';
import { hyphenate, splitIsbn } from './split.ts';
import type { IsbnProblem, IsbnProblemCode, ParseResult } from './types.ts';

/** Reads one ISBN out of what was typed, pasted or scanned; never throws. */
export function parseIsbn(text: string, table: RangeTable = rangeTable()): ParseResult {
  return readClean(text, table) ?? readCarefully(text, table);
}

function readCarefully(typed: string, table: RangeTable): ParseResult {
  const plain = plainText(typed);
  const body = plain.text.trim().replace(/^(?:urn:)?isbn(?:[- ]?1[03]\b)?:?\s*/i, '');
  if (body === '') return refuse('empty', 'Nothing was entered.', 'Type an ISBN of 13 or 10 digits.');
  const digits = body.replace(/[- ]/g, '').toUpperCase();
  if (!/[0-9]/.test(digits)) return refuse('no-number', 'There is no number in this text.', null);
  if (!/^[0-9]+X?$/.test(digits)) return refuse('letter', 'A letter stands where a digit belongs.', null);
  if (digits.length < 10 || (digits.length > 10 && digits.length < 13))
    return refuse('too-short', `There are ${digits.length} digits; an ISBN has 13 or 10.`, null);
  if (digits.length > 13)
    return refuse('too-long', `There are ${digits.length} digits; an ISBN has 13.`, null);
  return judge(digits, body, table);
}

function judge(digits: string, body: string, table: RangeTable): ParseResult {
  const ten = digits.length === 10;
  if (ten ? !checkFits10(digits) : !checkFits13(digits)) {
    const due = ten ? checkDigit10(digits.slice(0, 9)) : checkDigit13(digits.slice(0, 12));
    return refuse('check-digit', `The check digit does not fit; for these digits it would be ${due}.`, null);
  }
  const thirteen = ten ? toIsbn13(digits) : digits;
  if (thirteen.startsWith('9790'))
    return refuse('music-number', 'Numbers with 979-0 are for printed music.', null);
  if (!/^97[89]/.test(thirteen))
    return refuse('not-a-book-number', 'A book number begins with 978 or 979.', null);
  const hyphenated = hyphenate(thirteen, table);
  if (hyphenated === null || splitIsbn(thirteen, table) === null)
    return refuse('range-not-in-use', 'This range of numbers is not in use.', null);
  const read = readClean(digits, table);
  if (read === null) return refuse('range-not-in-use', 'This range of numbers is not in use.', null);
  if (body.includes('-') && !hyphenated.endsWith(body.replace(/ /g, '').slice(0, -1), hyphenated.length - 1))
    return refuse('hyphens-misplaced', 'The hyphens stand in the wrong places.', null, hyphenated);
  return read;
}

function refuse(
  code: IsbnProblemCode,
  message: string,
  hint: string | null,
  repair: string | null = null,
): { ok: false; problem: IsbnProblem } {
  return { ok: false, problem: { code, message, hint, position: null, repair } };
}
