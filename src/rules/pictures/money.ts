import type { MoneyBar, MoneyByChannel } from '../../contract/pictures.ts';
import type { Facts, ListingFacts, PriceRow } from '../audit/facts.ts';
import { compensation } from '../compensation.ts';
import { costOnListing } from '../print-cost/listing.ts';

/** The price that is told: in the currency of a typed print cost, else of Settings, else the first one. */
function priceOf({ format, printCostCurrency }: ListingFacts, currency: string): PriceRow | undefined {
  const inCurrency = (wanted: string | null) => format.prices.find((price) => price.currency === wanted);
  return inCurrency(printCostCurrency) ?? inCurrency(currency) ?? format.prices[0];
}

function barOf(listing: ListingFacts, price: PriceRow, facts: Facts): MoneyBar {
  const { format } = listing;
  const printCostMinor = costOnListing(listing, price.currency, facts).minor;
  const split =
    printCostMinor === null
      ? null
      : compensation({ listMinor: price.amountMinor, discountBp: listing.discountBp ?? 0, printCostMinor });
  return {
    listingId: listing.id,
    formatId: format.id,
    workId: format.edition.workId,
    label: format.label,
    standing: listing.standing,
    currency: price.currency,
    listMinor: price.amountMinor,
    printCostMinor,
    channelMinor: split?.channelMinor ?? null,
    keptMinor: split?.keptMinor ?? null,
  };
}

/** What is kept as a share of the list price; what cannot be told comes last. */
function share(bar: MoneyBar): number {
  return bar.keptMinor === null ? Number.POSITIVE_INFINITY : bar.keptMinor / Math.max(1, bar.listMinor);
}

/** What a copy brings on every listing that has a price and is not on its way out, channel by channel, the least first. */
export function moneyOf(facts: Facts, most: number): MoneyByChannel {
  const byChannel = new Map<number, MoneyBar[]>();
  for (const listing of facts.listings) {
    const price = priceOf(listing, facts.settings.currency);
    const ended = ['leaving', 'gone'].includes(listing.standing) || listing.format.standing === 'cancelled';
    if (!price || ended) continue;
    const bars = byChannel.get(listing.channelId) ?? [];
    byChannel.set(listing.channelId, bars);
    bars.push(barOf(listing, price, facts));
  }
  return {
    day: facts.day,
    channels: facts.channels.flatMap(({ id, name }) => {
      const bars = (byChannel.get(id) ?? []).sort((a, b) => share(a) - share(b));
      return bars.length === 0
        ? []
        : [{ channelId: id, name, bars: bars.slice(0, most), total: bars.length }];
    }),
  };
}
