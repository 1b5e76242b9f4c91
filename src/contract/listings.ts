import { z } from 'zod';
import { anyText, isoDate, money, operation, rowId } from './operation.ts';
import { listingStanding } from './terms.ts';

/** What a listing records besides its standing; all of it stays open until the listing is gone. */
export const listingFields = z.object({
  /** Trade discount in basis points: 4000 is 40 %. */
  discountBp: z.int().min(0).max(10_000).nullable(),
  /** ONIX List 66 code. */
  returns: z.enum(['Y', 'N', 'C', 'S']).nullable(),
  printCost: money.nullable(),
  /** The on-sale date as given to this channel. */
  onSaleDate: isoDate.nullable(),
  reference: anyText,
  note: anyText,
});
export type ListingFields = z.infer<typeof listingFields>;

export const listing = listingFields.extend({
  id: rowId,
  formatId: rowId,
  channelId: rowId,
  channelName: z.string(),
  standing: listingStanding,
  firstSentOn: isoDate.nullable(),
  firstClearedOn: isoDate.nullable(),
  lastStepOn: isoDate.nullable(),
  steps: z.array(z.object({ from: listingStanding, to: listingStanding, on: isoDate, note: z.string() })),
  /** Steps this listing can take from where it stands, with what each means. */
  next: z.array(z.object({ to: listingStanding, label: z.string() })),
});
export type Listing = z.infer<typeof listing>;

const listingId = z.object({ listingId: rowId });

export const createListing = operation({
  name: 'listings.create',
  kind: 'command',
  summary: 'List a format on a channel, unsent; discount and returns start as the channel usually has them.',
  input: listingFields.partial().extend({ formatId: rowId, channelId: rowId }),
  output: listingId,
  errors: ['ALREADY_EXISTS', 'STEP_REFUSED'],
});

export const updateListing = operation({
  name: 'listings.update',
  kind: 'command',
  summary: 'Change discount, returns, print cost, on-sale date, reference or note of a listing.',
  input: listingFields.partial().extend({ id: rowId }),
  output: listingId.extend({ changed: z.array(z.string()) }),
  errors: ['FIELD_LOCKED'],
});

export const removeListing = operation({
  name: 'listings.remove',
  kind: 'command',
  summary: 'Remove a listing that was never sent.',
  input: z.object({ id: rowId }),
  output: listingId,
  errors: ['FIELD_LOCKED', 'IN_USE'],
});

export const moveListing = operation({
  name: 'listings.move',
  kind: 'command',
  summary:
    'Move a listing to a standing, one recorded step after the other (unsent → sent → proof → cleared → selling → leaving → gone; refused goes back to unsent). The first "sent" locks the identity fields.',
  input: z.object({ id: rowId, to: listingStanding, on: isoDate.optional(), note: anyText.default('') }),
  output: listingId.extend({ standing: listingStanding, locked: z.array(z.string()) }),
  errors: ['STEP_REFUSED', 'NOT_READY'],
});

export const listingRequest = operation({
  name: 'listings.requestText',
  kind: 'query',
  summary:
    'The filled-in text that asks a channel to stop selling this format, or asks again, ready to copy.',
  input: z.object({ id: rowId, kind: z.enum(['removal request', 'chase']).default('removal request') }),
  output: z.object({ to: z.string(), subject: z.string(), text: z.string() }),
  errors: [],
});
