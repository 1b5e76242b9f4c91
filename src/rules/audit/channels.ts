import { madeOf } from '../../contract/terms.ts';
import type { ListingFacts } from './facts.ts';
import { each, hasEnded, OURS, ofListing, PRACTICE, type Rule } from './rule.ts';

// What a listing may be, given the channel's own rules.

/** The channel will show, or already shows, what is recorded now. */
function isOpen(listing: ListingFacts): boolean {
  return !['leaving', 'gone'].includes(listing.standing) && !hasEnded(listing.format);
}

function overLimit(
  id: string,
  sentence: string,
  mend: string,
  measure: (listing: ListingFacts) => { size: number; limit: number | null; unit: string },
): Rule {
  return {
    id,
    sentence,
    severity: 'should fix',
    mend,
    source: `${OURS} (the limit set for the channel)`,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) => {
        const { size, limit, unit } = measure(listing);
        if (limit === null || size <= limit || !isOpen(listing)) return null;
        return `${listing.label}: ${size} ${unit}, the channel takes ${limit}.`;
      }),
  };
}

export const channelRules: readonly Rule[] = [
  {
    id: 'listing-on-closed-channel',
    sentence: 'Nothing is sold or under way on a channel that has closed.',
    severity: 'must fix',
    mend: 'Move the listing to leaving and gone, or open the channel again if it was closed by mistake.',
    source: OURS,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) => {
        const { closedOn } = listing.channel;
        const active = ['sent', 'proof', 'cleared', 'selling'].includes(listing.standing);
        return active && closedOn && closedOn <= facts.day
          ? `${listing.label} stands at '${listing.standing}', but the channel closed on ${closedOn}.`
          : null;
      }),
  },
  {
    id: 'channel-for-other-forms',
    sentence: 'A channel for printed books, e-books or audiobooks lists formats of that kind.',
    severity: 'should fix',
    mend: 'Take the listing back, or change what the channel is for.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) => {
        const { kind } = listing.channel;
        return kind !== 'any' && kind !== madeOf(listing.format.form) && isOpen(listing)
          ? `${listing.label}: the channel is for ${kind}, the format is ${madeOf(listing.format.form)}.`
          : null;
      }),
  },
  overLimit(
    'too-many-subjects',
    'An edition has no more subjects than a channel takes.',
    'Remove subjects, or put those that matter most first and leave the rest out when the listing is made; subjects stay open.',
    ({ format, channel }) => ({
      size: format.edition.subjects,
      limit: channel.subjectLimit,
      unit: 'subjects',
    }),
  ),
  overLimit(
    'too-many-keywords',
    'An edition has no more keywords than a channel takes.',
    'Remove keywords; they stay open.',
    ({ format, channel }) => ({
      size: format.edition.keywords,
      limit: channel.keywordLimit,
      unit: 'keywords',
    }),
  ),
  overLimit(
    'description-too-long',
    'A description is no longer than a channel takes.',
    'Shorten the description; it stays open.',
    ({ format, channel }) => ({
      size: format.edition.descriptionLength,
      limit: channel.descriptionLimit,
      unit: 'characters of description',
    }),
  ),
];
