import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import type { Listing } from '../../../../src/contract/listings.ts';

/** A listing with what it lists. */
export interface ListingItemProps {
  edition: Edition;
  format: Format;
  listing: Listing;
}
