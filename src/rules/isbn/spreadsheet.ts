import { type PlainText, placeOf } from './characters.ts';
import { checkDigit13 } from './check-digit.ts';
import { askWhether, refuse } from './problem.ts';
import type { RangeTable } from './range-table.ts';
import { validNumber } from './repair.ts';
import type { RefusedIsbn } from './types.ts';
import type { Stretch } from './wrapping.ts';

const EXPONENT = /^([0-9])(?:[.,]([0-9]+))?E\+?([0-9]{1,2})$/i;
const DECIMAL_TAIL = /^([0-9]{7,13})[.,]0*$/;
const GROUPED = /^[0-9]{1,3}(?:[.,'’][0-9]{3})+(?:[.,]0{1,2})?$/;
const KEEP_TEXT = 'Keep number columns as text so that the spreadsheet does not change them.';

/** Recognises what a spreadsheet makes of a number that it takes for a quantity; null for anything else. */
export function spreadsheetDamage(
  plain: PlainText,
  { from, to }: Stretch,
  table: RangeTable,
): RefusedIsbn | null {
  const text = plain.text.slice(from, to);
  const position = placeOf(plain, from);
  const exponent = EXPONENT.exec(text);
  if (exponent !== null) {
    const [, lead = '', decimals = '', power = ''] = exponent;
    return rounded(lead + decimals, Number(power), position, table);
  }
  const tail = DECIMAL_TAIL.exec(text);
  const digits =
    tail?.[1] ?? (GROUPED.test(text) ? text.replace(/[.,]0{1,2}$/, '').replace(/[^0-9]/g, '') : null);
  if (digits === null || digits.length < 7) return null;
  const repair = validNumber(digits.length < 10 ? digits.padStart(10, '0') : digits, table);
  if (repair === null && tail === null) return null;
  return refuse('spreadsheet-damage', `A spreadsheet has turned the number into the quantity ${text}.`, {
    hint: repair === null ? KEEP_TEXT : `${askWhether(repair)} ${KEEP_TEXT}`,
    position,
    repair,
  });
}

/** Scientific notation: only some of the digits are left, the last of them rounded. */
function rounded(kept: string, power: number, position: number, table: RangeTable): RefusedIsbn {
  const candidates = power === 12 ? originals(kept, table) : [];
  const [only] = candidates;
  const repair = candidates.length === 1 && only !== undefined ? only : null;
  const exact = kept.length > power;
  return refuse(
    'spreadsheet-damage',
    exact
      ? 'A spreadsheet has turned the number into a quantity with an exponent.'
      : `A spreadsheet has rounded the number: only ${kept.length} of its ${power + 1} digits are left.`,
    {
      hint:
        repair === null
          ? `It cannot be recovered from this text: take it from its source. ${KEEP_TEXT}`
          : `${exact ? '' : 'Only one valid number rounds to it. '}${askWhether(repair)}`,
      position,
      repair,
    },
  );
}

/** The valid numbers that may have been rounded to these leading digits; looked for when at most one digit is lost. */
function originals(kept: string, table: RangeTable): string[] {
  if (kept.length === 13) return [validNumber(kept, table)].filter((number) => number !== null);
  if (kept.length !== 12) return [];
  const up = kept + checkDigit13(kept);
  const below = String(Number(kept) - 1);
  const down = below + checkDigit13(below);
  return [Number(up[12]) <= 5 ? up : '', Number(down[12]) >= 5 ? down : '']
    .map((number) => validNumber(number, table))
    .filter((number) => number !== null);
}
