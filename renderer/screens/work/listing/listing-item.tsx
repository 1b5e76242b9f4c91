import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import type { Listing } from '../../../../src/contract/listings.ts';
import { formatMoney } from '../../../lib/money.ts';
import { Standing } from '../../../ui/index.ts';
import { headingId } from '../parts/go-to.ts';
import { percent, returnsName } from '../parts/names.ts';
import { useWork } from '../parts/work-context.tsx';
import { ListingActions } from './listing-actions.tsx';
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
export function ListingItem(props: ListingItemProps) {
  const { listing } = props;
  const { editable } = useWork();
  const since = listing.lastStepOn === null ? undefined : `since ${listing.lastStepOn}`;
  return (
    <li className="listing">
      <div className="listing-head">
        <h5 id={headingId('listing', listing.id)} tabIndex={-1}>
          {listing.channelName}
        </h5>
        <Standing of="listing" value={listing.standing} detail={since} />
      </div>
      <p className="soft">{termsText(listing) || 'No terms recorded.'}</p>
      {listing.note === '' ? null : <p className="prose">{listing.note}</p>}
      {editable ? <ListingActions {...props} /> : null}
      <StepHistory listing={listing} />
    </li>
  );
}
