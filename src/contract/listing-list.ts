import { z } from 'zod';
import { price } from './formats.ts';
import { listingFields } from './listings.ts';
import { asOf, isoDate, operation, rowId } from './operation.ts';
import { formatStanding, listingStanding } from './terms.ts';

export const LISTING_SORTS = [
  'title',
  'form',
  'number',
  'standing',
  'since',
  'on sale',
  'discount',
  'reference',
  'format standing',
] as const;
export type ListingSort = { by: (typeof LISTING_SORTS)[number]; down: boolean };

export const listingRow = listingFields.extend({
  id: rowId,
  formatId: rowId,
  workId: rowId,
  /** 'The Salt Almanac, 2nd edition' */
  edition: z.string(),
  name: z.string(),
  formatStanding,
  hyphenated: z.string().nullable(),
  prices: z.array(price),
  standing: listingStanding,
  /** The day of the last step it took. */
  since: isoDate.nullable(),
  firstSentOn: isoDate.nullable(),
});
export type ListingRow = z.infer<typeof listingRow>;

export const findListings = operation({
  name: 'listings.find',
  kind: 'query',
  summary: 'What is listed on a channel and how it stands there, a page at a time in the order asked for.',
  input: z.object({
    channelId: rowId,
    /** Any of these; empty for all. */
    standings: z.array(listingStanding).max(20).default([]),
    sort: z.object({ by: z.enum(LISTING_SORTS), down: z.boolean() }).default({ by: 'title', down: false }),
    from: z.int().nonnegative().default(0),
    count: z.int().min(1).max(1000).default(100),
    asOf,
  }),
  output: z.object({ rows: z.array(listingRow), total: z.int() }),
  errors: [],
});
