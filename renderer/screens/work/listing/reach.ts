import type { Edition } from '../../../../src/contract/editions.ts';
import type { Format } from '../../../../src/contract/formats.ts';
import type { Listing } from '../../../../src/contract/listings.ts';
import {
  EDITION_IDENTITY,
  FORMAT_IDENTITY,
  LISTING_STANDINGS,
  type ListingStanding,
} from '../../../../src/contract/terms.ts';

/** Short words for the button of each standing. */
export const STEP_VERBS: Record<ListingStanding, string> = {
  unsent: 'Back to unsent',
  sent: 'Mark sent',
  proof: 'Mark proof',
  cleared: 'Mark cleared',
  selling: 'Mark selling',
  leaving: 'Mark leaving',
  gone: 'Mark gone',
};

/** Standings a move can end at: one step away, or further on by several steps at once. */
export function reachable(listing: Listing): ListingStanding[] {
  const near = listing.next.map(({ to }) => to);
  if (near.length === 0) return [];
  const ahead = LISTING_STANDINGS.slice(LISTING_STANDINGS.indexOf(listing.standing) + 1);
  return [...new Set([...near, ...ahead])];
}

/** The standings that are recorded on the way, the last being the one chosen. */
export function wayOf(listing: Listing, to: ListingStanding): ListingStanding[] {
  if (listing.next.some((step) => step.to === to)) return [to];
  const from = LISTING_STANDINGS.indexOf(listing.standing);
  return LISTING_STANDINGS.slice(from + 1, LISTING_STANDINGS.indexOf(to) + 1);
}

/** The identity fields that this first submission would lock from now on. */
export function locksOf(edition: Edition, format: Format): string[] {
  return [
    ...(edition.lock?.fields.includes('title') ? [] : EDITION_IDENTITY),
    ...(format.lock?.fields.includes('form') ? [] : ['isbn', ...FORMAT_IDENTITY]),
  ];
}
