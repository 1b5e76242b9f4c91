import type { Format } from '../../../../src/contract/formats.ts';
import { formatLength, type LengthUnit } from '../../../lib/length.ts';
import { formatMoney } from '../../../lib/money.ts';

/** '129 × 198 mm' in the unit of the settings. */
export function trimText(format: Pick<Format, 'trimWidthUm' | 'trimHeightUm'>, unit: LengthUnit): string {
  const { trimWidthUm, trimHeightUm } = format;
  if (trimWidthUm === null || trimHeightUm === null) return '';
  return `${formatLength(trimWidthUm, unit)} × ${formatLength(trimHeightUm, unit)}`;
}

/** '5 h 20 min' */
export function durationText(minutes: number | null): string {
  if (minutes === null) return '';
  const hours = Math.floor(minutes / 60);
  return [hours > 0 ? `${hours} h` : '', minutes % 60 > 0 ? `${minutes % 60} min` : '']
    .filter(Boolean)
    .join(' ');
}

/** 'GBP 9.99, EUR 12.00 without tax' */
export function pricesText(prices: Format['prices']): string {
  return prices
    .map(
      ({ amountMinor, currency, tax }) =>
        `${formatMoney(amountMinor, currency)}${tax === 'excluding' ? ' without tax' : ''}`,
    )
    .join(', ');
}
