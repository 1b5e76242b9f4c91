import { each, OURS, ofListing, type Rule } from './rule.ts';

// What channels were sent, beside what is recorded now.

export const submissionRules: readonly Rule[] = [
  {
    id: 'differs-from-what-was-sent',
    sentence: 'What is recorded of a listing is what its channel was last sent.',
    severity: 'should fix',
    mend: 'Open the submission sheet of the listing, send the channel what changed and record that it was sent, or set the record back.',
    source: OURS,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) =>
        listing.differs
          ? `${listing.label} differs from what was sent on ${listing.differs.sentOn}: ${listing.differs.labels.join(', ').toLowerCase()}.`
          : null,
      ),
  },
];
