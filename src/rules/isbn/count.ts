import { checkDigit13 } from './check-digit.ts';
import { judge } from './judge.ts';
import { askWhether, refuse } from './problem.ts';
import type { RangeTable } from './range-table.ts';
import { validNumber, withoutDoubles } from './repair.ts';
import type { IsbnForm, ParseResult, RefusedIsbn } from './types.ts';
import { part, placeOfDigit, type Written } from './written.ts';

/** Judges a written number by how many digits it has; `form` overrides the form that the count suggests. */
export function judgeByCount(written: Written, form: IsbnForm | null, table: RangeTable): ParseResult {
  const { digits } = written;
  if (digits.endsWith('X') && digits.length > 10) return misplacedX(written, table);
  switch (digits.length) {
    case 13:
      return judge(written, form ?? (isBarcodeGrouping(written) ? 'scan' : 'isbn13'), table);
    case 10:
      return judge(written, form ?? 'isbn10', table);
    case 14:
      return fourteen(written, form, table);
    case 18:
      if (/^97[89]/.test(digits)) return judge(part(written, 0, 13), 'scan', table, digits.slice(13));
      break;
  }
  if (digits.length > 13) return tooLong(written, table);
  return digits.length === 11 ? oneOver(written, table) : tooShort(written, table);
}

/** The line under a bar code: one digit, six, six. */
function isBarcodeGrouping({ gaps, dashes }: Written): boolean {
  return dashes.length === 0 && gaps.length === 2 && gaps[0] === 1 && gaps[1] === 7;
}

function misplacedX(written: Written, table: RangeTable): RefusedIsbn {
  const { digits } = written;
  const position = placeOfDigit(written, digits.length - 1);
  const first12 = digits.slice(0, 12);
  const repair =
    digits.length === 13 && /^97[89]/.test(digits)
      ? validNumber(first12 + checkDigit13(first12), table)
      : null;
  return refuse('letter', 'Only a ten-digit number can end in X, where it stands for a check of ten.', {
    hint: repair === null ? null : `If all other digits are right, the thirteen-digit form is ${repair}.`,
    position,
    repair,
  });
}

/** A GTIN-14: an indicator digit before thirteen. 0 is the book itself, 1 to 8 are cartons, 9 is sold by weight. */
function fourteen(written: Written, form: IsbnForm | null, table: RangeTable): ParseResult {
  const { digits } = written;
  if (!/^[0-9]97[89]/.test(digits) || (digits[0] !== '0' && !gtinFits(digits)))
    return oneOver(written, table);
  if (digits[0] === '0') return judge(part(written, 1, 14), form ?? 'gtin14', table);
  const first12 = digits.slice(1, 13);
  const repair = validNumber(first12 + checkDigit13(first12), table);
  return refuse(
    'packaging-number',
    `This fourteen-digit number (indicator ${digits[0]}) identifies a carton, not the single book in it.`,
    {
      hint: repair === null ? null : `The book it holds would be ${repair}.`,
      position: placeOfDigit(written, 0),
      repair,
    },
  );
}

/** GTIN-14 check digit: weights 3 and 1 alternating from the left, modulo 10 (GS1 General Specifications). */
function gtinFits(digits: string): boolean {
  let sum = 0;
  for (let i = 0; i < 14; i += 1) sum += Number(digits[i]) * (i % 2 === 0 ? 3 : 1);
  return sum % 10 === 0;
}

/** One digit more than a form has: a key struck twice is offered without the double. */
function oneOver(written: Written, table: RangeTable): RefusedIsbn {
  const size = written.digits.length;
  const candidates = withoutDoubles(written, table);
  const [only] = candidates;
  if (only === undefined || candidates.length > 1) return tooLong(written, table);
  const position = placeOfDigit(written, only.at);
  return refuse('too-long', `There are ${size} digits, one too many; one of two equal ones may be a slip.`, {
    hint: askWhether(only.hyphenated),
    position,
    repair: only.hyphenated,
  });
}

function tooLong(written: Written, table: RangeTable): RefusedIsbn {
  const { digits } = written;
  const start = digits.slice(0, 13);
  const repair = /^97[89]/.test(start) ? validNumber(start, table) : null;
  const full = digits.length === 11 ? 10 : 13;
  const tail = digits.length - 13;
  return refuse('too-long', `There are ${digits.length} digits; an ISBN has 13, or 10 in its older form.`, {
    hint:
      repair === null
        ? null
        : `The first 13 are a valid number; the ${tail} after it are no bar-code add-on, which has five.`,
    position: placeOfDigit(written, full),
    repair,
  });
}

function tooShort(written: Written, table: RangeTable): RefusedIsbn {
  const { digits } = written;
  const size = digits.length;
  const position = placeOfDigit(written, size);
  if (size >= 7 && size <= 9) {
    const repair = validNumber(digits.padStart(10, '0'), table);
    const lost = 10 - size;
    if (repair !== null)
      return refuse(
        'lost-zeros',
        `There are ${size} digits; ${lost === 1 ? 'a leading zero was' : `${lost} leading zeros were`} probably lost.`,
        {
          hint: `${askWhether(repair)} Keep such columns as text.`,
          position: placeOfDigit(written, 0),
          repair,
        },
      );
  }
  const complete = size === 12 && /^97[89]/.test(digits) ? checkDigit13(digits) : null;
  return refuse(
    'too-short',
    `There ${size === 1 ? 'is 1 digit' : `are ${size} digits`}; an ISBN has 13, or 10 in its older form.`,
    {
      hint:
        complete === null
          ? 'Compare with the source and add what is missing.'
          : `If only the check digit at the end is missing, it is ${complete}.`,
      position,
    },
  );
}
