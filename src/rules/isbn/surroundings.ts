import { type PlainText, placeOf } from './characters.ts';
import { judgeByCount } from './count.ts';
import { askWhether, atCharacter, refuse } from './problem.ts';
import type { RangeTable } from './range-table.ts';
import { validNumber } from './repair.ts';
import type { ParseResult, RefusedIsbn } from './types.ts';
import type { Stretch } from './wrapping.ts';
import { collect, part, placeOfDigit, type Written } from './written.ts';

/** Letters that pass for digits to the eye or to a reading machine, Latin, Greek and Cyrillic. */
const LOOKALIKES = new Map(
  Object.entries({ '0': 'OoQDΟοОо', '1': 'Il|!іІΙ', '2': 'Zz', '5': 'Ss', '8': 'B', X: 'ΧχХх' }).flatMap(
    ([digit, letters]) => [...letters].map((letter) => [letter, digit] as const),
  ),
);
const NOT_OF_A_NUMBER = /[^-0-9 ]/gu;
const LETTER = /\p{L}|[|!]/u;
const UNREADABLE = /[?*_#•\uFFFD]/g;
const SEPARATORS = /[./_,:;·•|\\'’~+]/g;
/** A stretch of digits with hyphens and spaces, perhaps ending in X. */
const RUN = /[0-9][-0-9 ]*[0-9](?:[- ]?[Xx](?![\p{L}\p{N}]))?/gu;

/** Says why a text that is not just a number, its label and a qualifier is not read as one. */
export function explainText(plain: PlainText, stretch: Stretch, table: RangeTable): RefusedIsbn {
  const text = plain.text.slice(stretch.from, stretch.to);
  const digits = text.replace(/[^0-9]/g, '').length;
  if (digits < 6) return noNumber();
  return (
    letterInside(plain, stretch, text, digits, table) ??
    unreadableDigit(plain, stretch, text, table) ??
    otherSeparators(plain, stretch, text, table) ??
    severalOrExtra(plain, stretch, text, table) ??
    noNumber()
  );
}

export function noNumber(): RefusedIsbn {
  return refuse('no-number', 'There is no ISBN in this text.', {
    hint: 'An ISBN has 13 digits and begins with 978 or 979, or has 10 in its older form.',
  });
}

/** The number that a text with other characters in some places would be, hyphenated; null where it is none. */
function tryInstead(instead: string, table: RangeTable): string | null {
  return /^[-0-9 ]*[0-9Xx]$/.test(instead)
    ? validNumber(instead.replace(/[- ]/g, '').toUpperCase(), table)
    : null;
}

/** Ten or thirteen characters of which a few are letters: the letter is the fault, and may be read as a digit. */
function letterInside(
  plain: PlainText,
  stretch: Stretch,
  text: string,
  digits: number,
  table: RangeTable,
): RefusedIsbn | null {
  const letters = text.match(NOT_OF_A_NUMBER) ?? [];
  const size = digits + letters.length;
  if ((size !== 10 && size !== 13) || letters.length > 4) return null;
  if (!letters.every((character) => LETTER.test(character))) return null;
  const [letter = ''] = letters;
  const at = text.indexOf(letter);
  const position = placeOf(plain, stretch.from + at);
  const instead = text.replace(NOT_OF_A_NUMBER, (character) => LOOKALIKES.get(character) ?? character);
  const repair = tryInstead(instead, table);
  return refuse('letter', `The letter '${letter}' stands where a digit belongs, ${atCharacter(position)}.`, {
    hint: repair === null ? 'Compare the number with its source.' : askWhether(repair),
    position,
    repair,
  });
}

/** One digit given as unreadable: the check digit says which it must be. */
function unreadableDigit(
  plain: PlainText,
  stretch: Stretch,
  text: string,
  table: RangeTable,
): RefusedIsbn | null {
  const marks = [...text.matchAll(UNREADABLE)];
  const at = marks[0]?.index;
  if (at === undefined || marks.length !== 1) return null;
  const found = [...'0123456789X']
    .map((digit) => tryInstead(text.slice(0, at) + digit + text.slice(at + 1), table))
    .filter((number) => number !== null);
  const [repair] = found;
  if (repair === undefined || found.length > 1) return null;
  const position = placeOf(plain, stretch.from + at);
  return refuse('stray-character', `A digit is unreadable, ${atCharacter(position)}; only one fits there.`, {
    hint: askWhether(repair),
    position,
    repair,
  });
}

/** Points, strokes or commas between the elements instead of hyphens. */
function otherSeparators(
  plain: PlainText,
  stretch: Stretch,
  text: string,
  table: RangeTable,
): RefusedIsbn | null {
  const at = text.search(SEPARATORS);
  if (at < 0) return null;
  const repair = tryInstead(text.replace(SEPARATORS, ' '), table);
  if (repair === null) return null;
  const position = placeOf(plain, stretch.from + at);
  return refuse(
    'stray-character',
    `The character '${text.charAt(at)}' does not belong in an ISBN, ${atCharacter(position)}.`,
    {
      hint: `Between the elements stand hyphens or spaces: ${repair}.`,
      position,
      repair,
    },
  );
}

/** Looks at every run of digits: two numbers, one with other text around it, or one with a fault of its own. */
function severalOrExtra(
  plain: PlainText,
  stretch: Stretch,
  text: string,
  table: RangeTable,
): RefusedIsbn | null {
  const runs = [...text.matchAll(RUN)]
    .map((run) => {
      const from = stretch.from + run.index;
      const to = from + run[0].length;
      const written = collect(plain, from, to);
      return {
        from,
        to,
        written,
        judged: severalInRun(written, table) ?? judgeByCount(written, null, table),
      };
    })
    .filter(({ written }) => written.digits.length >= 9);
  const [first, second] = runs;
  if (first === undefined) return null;
  if (second !== undefined)
    return several(
      placeOf(plain, second.from),
      runs.map((run) => run.judged),
    );
  if (!first.judged.ok) return first.judged;
  const repair = first.judged.isbn.hyphenated;
  const after = first.from > stretch.from ? stretch.from : first.to;
  return refuse('extra-text', 'There is other text beside the number.', {
    hint: `Leave only the number, a label or a remark in brackets. ${askWhether(repair)}`,
    position: placeOf(plain, after),
    repair,
  });
}

/** Two or more numbers: which is meant is for the person to say, unless all are the same. */
function several(position: number, judged: readonly ParseResult[]): RefusedIsbn {
  const numbers = new Set(judged.map((one) => (one.ok ? one.isbn.hyphenated : null)));
  const [only = null] = numbers;
  const repair = numbers.size === 1 ? only : null;
  return refuse(
    'several-numbers',
    `There is more than one number; the second begins ${atCharacter(position)}.`,
    {
      hint: repair === null ? 'Enter them one at a time.' : `All are forms of ${repair}.`,
      position,
      repair,
    },
  );
}

/** Numbers parted by nothing but spaces. */
export function severalInRun(written: Written, table: RangeTable): RefusedIsbn | null {
  const { digits, gaps } = written;
  if (digits.length < 20) return null;
  const size = [13, 10].find((count) => gaps.includes(count));
  if (size === undefined) return null;
  const rest = part(written, size, digits.length);
  const numbers = [part(written, 0, size), rest].map((one) => judgeByCount(one, null, table));
  return numbers.some((one) => one.ok) ? several(placeOfDigit(written, size), numbers) : null;
}
