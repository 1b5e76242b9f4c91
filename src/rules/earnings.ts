import type { Earning } from '../contract/costs.ts';
import { formName } from '../contract/terms.ts';
import { compensation } from './compensation.ts';
import { type KeptCard, printCostOf } from './print-cost/card.ts';

export interface PricedListing {
  listingId: number;
  formatId: number;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: boolean;
  interiorColour: string | null;
  trimWidthUm: number | null;
  trimHeightUm: number | null;
  pages: number | null;
  channelId: number;
  channelName: string;
  /** Null where none is recorded: the channel then takes nothing. */
  discountBp: number | null;
  printCostMinor: number | null;
  printCostCurrency: string | null;
  currency: string;
  listMinor: number;
}

const WHOLE = 10_000n;

/** Copies that bring a cost back at what each earns, in ten-thousandths of a minor unit; rounded up, null for no gain. */
export function copiesToCover(costMinor: number, exact: bigint): number | null {
  if (exact <= 0n) return costMinor === 0 ? 0 : null;
  return Number((BigInt(costMinor) * WHOLE + exact - 1n) / exact);
}

/**
 * What a copy earns on a listing at one price (compensation = list × (1 − discount) − print cost), and how many
 * would bring the costs so far back. A printed format whose print cost is not known in the currency of the price,
 * neither typed nor from a card of the channel, earns nothing that can be told.
 */
export function earningOf(
  listing: PricedListing,
  costsMinor: number,
  cards: readonly KeptCard[],
  day: string,
): Earning {
  const { listingId, formatId, channelName, currency, listMinor } = listing;
  const discountBp = listing.discountBp ?? 0;
  const own = { minor: listing.printCostMinor, currency: listing.printCostCurrency };
  const of = { channelId: listing.channelId, currency, day };
  const printCostMinor = printCostOf(listing, own, cards, of).minor;
  const kept = printCostMinor === null ? null : compensation({ listMinor, discountBp, printCostMinor });
  return {
    listingId,
    formatId,
    formatName: formName(listing),
    channelName,
    currency,
    listMinor,
    discountBp,
    printCostMinor,
    keptMinor: kept?.keptMinor ?? null,
    copiesToCover: kept === null ? null : copiesToCover(costsMinor, kept.exact),
  };
}
