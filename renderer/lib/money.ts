import { formatScaled, parseScaled } from './decimal.ts';

/** Decimal places of a currency's minor unit (ISO 4217, as the runtime's Unicode data give them). */
export function minorDigits(currency: string): number {
  try {
    return (
      new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ??
      2
    );
  } catch {
    return 2;
  }
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
  const amount = (amountMinor / 10 ** digits).toLocaleString(locale, {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
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
  const amount = (parts / 10 ** (digits + 4)).toLocaleString(locale, {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits + 4,
  });
  return `${currency}\u00a0${amount}`;
}

/** Currency codes the runtime knows, the given ones first. */
export function currencyCodes(first: readonly string[]): string[] {
  return [...new Set([...first, ...Intl.supportedValuesOf('currency')])];
}
