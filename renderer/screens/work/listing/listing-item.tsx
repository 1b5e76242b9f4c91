import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import type { Listing } from '../../../../src/contract/listings.ts';
import { formatMoney } from '../../../lib/money.ts';
import { Standing } from '../../../ui/index.ts';
import { percent, returnsName } from '../parts/names.ts';
import { StepHistory } from './step-history.tsx';

/** The terms of a listing as one line; what is not set is left out. */
export function termsText(listing: Listing): string {
  return [
    listing.discountBp === null ? '' : `${percent(listing.discountBp)} discount`,
    returnsName(listing.returns).toLowerCase(),
    listing.printCost === null
      ? ''
      : `print cost ${formatMoney(listing.printCost.amountMinor, listing.printCost.currency)}`,
    listing.onSaleDate === null ? '' : `on sale ${listing.onSaleDate}`,
    listing.reference === '' ? '' : `reference ${listing.reference}`,
  ]
    .filter(Boolean)
    .join(' · ');
}

export interface ListingItemProps {
  edition: Edition;
  format: Format;
  listing: Listing;
}

/** One listing: channel, standing, terms, and the steps it took. */
export function ListingItem({ listing }: ListingItemProps) {
  const since = listing.lastStepOn === null ? undefined : `since ${listing.lastStepOn}`;
  return (
    <li className="listing">
      <div className="listing-head">
        <strong>{listing.channelName}</strong>
        <Standing of="listing" value={listing.standing} detail={since} />
      </div>
      <p className="soft">{termsText(listing) || 'No terms recorded.'}</p>
      {listing.note === '' ? null : <p className="prose">{listing.note}</p>}
      <StepHistory listing={listing} />
    </li>
  );
}
