import type { ListingFacts, NumberFacts } from './facts.ts';
import { byCode, byEdition, type Index } from './rule.ts';

// Numbers by their digits, each with the listings on which it shows.

/** A number that shows on a channel: noted in the reference of a listing, or the only one its format ever had. */
interface Shown {
  isbn13: string;
  listing: ListingFacts;
  noted: boolean;
}

/** What is known under the digits of a number: the rows of the number, then where it shows. */
type Known = NumberFacts | Shown;

function shows(known: Known): known is Shown {
  return 'listing' in known;
}

const ISBN13 = /(?<![\d-])97[89](?:[ -]?\d){10}(?!\d)/g;

/** The different ISBN-13 in a listing's reference, with or without hyphens and blanks. */
function numbersIn(reference: string): Set<string> {
  if (reference.length < 13) return new Set();
  return new Set((reference.match(ISBN13) ?? []).map((written) => written.replace(/[ -]/g, '')));
}

/** Whether a channel has the listing, so that a number shows there. */
function isOut(listing: ListingFacts): boolean {
  return listing.standing !== 'unsent' && listing.standing !== 'gone';
}

export function byNumber(a: NumberFacts, b: NumberFacts): number {
  return byCode(a.isbn13, b.isbn13) || (a.format?.id ?? 0) - (b.format?.id ?? 0);
}

function byListing(a: Shown, b: Shown): number {
  const [one, other] = [a.listing.format, b.listing.format];
  return (
    byEdition(one.edition, other.edition) ||
    one.id - other.id ||
    a.listing.id - b.listing.id ||
    Number(a.noted) - Number(b.noted)
  );
}

function* shownOn(listing: ListingFacts): Generator<Shown> {
  if (!isOut(listing)) return;
  const { format } = listing;
  const [only] = format.numbers;
  if (only && !format.number && format.standing !== 'cancelled')
    yield { isbn13: only.isbn13, listing, noted: false };
  for (const isbn13 of numbersIn(listing.reference)) yield { isbn13, listing, noted: true };
}

export const byDigits: Index<Known> = {
  *entries({ numbers, listings }) {
    for (const number of numbers) yield [number.isbn13, number];
    for (const listing of listings) for (const shown of shownOn(listing)) yield [shown.isbn13, shown];
  },
  order: (a, b) => {
    if (shows(a)) return shows(b) ? byListing(a, b) : 1;
    return shows(b) ? -1 : byNumber(a, b);
  },
};

/** The rows of the number whose digits these are; more than one only in a damaged file. */
export function rowsOf(known: readonly Known[]): NumberFacts[] {
  if (known.length < 2) return [];
  const first = known.findIndex(shows);
  return known.slice(0, first < 0 ? known.length : first) as NumberFacts[];
}

/** Where a recorded number shows, with its row. */
export function shownIn(known: readonly Known[]): (Shown & { number: NumberFacts })[] {
  const number = known.findLast((one) => !shows(one)) as NumberFacts | undefined;
  if (!number || known.length < 2) return [];
  return known.filter(shows).map((shown) => ({ ...shown, number }));
}
