import type { MoneyRow } from '../../../../src/contract/money.ts';
import { formatMoney } from '../../../lib/money.ts';

type Cost = MoneyRow['printCost'];

/** On whose word a print cost stands: 'own figure', 'card: Paperback, black', 'nothing is printed'. */
export function costSource(cost: Cost): string {
  switch (cost.from) {
    case 'own figure':
      return 'own figure of the listing';
    case 'card':
      return `card: ${cost.cardName}${cost.beyondQuotes ? '; beyond the pages that were quoted' : ''}`;
    case 'nothing printed':
      return 'nothing is printed';
    default:
      return cost.why;
  }
}

/** An amount as read, or that it is not known. */
export function amount(minor: number | null, currency: string): string {
  return minor === null ? 'not known' : formatMoney(minor, currency);
}

/** What every figure on the page rests on. */
export const RULE =
  'A copy keeps price × (1 − discount) − print cost. Amounts are whole minor units; what is kept is rounded once, at the end, a half away from zero, and the lowest price is rounded up. Tax is not taken off: where a channel takes its discount from the price without tax, less is kept.';

export const CAUTION = {
  title: 'The channel’s own calculator and terms prevail.',
  text: 'Print costs, discounts and what is deducted besides change without notice. Take these figures to decide, and the channel’s own before you sign or set a price.',
} as const;
