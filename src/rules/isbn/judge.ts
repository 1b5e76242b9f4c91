import { checkDigit10, checkDigit13 } from './check-digit.ts';
import { readClean } from './clean.ts';
import { askWhether, atCharacter, refuse, unusedRange } from './problem.ts';
import { groupAt, locate, type RangeTable } from './range-table.ts';
import { boundaries, dashesFit, substitutes, swaps, validNumber } from './repair.ts';
import type { IsbnForm, ParseResult, RefusedIsbn } from './types.ts';
import { placeOfDigit, type Written } from './written.ts';

/** Beginnings that one swap of neighbours or one other digit would turn into 978 or 979. */
const ONE_SLIP = /^(?:97|79[89]|9[89]7|9.[89]|.7[89])/;

/**
 * Judges thirteen digits, or ten characters of the older form: prefix, check digit, range, then the hyphens as
 * written. Spaces are not judged: bar codes and forms group digits in their own ways.
 */
export function judge(
  written: Written,
  form: IsbnForm,
  table: RangeTable,
  addOn: string | null = null,
): ParseResult {
  const { digits } = written;
  if (digits.length === 13 && !/^97[89]/.test(digits)) return notABookPrefix(written, table);
  if (digits.startsWith('9790') && digits.length === 13)
    return refuse('music-number', 'Numbers that begin with 979-0 identify printed music, not books.', {
      hint: 'Look for the ISBN beside it; the music number (ISMN) cannot stand in for it.',
      position: placeOfDigit(written, 0),
    });
  const read = readClean(digits, table);
  if (read !== null) return misplacedHyphen(written, table) ?? { ...read, form, addOn };
  const due = digits.length === 13 ? checkDigit13(digits.slice(0, 12)) : checkDigit10(digits.slice(0, 9));
  return due === digits.slice(-1) ? notInUse(written, table) : wrongCheck(written, due, table);
}

function misplacedHyphen(written: Written, table: RangeTable): RefusedIsbn | null {
  if (dashesFit(written, written.digits, table)) return null;
  const repair = validNumber(written.digits, table);
  const allowed = boundaries(written.digits, table);
  const wrong = written.dashes.find(({ before }) => !allowed.includes(before));
  if (wrong === undefined || repair === null) return null;
  return refuse('hyphens-misplaced', `A hyphen stands in the wrong place, ${atCharacter(wrong.place)}.`, {
    hint: `The number is valid; its elements part like this: ${repair}.`,
    position: wrong.place,
    repair,
  });
}

function notABookPrefix(written: Written, table: RangeTable): RefusedIsbn {
  const { digits } = written;
  const prefix = digits.slice(0, 3);
  const position = placeOfDigit(written, 0);
  // A check digit that fits speaks against any slip: the number then belongs to other goods.
  const slip = ONE_SLIP.test(digits) && checkDigit13(digits.slice(0, 12)) !== digits[12];
  const candidates = slip ? [...swaps(written, table), ...substitutes(written, 3, table)] : [];
  const [only] = candidates;
  if (only !== undefined && candidates.length === 1) return likely(written, only.hyphenated, only.at);
  if (prefix === '977')
    return refuse('not-a-book-number', 'Numbers that begin with 977 identify journals and magazines.', {
      hint: 'A book number begins with 978 or 979.',
      position,
    });
  return refuse('not-a-book-number', `A book number begins with 978 or 979, not with ${prefix}.`, {
    hint: 'Bar codes with another beginning belong to other goods: look for the one that begins with 978 or 979.',
    position,
  });
}

/** One change alone would mend the number: says which and offers it. */
function likely(written: Written, repair: string, at: number): RefusedIsbn {
  const place = placeOfDigit(written, at);
  const digits = repair.replaceAll('-', '');
  const typed = written.digits.length === 10 ? digits.slice(3) : digits;
  const swapped = typed[at] === written.digits[at + 1] && typed[at + 1] === written.digits[at];
  const pair = written.digits.slice(at, at + 2);
  return swapped
    ? refuse(
        'swapped-digits',
        `The check digit does not fit; it would if the digits '${pair}' ${atCharacter(place)} changed places.`,
        { hint: askWhether(repair), position: place, repair },
      )
    : refuse(
        'wrong-digit',
        `The digit '${written.digits[at]}' ${atCharacter(place)} is probably wrong; '${typed[at]}' would fit.`,
        { hint: askWhether(repair), position: place, repair },
      );
}

function wrongCheck(written: Written, due: string, table: RangeTable): RefusedIsbn {
  const { digits } = written;
  const at = digits.length - 1;
  const position = placeOfDigit(written, at);
  const last = digits.slice(-1);
  const mended = digits.slice(0, -1) + due;
  const repair = validNumber(mended, table);
  const other =
    at === 12
      ? digits.startsWith('978') && checkDigit10(digits.slice(3, 12))
      : checkDigit13(`978${digits.slice(0, 9)}`);
  if (other === last && repair !== null)
    return refuse(
      'check-digit',
      `The check digit ${last} belongs to the ${at === 12 ? 'ten' : 'thirteen'}-digit form; here it must be ${due}.`,
      { hint: askWhether(repair), position, repair },
    );
  const swapped = swaps(written, table);
  const [only] = swapped;
  if (only !== undefined && swapped.length === 1) return likely(written, only.hyphenated, only.at);
  const substituted = swapped.length === 0 ? telltaleDigit(written, table) : null;
  if (substituted !== null) return substituted;
  return refuse('check-digit', `The check digit is ${last}, but the digits before it call for ${due}.`, {
    hint:
      repair === null
        ? 'Compare the number with its source: at least one digit is wrong.'
        : `Compare every digit with the source; only if all others are right is it ${repair}.`,
    position,
  });
}

/**
 * Hyphens that disagree with the number they stand in are evidence: perhaps a single digit changed would agree with
 * them and with the check digit too. Hyphens that agree tell nothing about which digit is wrong.
 */
function telltaleDigit(written: Written, table: RangeTable): RefusedIsbn | null {
  if (written.dashes.length < 3 || dashesFit(written, written.digits, table)) return null;
  const candidates = substitutes(written, written.digits.length, table);
  const [only] = candidates;
  return only !== undefined && candidates.length === 1 ? likely(written, only.hyphenated, only.at) : null;
}

function notInUse(written: Written, table: RangeTable): RefusedIsbn {
  const { digits } = written;
  const ten = digits.length === 10;
  const thirteen = ten ? `978${digits}` : digits;
  const group = groupAt(table, locate(table, thirteen[2] === '9', Number(thirteen.slice(3, 12))));
  const at = (group === null ? 3 : group.digits.length) - (ten ? 3 : 0);
  return refuse('range-not-in-use', ...unusedRange(thirteen, table, placeOfDigit(written, at)));
}
