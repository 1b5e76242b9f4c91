import type { EditionFacts, Facts, FormatFacts, ListingFacts } from './facts.ts';
import { each, type Found, ofFormat, ofListing, PRACTICE, type Rule } from './rule.ts';

// Two editions of one work on sale at once.

interface Pair {
  older: FormatFacts;
  newer: FormatFacts;
  /** Listings of the older one on channels where the newer one sells too. */
  sideBySide: ListingFacts[];
}

function predecessors(edition: EditionFacts): Set<EditionFacts> {
  const found = new Set<EditionFacts>();
  for (let at = edition.replaces; at && !found.has(at); at = at.replaces) found.add(at);
  return found;
}

/** An edition with a name of its own and no number, such as an illustrated one, is meant to stand beside the others. */
function standsApart(edition: EditionFacts): boolean {
  return edition.number === null && edition.statement !== '' && edition.replacesId === null;
}

function isSelling(listing: ListingFacts): boolean {
  return listing.standing === 'selling';
}

/** Three rules look at the same pairs; they are found once for the same facts. */
const pairsOf = new WeakMap<Facts, Pair[]>();

function pairs(facts: Facts): Pair[] {
  const known = pairsOf.get(facts) ?? findPairs(facts);
  pairsOf.set(facts, known);
  return known;
}

/**
 * Formats of older editions that are still on sale beside the newest live one of the same work, language,
 * form, file format and print size.
 */
function findPairs(facts: Facts): Pair[] {
  const onSale = facts.formats.filter(({ standing }) => standing === 'live' || standing === 'retiring');
  const groups = Map.groupBy(onSale, ({ edition, form, formDetail, largePrint }) =>
    [edition.workId, edition.language, form, formDetail, largePrint].join(' '),
  );
  return [...groups.values()].flatMap((formats) => {
    const newer = formats.findLast((format) => format.standing === 'live');
    if (!newer) return [];
    const before = predecessors(newer.edition);
    const channels = new Set(newer.listings.filter(isSelling).map((listing) => listing.channel));
    return formats
      .filter(({ edition }) => edition.place < newer.edition.place)
      .filter(({ edition }) => before.has(edition) || !(standsApart(edition) || standsApart(newer.edition)))
      .map((older) => ({
        older,
        newer,
        sideBySide: older.listings.filter((listing) => isSelling(listing) && channels.has(listing.channel)),
      }));
  });
}

/** Pairs that do not already show as standing side by side on a channel. */
function apart(facts: Facts, check: (pair: Pair) => string | null): Found[] {
  return pairs(facts)
    .filter((pair) => pair.sideBySide.length === 0)
    .flatMap((pair) => each([pair.older], ofFormat, () => check(pair)));
}

export const onSaleRules: readonly Rule[] = [
  {
    id: 'editions-side-by-side',
    sentence: 'A channel does not sell two editions of one work in the same form.',
    severity: 'must fix',
    mend: 'Ask the channel to stop selling the older edition; plan its retirement if that was not done.',
    source: PRACTICE,
    find: (facts) =>
      pairs(facts).flatMap(({ newer, sideBySide }) =>
        each(sideBySide, ofListing, (listing) => `${listing.label} is selling beside ${newer.label}.`),
      ),
  },
  {
    id: 'two-editions-live',
    sentence: 'When a new edition is live, the retirement of the older one in the same form is planned.',
    severity: 'must fix',
    mend: 'Plan the retirement of the older edition.',
    source: PRACTICE,
    find: (facts) =>
      apart(facts, ({ older, newer }) =>
        older.standing === 'live' && !older.edition.retirement
          ? `${older.label} is live beside ${newer.label}, and its retirement is not planned.`
          : null,
      ),
  },
  {
    id: 'older-edition-on-sale',
    sentence: 'An older edition is gone from every channel soon after the new one is live.',
    severity: 'should fix',
    mend: 'Finish the tasks of its retirement plan.',
    source: PRACTICE,
    find: (facts) =>
      apart(facts, ({ older, newer }) =>
        older.edition.retirement
          ? `${older.label} is still ${older.standing} beside ${newer.label}; its retirement is planned for ${older.edition.retirement.day}.`
          : null,
      ),
  },
];
