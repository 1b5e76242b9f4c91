import { formatScaled, parseScaled } from './decimal.ts';

// Making a formatter takes far longer than using it, and a table writes hundreds of amounts.
const places = new Map<string, number>();
const formatters = new Map<string, Intl.NumberFormat>();

function formatterOf(locale: string | undefined, least: number, most: number): Intl.NumberFormat {
  const key = `${locale} ${least} ${most}`;
  const known = formatters.get(key);
  if (known) return known;
  const made = new Intl.NumberFormat(locale, {
    minimumFractionDigits: least,
    maximumFractionDigits: most,
  });
  formatters.set(key, made);
  return made;
}

/** Decimal places of a currency's minor unit (ISO 4217, as the runtime's Unicode data give them). */
export function minorDigits(currency: string): number {
  const known = places.get(currency);
  if (known !== undefined) return known;
  let digits = 2;
  try {
    const { maximumFractionDigits } = new Intl.NumberFormat('en', {
      style: 'currency',
      currency,
    }).resolvedOptions();
    digits = maximumFractionDigits ?? 2;
  } catch {
    // Not a code: two places, as most currencies have.
  }
  places.set(currency, digits);
  return digits;
}

/** Typed major units → integer minor units, or undefined if it is no amount of this currency. */
export function parseMoney(text: string, currency: string, locale?: string): number | undefined {
  return parseScaled(text, minorDigits(currency), locale);
}

/** Integer minor units → what the locale would type, without the currency. */
export function typedMoney(amountMinor: number, currency: string, locale?: string): string {
  return formatScaled(amountMinor, minorDigits(currency), locale);
}

/** Integer minor units → reading form with its currency code, such as `EUR 12.50`. */
export function formatMoney(amountMinor: number, currency: string, locale?: string): string {
  const digits = minorDigits(currency);
  const amount = formatterOf(locale, digits, digits).format(amountMinor / 10 ** digits);
  return `${currency}\u00a0${amount}`;
}

/** Integer minor units → reading form without the currency, for the marks of a scale. */
export function majorText(amountMinor: number, currency: string, locale?: string): string {
  const digits = minorDigits(currency);
  const whole = amountMinor % 10 ** digits === 0;
  return (amountMinor / 10 ** digits).toLocaleString(locale, {
    minimumFractionDigits: whole ? 0 : digits,
    maximumFractionDigits: digits,
  });
}

/** Ten-thousandths of a minor unit → reading form, the places that say nothing left out: `EUR 0.0125`, `EUR 0.90`. */
export function formatParts(parts: number, currency: string, locale?: string): string {
  const digits = minorDigits(currency);
  const amount = formatterOf(locale, digits, digits + 4).format(parts / 10 ** (digits + 4));
  return `${currency}\u00a0${amount}`;
}

/** Currency codes the runtime knows, the given ones first. */
export function currencyCodes(first: readonly string[]): string[] {
  return [...new Set([...first, ...Intl.supportedValuesOf('currency')])];
}
