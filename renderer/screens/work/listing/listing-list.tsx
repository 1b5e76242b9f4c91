import { useState } from 'react';
import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import { Button } from '../../../ui/index.ts';
import { useWork } from '../parts/work-context.tsx';
import { AddListingDialog } from './add-listing-dialog.tsx';
import { ListingItem } from './listing-item.tsx';

/** Where a format is listed, and where it stands there. */
export function ListingList({ edition, format }: { edition: Edition; format: Format }) {
  const { editable } = useWork();
  const [adding, setAdding] = useState(false);
  const ended = format.standing === 'retired' || format.standing === 'cancelled';
  return (
    <div className="listings">
      <div className="listings-head">
        <h4>Channels</h4>
        {editable && !ended ? (
          <Button kind="quiet" label={`Add a listing: ${format.name}`} onClick={() => setAdding(true)}>
            Add a listing
          </Button>
        ) : null}
      </div>
      {format.listings.length === 0 ? <p className="soft unlisted">Not listed on any channel yet.</p> : null}
      <ul className="listing-list">
        {format.listings.map((listing) => (
          <ListingItem key={listing.id} edition={edition} format={format} listing={listing} />
        ))}
      </ul>
      {adding ? <AddListingDialog format={format} onClose={() => setAdding(false)} /> : null}
    </div>
  );
}
