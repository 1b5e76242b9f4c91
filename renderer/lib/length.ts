import { formatScaled, parseScaled } from './decimal.ts';

export type LengthUnit = 'mm' | 'in';

const UM_PER_INCH = 25_400;
const INCH_DIGITS = 4;

/**
 * Typed millimetres (up to three decimals) or inches (up to four, or a fraction such as `5 1/2`)
 * → micrometres, rounded to the nearest; undefined if it is no length. 1 in = 25,400 µm exactly.
 */
export function parseLength(text: string, unit: LengthUnit, locale?: string): number | undefined {
  if (unit === 'mm') return parseScaled(text, 3, locale);
  const fraction = /^\s*(?:(\d+)[\s-]+)?(\d+)\s*[/⁄]\s*(\d+)\s*$/.exec(text);
  if (fraction) {
    const [, whole = '0', top, bottom] = fraction;
    if (Number(bottom) === 0) return undefined;
    return Math.round((Number(whole) + Number(top) / Number(bottom)) * UM_PER_INCH);
  }
  const scaled = parseScaled(text, INCH_DIGITS, locale);
  return scaled === undefined ? undefined : Math.round((scaled * UM_PER_INCH) / 10 ** INCH_DIGITS);
}

/** Micrometres → what the locale would type in this unit, without the unit. */
export function typedLength(um: number, unit: LengthUnit, locale?: string): string {
  if (unit === 'mm') return formatScaled(um, 3, locale, true);
  return formatScaled(Math.round((um * 10 ** INCH_DIGITS) / UM_PER_INCH), INCH_DIGITS, locale, true);
}

/** Micrometres → reading form with its unit, such as `129 mm` or `5.5 in`. */
export function formatLength(um: number, unit: LengthUnit, locale?: string): string {
  return `${typedLength(um, unit, locale)}\u00a0${unit}`;
}
