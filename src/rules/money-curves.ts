import type { COMPARE_OVER, MoneyCurve } from '../contract/money.ts';
import { compensation } from './compensation.ts';
import { type MoneyListing, type MoneyTerms, soldAs } from './listing-money.ts';
import { type PrintCost, printCostOf } from './print-cost/card.ts';

export type Over = (typeof COMPARE_OVER)[number];

/** Points of a line: kept is straight over price and discount, and steps by pages are small beside it. */
const STEPS = 48;

/** From where to where the picture goes, in minor units, pages or basis points. */
export function spanOf(over: Over, listMinor: number, pages: number | null): { from: number; to: number } {
  if (over === 'discount') return { from: 0, to: 8_000 };
  if (over === 'price') return { from: 0, to: Math.max(listMinor * 2, 100) };
  return { from: 24, to: Math.max(2 * (pages ?? 240), 400) };
}

/** The places at which lines are told; pages come in leaves. */
function places(over: Over, { from, to }: { from: number; to: number }): number[] {
  const all = Array.from({ length: STEPS + 1 }, (_, i) => Math.round(from + ((to - from) * i) / STEPS));
  return [...new Set(over === 'pages' ? all.map((x) => x + (x % 2)) : all)];
}

type Terms = Pick<MoneyTerms, 'cards' | 'day'>;

function costOf(listing: MoneyListing, { cards, day }: Terms): PrintCost {
  const own = { minor: listing.printCostMinor, currency: listing.printCostCurrency };
  const { channelId, currency } = listing;
  return printCostOf(listing, own, cards, { channelId, currency, day });
}

/** The listing as it would be at one place of the picture. */
function at(listing: MoneyListing, over: Over, x: number): MoneyListing {
  if (over === 'price') return { ...listing, listMinor: x };
  if (over === 'discount') return { ...listing, discountBp: x };
  return x === listing.pages ? listing : { ...listing, pages: x, printCostMinor: null };
}

function keptAt(listing: MoneyListing, over: Over, x: number, terms: Terms): number | null {
  const there = at(listing, over, x);
  const sold = soldAs(there, costOf(there, terms));
  return sold === null ? null : compensation(sold).keptMinor;
}

const nowOf = (listing: MoneyListing, over: Over) =>
  over === 'price' ? listing.listMinor : over === 'pages' ? listing.pages : (listing.discountBp ?? 0);

function noteOf(listing: MoneyListing, over: Over, cost: PrintCost, points: MoneyCurve['points']): string {
  const told = points.some(({ keptMinor }) => keptMinor !== null);
  if (over === 'pages' && cost.from === 'own figure' && !told)
    return 'Its print cost is a figure of its own, for its own pages alone; a print-cost card tells other page counts.';
  if (!told) return cost.why;
  return over !== 'discount' && listing.discountBp === null ? 'No discount is recorded; 0 % is taken.' : '';
}

/**
 * What a copy keeps on a listing while one thing changes and all else stays. A print cost typed for the listing holds
 * for its own pages; what it would be for others is told by a card of the channel or not at all.
 */
export function curveOf(
  listing: MoneyListing,
  over: Over,
  span: { from: number; to: number },
  terms: Terms,
): MoneyCurve {
  const cost = costOf(listing, terms);
  const points = places(over, span).map((x) => ({ x, keptMinor: keptAt(listing, over, x, terms) }));
  const now = nowOf(listing, over);
  return {
    listingId: listing.listingId,
    channelName: listing.channelName,
    discountBp: listing.discountBp,
    printCostMinor: cost.minor,
    points,
    now: now === null ? null : { x: now, keptMinor: keptAt(listing, over, now, terms) },
    note: noteOf(listing, over, cost, points),
  };
}
