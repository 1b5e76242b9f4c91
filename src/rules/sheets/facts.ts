import type { ChannelFields } from '../../contract/channels.ts';
import type { Edition } from '../../contract/editions.ts';
import type { Format } from '../../contract/formats.ts';
import type { Listing } from '../../contract/listings.ts';

/** The rules of a channel that a sheet is made and checked by. */
export type SheetChannel = Pick<
  ChannelFields,
  | 'name'
  | 'contact'
  | 'titleLimit'
  | 'subtitleLimit'
  | 'descriptionLimit'
  | 'descriptionMarkup'
  | 'subjectLimit'
  | 'keywordLimit'
  | 'keywordSeparator'
  | 'sheetItems'
  | 'locksMore'
>;

/** What the values of a sheet are made of. */
export interface ValueFacts {
  edition: Omit<Edition, 'label' | 'replacedById' | 'lock' | 'correction' | 'formats' | 'plans'>;
  format: Omit<Format, 'name' | 'standing' | 'numberSince' | 'replacedBy' | 'lock' | 'listings' | 'files'>;
  listing: Pick<Listing, 'onSaleDate' | 'discountBp' | 'returns'>;
  channel: Pick<SheetChannel, 'keywordSeparator'>;
  publisher: string;
}

/** A listing with all that is typed in for it. */
export interface SheetFacts {
  edition: Edition;
  format: Format;
  listing: Listing;
  channel: SheetChannel;
  publisher: string;
}
