import { useId, useState } from 'react';
import type { Listing } from '../../../../src/contract/listings.ts';
import { formatDay } from '../../../lib/dates.ts';
import { formatMoney } from '../../../lib/money.ts';
import { Button, Standing } from '../../../ui/index.ts';
import { headingId } from '../parts/go-to.ts';
import { counted, percent, returnsName } from '../parts/names.ts';
import { useWork } from '../parts/work-context.tsx';
import { Rounds } from '../proof/rounds.tsx';
import { ListingActions } from './listing-actions.tsx';
import type { ListingItemProps } from './listing-props.ts';
import { SheetLink } from './sheet-link.tsx';
import { StepHistory } from './step-history.tsx';

/** The terms of a listing, one piece for each; what is not set is left out. */
function termsOf(listing: Listing): string[] {
  return [
    listing.discountBp === null ? '' : `${percent(listing.discountBp)} discount`,
    returnsName(listing.returns).toLowerCase(),
    listing.printCost === null
      ? ''
      : `print cost ${formatMoney(listing.printCost.amountMinor, listing.printCost.currency)}`,
    listing.onSaleDate === null ? '' : `on sale ${formatDay(listing.onSaleDate)}`,
    listing.reference === '' ? '' : `reference ${listing.reference}`,
  ].filter(Boolean);
}

function Terms({ listing }: { listing: Listing }) {
  const terms = termsOf(listing);
  if (terms.length === 0) return <p className="soft">No terms recorded.</p>;
  return (
    <ul className="terms soft" aria-label={`Terms on ${listing.channelName}`}>
      {terms.map((term) => (
        <li key={term}>{term}</li>
      ))}
    </ul>
  );
}

/** One listing: channel, standing, terms, what can be done, and the steps it took. */
export function ListingItem(props: ListingItemProps) {
  const { format, listing } = props;
  const { editable } = useWork();
  const ended = format.standing === 'retired' || format.standing === 'cancelled';
  const [open, setOpen] = useState(false);
  const id = useId();
  const since = listing.lastStepOn === null ? undefined : `since ${formatDay(listing.lastStepOn)}`;
  const steps = counted(listing.steps.length, 'step');
  const history =
    listing.steps.length === 0 ? null : (
      <Button
        kind="quiet"
        label={`${steps}: ${format.name} on ${listing.channelName}`}
        expanded={open}
        controls={open ? id : undefined}
        onClick={() => setOpen(!open)}
      >
        {steps}
      </Button>
    );
  return (
    <li className="listing">
      <div className="listing-head">
        <h5 id={headingId('listing', listing.id)} tabIndex={-1}>
          {listing.channelName}
        </h5>
        <Standing of="listing" value={listing.standing} detail={since} />
      </div>
      <Terms listing={listing} />
      {listing.note === '' ? null : <p className="prose">{listing.note}</p>}
      {editable && !ended ? (
        <ListingActions {...props} history={history} />
      ) : (
        <div className="row listing-actions">
          <SheetLink {...props} />
          {history}
        </div>
      )}
      {open ? (
        <div id={id}>
          <StepHistory listing={listing} />
          <Rounds editionId={props.edition.id} listingId={listing.id} />
        </div>
      ) : null}
    </li>
  );
}
