import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import { ListingItem } from './listing-item.tsx';

/** Where a format is listed, and where it stands there. */
export function ListingList({ edition, format }: { edition: Edition; format: Format }) {
  return (
    <div className="listings">
      <h4 className="listings-head">Channels</h4>
      {format.listings.length === 0 ? <p className="soft">Not listed on any channel yet.</p> : null}
      <ul className="listing-list">
        {format.listings.map((listing) => (
          <ListingItem key={listing.id} edition={edition} format={format} listing={listing} />
        ))}
      </ul>
    </div>
  );
}
