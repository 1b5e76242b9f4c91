import type { Facts, ListingFacts } from '../audit/facts.ts';
import { type PrintCost, printCostOf } from './card.ts';

/** What a copy sold on a listing costs to print, in one currency, as the catalogue stands on the day of the facts. */
export function costOnListing(listing: ListingFacts, currency: string, facts: Facts): PrintCost {
  const own = { minor: listing.printCostMinor, currency: listing.printCostCurrency };
  const of = { channelId: listing.channelId, currency, day: facts.day };
  return printCostOf(listing.format, own, facts.printCards, of);
}
