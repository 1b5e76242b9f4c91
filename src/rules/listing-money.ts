import type { MoneyRow } from '../contract/money.ts';
import { formName, madeOf } from '../contract/terms.ts';
import { afterReturns, type CopySold, compensation, lowestList } from './compensation.ts';
import type { PricedListing } from './earnings.ts';
import { type CurrencyEndings, endingPrices } from './endings.ts';
import { cardName, type KeptCard, type PrintCost, printCostOf } from './print-cost/card.ts';

/** A listing with one of its prices, as it stands in the catalogue. */
export interface MoneyListing extends PricedListing, Pick<MoneyRow, 'standing' | 'returns' | 'tax'> {}

/** What every listing is judged by. */
export interface MoneyTerms {
  cards: readonly KeptCard[];
  endings: readonly CurrencyEndings[];
  day: string;
  lengthUnit: 'mm' | 'in';
  shipped: number;
  returnedBp: number;
}

/** The print cost of a listing in the currency of its price, with the name of the card that tells it. */
export function costWithName(
  listing: PricedListing,
  { cards, day, lengthUnit }: Pick<MoneyTerms, 'cards' | 'day' | 'lengthUnit'>,
): PrintCost & { cardName: string } {
  const own = { minor: listing.printCostMinor, currency: listing.printCostCurrency };
  const { channelId, currency } = listing;
  const cost = printCostOf(listing, own, cards, { channelId, currency, day });
  const card = cards.find((one) => one.id === cost.cardId);
  return { ...cost, cardName: card ? cardName(card, lengthUnit) : '' };
}

/** What is sold there; where no discount is recorded the channel takes nothing. Null without a print cost. */
export function soldAs({ discountBp, listMinor }: PricedListing, { minor }: PrintCost): CopySold | null {
  return minor === null ? null : { listMinor, discountBp: discountBp ?? 0, printCostMinor: minor };
}

/** The largest share of returns, in whole basis points, at which receipts still cover the printing of the run. */
function bearable(copy: CopySold): number | null {
  if (copy.printCostMinor === 0) return null;
  const perCopy = BigInt(copy.listMinor) * BigInt(10_000 - copy.discountBp);
  const print = BigInt(copy.printCostMinor) * 10_000n;
  if (perCopy <= print) return 0;
  return Number(((perCopy - print) * 10_000n) / perCopy);
}

function returned(listing: MoneyListing, copy: CopySold | null, terms: MoneyTerms): MoneyRow['afterReturns'] {
  if (copy === null || listing.returns === 'N' || madeOf(listing.form) === 'e-book') return null;
  const back = Math.round((terms.shipped * terms.returnedBp) / 10_000);
  return { ...afterReturns(copy, terms.shipped, back), bearableBp: bearable(copy) };
}

/** What a copy brings on a listing at one price; what cannot be told is null, never guessed. */
export function moneyRowOf(listing: MoneyListing, terms: MoneyTerms): MoneyRow {
  const { listingId, formatId, channelId, channelName, standing, currency, listMinor, tax, returns } =
    listing;
  const printCost = costWithName(listing, terms);
  const copy = soldAs(listing, printCost);
  const kept = copy === null ? null : compensation(copy);
  const lowestMinor = copy === null ? null : lowestList(copy.discountBp, copy.printCostMinor);
  return {
    listingId,
    formatId,
    formatName: formName(listing),
    made: madeOf(listing.form),
    channelId,
    channelName,
    standing,
    currency,
    listMinor,
    tax,
    discountBp: listing.discountBp,
    returns,
    printCost,
    keptMinor: kept?.keptMinor ?? null,
    keptParts: kept === null ? null : Number(kept.exact),
    channelMinor: kept?.channelMinor ?? null,
    lowestMinor,
    lowestEnding: lowestMinor === null ? [] : endingPrices(lowestMinor, currency, terms.endings),
    afterReturns: returned(listing, copy, terms),
  };
}
