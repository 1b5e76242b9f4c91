import type { EditionFacts } from './facts.ts';

/** Whether the identity fields of an edition are surely open: nothing of it was ever sent. */
export function openIdentity(edition: EditionFacts): boolean {
  return edition.formats.every((format) => format.listings.every((listing) => listing.firstSentOn === null));
}

/**
 * The edition number that follows the given edition, or the highest of the work in this language; null where another
 * edition has it.
 */
export function nextAfter(edition: EditionFacts, before: EditionFacts | null): number | null {
  const others = edition.work.editions.filter(
    (other) => other !== edition && other.language === edition.language,
  );
  const taken = others.map((other) => other.number ?? 0);
  const number = before ? (before.number ?? 1) + 1 : Math.max(1, ...taken) + 1;
  return taken.includes(number) ? null : number;
}
