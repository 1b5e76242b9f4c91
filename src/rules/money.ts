/** Decimal places of a currency's minor unit (ISO 4217, as the runtime's Unicode data give them). */
function minorDigits(currency: string): number {
  try {
    const known = new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions();
    return known.maximumFractionDigits ?? 2;
  } catch {
    // A code that is no currency of the runtime: two places, as most have.
    return 2;
  }
}

/** Minor units as major units without the currency: '12.50', '−0.05', and '1250' in a currency without minor units. */
export function majorUnits(amountMinor: number, currency: string): string {
  const digits = minorDigits(currency);
  return `${amountMinor < 0 ? '−' : ''}${(Math.abs(amountMinor) / 10 ** digits).toFixed(digits)}`;
}
