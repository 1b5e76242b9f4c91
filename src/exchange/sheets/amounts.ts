import type { Reading } from '../../contract/sheet-fields.ts';

export type DecimalMark = Extract<Reading, 'point' | 'comma'>;

export interface MarkGuess {
  /** Null where the cells fit both: the person must say which. */
  mark: DecimalMark | null;
  why: string;
}

const SYMBOLS: readonly (readonly [sign: string, currency: string])[] = [
  ['US$', 'USD'],
  ['C$', 'CAD'],
  ['CA$', 'CAD'],
  ['A$', 'AUD'],
  ['AU$', 'AUD'],
  ['NZ$', 'NZD'],
  ['€', 'EUR'],
  ['£', 'GBP'],
  ['₹', 'INR'],
  ['zł', 'PLN'],
  ['₺', 'TRY'],
  ['₩', 'KRW'],
];

/** Signs that several currencies share: only a guess, which is shown. */
const SHARED: readonly (readonly [sign: string, currency: string])[] = [
  ['$', 'USD'],
  ['¥', 'JPY'],
  ['kr', 'SEK'],
];

let codes: ReadonlySet<string> | undefined;

/** Whether a text is a currency code that is in use. */
export function isCurrency(code: string): boolean {
  codes ??= new Set(Intl.supportedValuesOf('currency'));
  return codes.has(code);
}

/** The currency that a header or a cell names by its code or sign; `sure` unless several share the sign. */
export function currencyIn(text: string): { currency: string; sure: boolean } | null {
  for (const [code] of text.matchAll(/(?<![A-Za-z])[A-Za-z]{3}(?![A-Za-z])/g)) {
    const upper = code.toUpperCase();
    if (
      (code === upper || code === code.toLowerCase()) &&
      isCurrency(upper) &&
      !/^(?:all|top|try|mop)$/.test(code)
    )
      return { currency: upper, sure: true };
  }
  const known = SYMBOLS.find(([sign]) => text.includes(sign));
  if (known) return { currency: known[1], sure: true };
  const shared = SHARED.find(([sign]) => text.includes(sign));
  return shared ? { currency: shared[1], sure: false } : null;
}

/** The digits of an amount without currency words, blanks and apostrophes. */
function bare(text: string): string {
  return text.replaceAll(/[A-Za-zł]{1,3}\.?|\p{Sc}/gu, '').replaceAll(/[\s'’\u00A0\u202F]/g, '');
}

/**
 * Reads an amount with its decimal mark into units of 10^-digits: '1.234,50' with a comma at two digits is 123450.
 * Null when it is no amount, is negative, or has more decimals than the unit holds (zeros aside).
 */
export function readAmount(text: string, mark: DecimalMark, digits: number): number | null {
  const plain = bare(text);
  const group = mark === 'point' ? ',' : '.';
  const decimal = mark === 'point' ? '.' : ',';
  const shape =
    mark === 'point'
      ? /^(?:[0-9]+|[0-9]{1,3}(?:,[0-9]{3})+)(?:\.([0-9]*))?$/
      : /^(?:[0-9]+|[0-9]{1,3}(?:\.[0-9]{3})+)(?:,([0-9]*))?$/;
  const found = shape.exec(plain);
  if (!found) return null;
  const fraction = (found[1] ?? '').replace(/0+$/, '');
  if (fraction.length > digits) return null;
  const whole = plain.split(decimal)[0]?.replaceAll(group, '') ?? '';
  const units = Number(whole + fraction.padEnd(digits, '0'));
  return Number.isSafeInteger(units) ? units : null;
}

/** Tells the decimal mark from the cells of a column: '9.99' has a point, '9,99' a comma, '1,234' may be either. */
export function guessMark(cells: Iterable<string>): MarkGuess {
  let point: string | undefined;
  let comma: string | undefined;
  let either: string | undefined;
  for (const cell of cells) {
    const plain = bare(cell);
    const last = Math.max(plain.lastIndexOf('.'), plain.lastIndexOf(','));
    if (last < 0) continue;
    const sign = plain[last];
    const other = plain.includes(sign === '.' ? ',' : '.');
    const tail = plain.length - last - 1;
    const repeated = plain.indexOf(sign ?? '') !== last;
    if (repeated) {
      if (sign === '.') comma ??= cell;
      else point ??= cell;
    } else if (tail === 3 && !other) either ??= cell;
    else if (sign === '.') point ??= cell;
    else comma ??= cell;
  }
  if (point !== undefined && comma !== undefined)
    return { mark: null, why: `‘${point}’ has a decimal point, ‘${comma}’ a comma: say which holds.` };
  if (point !== undefined) return { mark: 'point', why: `‘${point}’ has a decimal point.` };
  if (comma !== undefined) return { mark: 'comma', why: `‘${comma}’ has a decimal comma.` };
  if (either !== undefined)
    return { mark: null, why: `‘${either}’ may have thousands or decimals behind its mark: say which.` };
  return { mark: 'point', why: 'There are whole amounts only.' };
}
