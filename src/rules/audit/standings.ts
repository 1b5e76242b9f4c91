import { channelDays } from '../plans/proof-days.ts';
import { workCalendar, workingDaysAfter } from '../working-days.ts';
import type { Facts, ListingFacts } from './facts.ts';
import { each, hasEnded, OURS, ofListing, PRACTICE, type Rule } from './rule.ts';

// Where listings stand, beside where their format stands.

/** A listing that waits for the channel's word longer than it takes, and that no task reminds of. */
function waits(facts: Facts): (listing: ListingFacts) => boolean {
  const calendar = workCalendar(facts.settings);
  const inHand = new Set(facts.tasks.map((task) => task.listing));
  // Many listings move on the same days.
  const last = new Map<string, string>();
  const lastDay = (from: string, days: number): string => {
    const key = `${from} ${days}`;
    const day = last.get(key) ?? workingDaysAfter(calendar, from, days);
    last.set(key, day);
    return day;
  };
  return (listing) =>
    (listing.standing === 'sent' || listing.standing === 'proof') &&
    listing.lastStepOn !== null &&
    !inHand.has(listing) &&
    lastDay(listing.lastStepOn, channelDays(listing.channel)) < facts.day;
}

function waiting(listing: ListingFacts): string {
  const state = listing.standing === 'sent' ? 'was sent' : 'has had a proof to check since';
  return `${listing.label} ${state} ${listing.standing === 'sent' ? 'on ' : ''}${listing.lastStepOn} and was never cleared`;
}

export const standingRules: readonly Rule[] = [
  {
    id: 'selling-never-cleared',
    sentence: 'A listing that is on sale was cleared before.',
    severity: 'must fix',
    mend: 'Look at the proof now; record the day on which it was cleared, or ask the channel to stop selling.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) =>
        ['selling', 'leaving'].includes(listing.standing) && listing.firstClearedOn === null
          ? `${listing.label} stands at '${listing.standing}' and was never cleared.`
          : null,
      ),
  },
  {
    id: 'live-listing-not-cleared',
    sentence: 'When a format is live on one channel, its other listings are cleared within their lead time.',
    severity: 'should fix',
    mend: 'Ask the channel how far it is; check the proof, record that it is cleared, or take the listing back.',
    source: PRACTICE,
    find: (facts) => {
      const isWaiting = waits(facts);
      return each(facts.listings, ofListing, (listing) =>
        listing.format.standing === 'live' && isWaiting(listing)
          ? `${waiting(listing)}, while the format is live elsewhere.`
          : null,
      );
    },
  },
  {
    id: 'listing-waits-too-long',
    sentence:
      'A listing that was sent is answered within the lead time of the channel, unless a task reminds of it.',
    severity: 'should fix',
    mend: 'Ask the channel how far it is; record the proof, or that the listing was refused.',
    source: OURS,
    find: (facts) => {
      const isWaiting = waits(facts);
      return each(facts.listings, ofListing, (listing) =>
        listing.format.standing !== 'live' && isWaiting(listing)
          ? `${waiting(listing)}; ${channelDays(listing.channel)} working days are allowed for that.`
          : null,
      );
    },
  },
  {
    id: 'live-listing-never-sent',
    sentence: 'A live format was sent to every channel it has a listing on.',
    severity: 'note',
    mend: 'Send it, or remove the listing if the channel is no longer wanted.',
    source: OURS,
    find: (facts) =>
      each(facts.past ? [] : facts.listings, ofListing, (listing) =>
        listing.format.standing === 'live' && listing.standing === 'unsent' && listing.firstSentOn === null
          ? `${listing.label} was never sent, although the format is live.`
          : null,
      ),
  },
  {
    id: 'listing-came-back',
    sentence: 'A listing that came back unsent is sent again.',
    severity: 'should fix',
    mend: 'Mend what the channel refused and send it again; a format that is given up is cancelled.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) =>
        listing.standing === 'unsent' && listing.firstSentOn !== null && !hasEnded(listing.format)
          ? `${listing.label} came back${listing.lastStepOn ? ` on ${listing.lastStepOn}` : ''} and was not sent again.`
          : null,
      ),
  },
  {
    id: 'cancelled-format-listed',
    sentence: 'A cancelled format is on no channel.',
    severity: 'must fix',
    mend: 'Have the channel take it down; nobody must be able to order it.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) =>
        listing.format.standing === 'cancelled' && !['unsent', 'gone'].includes(listing.standing)
          ? `${listing.label} stands at '${listing.standing}', but the format is cancelled.`
          : null,
      ),
  },
  {
    id: 'listing-without-its-step',
    sentence: 'A listing stands where its last recorded step left it.',
    severity: 'must fix',
    mend: 'Restore the file from a backup in which the check of the catalogue finds nothing; the program itself never writes this.',
    source: OURS,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) => {
        const last = listing.steps.at(-1)?.toStanding ?? 'unsent';
        return last === listing.standing
          ? null
          : `${listing.label} stands at '${listing.standing}', its last recorded step led to '${last}'.`;
      }),
  },
];
