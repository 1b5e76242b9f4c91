import { compensation, lowestList } from '../compensation.ts';
import { majorUnits } from '../money.ts';
import { costOnListing } from '../print-cost/listing.ts';
import type { Facts, FormatFacts, ListingFacts, PriceRow } from './facts.ts';
import { each, hasEnded, isSubmitted, ofEdition, ofFormat, ofListing, PRACTICE, type Rule } from './rule.ts';

// Prices, and what is left of them (STANDARDS E7).

const OUT: ReadonlySet<string> = new Set(['sent', 'proof', 'cleared', 'selling']);

/** Minor units as major units with the currency in front: 'EUR 12.50'. */
function written(amountMinor: number, currency: string): string {
  return `${currency} ${majorUnits(amountMinor, currency)}`;
}

interface ListAndCost {
  list: PriceRow;
  cost: number;
}

const isOver = ({ format, standing }: ListingFacts) =>
  hasEnded(format) || ['leaving', 'gone'].includes(standing);

/** The list prices whose print cost is known, typed or from a card, of a listing that is or will be on sale. */
function listsAndCosts(listing: ListingFacts, facts: Facts): ListAndCost[] {
  if (isOver(listing)) return [];
  return listing.format.prices.flatMap((list) => {
    const { minor, from } = costOnListing(listing, list.currency, facts);
    return minor === null || from === 'nothing printed' ? [] : [{ list, cost: minor }];
  });
}

function cheapest(formats: readonly FormatFacts[], form: string, currency: string): number | null {
  const prices = formats
    .filter((format) => format.form === form && !hasEnded(format))
    .flatMap((format) => format.prices.filter((price) => price.currency === currency));
  return prices.length > 0 ? Math.min(...prices.map((price) => price.amountMinor)) : null;
}

export const priceRules: readonly Rule[] = [
  {
    id: 'listing-without-price',
    sentence: 'A format that a channel lists has a price.',
    severity: 'must fix',
    mend: 'Enter a price; it stays open.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) => {
        const out = format.listings.filter((listing) => OUT.has(listing.standing));
        if (out.length === 0 || format.prices.length > 0 || hasEnded(format)) return null;
        return `${format.label} has no price; it is listed on ${out.map((l) => l.channel.name).join(', ')}.`;
      }),
  },
  {
    id: 'price-missing-in-currency',
    sentence: 'A format that was sent has a price in the currency set in Settings.',
    severity: 'should fix',
    mend: 'Enter a price in that currency; channels would convert another one on their own.',
    source: PRACTICE,
    find: ({ formats, settings }) =>
      each(formats, ofFormat, (format) =>
        isSubmitted(format) &&
        format.prices.length > 0 &&
        format.prices.every((price) => price.currency !== settings.currency)
          ? `${format.label} has no price in ${settings.currency}, only in ${format.prices.map((p) => p.currency).join(', ')}.`
          : null,
      ),
  },
  {
    id: 'price-below-print-cost',
    sentence: 'A price is not lower than the print cost.',
    severity: 'must fix',
    mend: 'Raise the price, or correct the print cost.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) => {
        const known = listsAndCosts(listing, facts).find(({ list, cost }) => list.amountMinor < cost);
        if (!known) return null;
        const { currency, amountMinor } = known.list;
        return `${listing.label}: the price is ${written(amountMinor, currency)}, printing a copy costs ${written(known.cost, currency)}.`;
      }),
  },
  {
    id: 'copy-sold-at-a-loss',
    sentence: 'A copy earns something after discount and print cost.',
    severity: 'must fix',
    mend: 'Raise the price or lower the discount; both stay open.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) => {
        const { discountBp } = listing;
        if (discountBp === null) return null;
        const earned = ({ list, cost }: ListAndCost) =>
          compensation({ listMinor: list.amountMinor, discountBp, printCostMinor: cost });
        const known = listsAndCosts(listing, facts).find(
          (one) => one.list.amountMinor >= one.cost && earned(one).exact < 0n,
        );
        if (!known) return null;
        const { currency, amountMinor } = known.list;
        const { keptMinor } = earned(known);
        const lowest = lowestList(discountBp, known.cost);
        const way =
          lowest === null ? '' : `; the lowest price without a loss is ${written(lowest, currency)}`;
        return `${listing.label}: at ${written(amountMinor, currency)}, ${discountBp / 100} % discount and ${written(known.cost, currency)} print cost a copy earns ${written(keptMinor, currency)}${way}.`;
      }),
  },
  {
    id: 'print-cost-in-other-currency',
    sentence: 'A print cost is in a currency in which the format has a price.',
    severity: 'note',
    mend: 'Enter the print cost in the currency of a price; what a copy earns cannot be worked out otherwise.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) =>
        listing.printCostMinor !== null &&
        listing.format.prices.length > 0 &&
        !isOver(listing) &&
        !listing.format.prices.some((price) => price.currency === listing.printCostCurrency)
          ? `${listing.label}: the print cost is in ${listing.printCostCurrency}, no price is.`
          : null,
      ),
  },
  {
    id: 'hardcover-cheaper-than-paperback',
    sentence: 'A hardcover costs no less than the paperback of the same edition.',
    severity: 'note',
    mend: 'Compare the two prices; they may have been swapped.',
    source: PRACTICE,
    find: ({ editions, settings }) =>
      each(editions, ofEdition, (edition) => {
        const paper = cheapest(edition.formats, 'BC', settings.currency);
        const hard = cheapest(edition.formats, 'BB', settings.currency);
        return paper !== null && hard !== null && hard < paper
          ? `${edition.label}: the hardcover costs ${written(hard, settings.currency)}, the paperback ${written(paper, settings.currency)}.`
          : null;
      }),
  },
];
