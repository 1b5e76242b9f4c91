const known = new Map<string, number>();

/** Decimal places of a currency's minor unit (ISO 4217, as the runtime's Unicode data give them). */
export function minorDigits(currency: string): number {
  const found = known.get(currency) ?? lookUp(currency);
  known.set(currency, found);
  return found;
}

function lookUp(currency: string): number {
  try {
    const format = new Intl.NumberFormat('en', { style: 'currency', currency });
    return format.resolvedOptions().maximumFractionDigits ?? 2;
  } catch {
    // A code that is no currency of the runtime: two places, as most have.
    return 2;
  }
}

/** Minor units, not negative, as a decimal number with a point: 1250 at two digits is '12.50'. */
export function decimal(minor: number, digits: number): string {
  if (digits === 0) return String(minor);
  const text = String(minor).padStart(digits + 1, '0');
  return `${text.slice(0, -digits)}.${text.slice(-digits)}`;
}

/** Minor units as major units without the currency: '12.50', '−0.05', and '1250' in a currency without minor units. */
export function majorUnits(amountMinor: number, currency: string): string {
  const digits = minorDigits(currency);
  return `${amountMinor < 0 ? '−' : ''}${(Math.abs(amountMinor) / 10 ** digits).toFixed(digits)}`;
}
