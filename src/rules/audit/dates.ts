import type { EditionFacts, FormatFacts, ListingFacts } from './facts.ts';
import {
  each,
  type Found,
  hasEnded,
  isSubmitted,
  OURS,
  ofEdition,
  ofFormat,
  ofListing,
  PRACTICE,
  type Rule,
  saleDay,
} from './rule.ts';

// Dates that should agree, and days that passed with the standing behind them.

const BEFORE_SALE: ReadonlySet<string> = new Set(['planned', 'committed', 'proofing']);
/** Once a format has been on sale its dates are locked. */
const HISTORY =
  'Nothing needs doing if one followed later. A date once reached is history and locked; note beside it which one is right.';
const NOT_YET_SELLING: ReadonlySet<string> = new Set(['unsent', 'sent', 'proof', 'cleared']);

/** The formats of an edition that have not ended and have this date, when they do not agree on it. */
function disagreeing(edition: EditionFacts, date: 'onSaleDate' | 'publicationDate'): string | null {
  const dated = edition.formats.filter((format) => !hasEnded(format) && format[date] !== null);
  if (new Set(dated.map((format) => format[date])).size < 2) return null;
  return dated.map((format) => `${format.name} ${format[date]}`).join(', ');
}

/** What to say of a listing whose own on-sale date is not the common one. */
function otherDay(listing: ListingFacts): string | null {
  const { format, label, onSaleDate } = listing;
  if (!onSaleDate || hasEnded(format)) return null;
  const day = commonDay(format);
  const holder = format.onSaleDate ? 'the format' : 'another listing of the edition';
  return day === onSaleDate ? null : `${label} has the on-sale date ${onSaleDate}, ${holder} has ${day}.`;
}

function isComing(edition: EditionFacts): boolean {
  return edition.formats.some((format) => BEFORE_SALE.has(format.standing));
}

/** The day that a listing's own on-sale date should be: its format's, else the first named in the edition. */
function commonDay(format: FormatFacts): string | null {
  if (format.onSaleDate) return format.onSaleDate;
  for (const sibling of format.edition.formats)
    for (const listing of sibling.listings) if (listing.onSaleDate) return listing.onSaleDate;
  return null;
}

/** Whether the release plan brought, or was to bring, this listing on sale; what was added after that day it did not. */
function isOfRelease(listing: ListingFacts, releaseDay: string): boolean {
  const { format, firstSentOn } = listing;
  if (format.standing === 'live') return firstSentOn !== null && firstSentOn <= releaseDay;
  const day = saleDay(listing);
  if (day !== null) return day <= releaseDay;
  return (
    format.standing !== 'planned' || format.edition.formats.every(({ standing }) => standing === 'planned')
  );
}

/** The listings that are not on sale although the day of their edition's release plan has passed. */
function lateOfRelease(edition: EditionFacts, day: string): ListingFacts[] {
  const releaseDay = edition.release?.day;
  if (releaseDay === undefined || releaseDay >= day) return [];
  return edition.formats
    .filter((format) => !hasEnded(format))
    .flatMap((format) => format.listings)
    .filter((listing) => NOT_YET_SELLING.has(listing.standing) && isOfRelease(listing, releaseDay));
}

function firstSaleDay(edition: EditionFacts): string | null {
  const days = edition.formats.flatMap((f) =>
    f.onSaleDate && f.standing !== 'cancelled' ? [f.onSaleDate] : [],
  );
  return days.sort()[0] ?? null;
}

export const dateRules: readonly Rule[] = [
  {
    id: 'sale-date-differs-on-channel',
    sentence: 'Every listing that is to go on sale has the on-sale date of its format.',
    severity: 'should fix',
    mend: "Give the listing the format's date, or leave its own date empty; tell the channel if it was given another.",
    source: PRACTICE,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) =>
        NOT_YET_SELLING.has(listing.standing) ? otherDay(listing) : null,
      ),
  },
  {
    id: 'sale-date-differed-on-channel',
    sentence: 'Every listing on sale has the on-sale date of its format.',
    severity: 'note',
    mend: HISTORY,
    source: PRACTICE,
    find: (facts) =>
      each(facts.listings, ofListing, (listing) =>
        listing.standing === 'selling' ? otherDay(listing) : null,
      ),
  },
  {
    id: 'sale-dates-differ-in-edition',
    sentence: 'The formats of a coming edition go on sale on one day.',
    severity: 'should fix',
    mend: 'Plan the release of the edition: it sets one day everywhere. Leave the dates if one format is meant to follow later.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) => {
        const dates = disagreeing(edition, 'onSaleDate');
        return dates && isComing(edition)
          ? `The formats of ${edition.label} go on sale on different days: ${dates}.`
          : null;
      }),
  },
  {
    id: 'sale-dates-differed-in-edition',
    sentence: 'The formats of an edition on sale have one on-sale date.',
    severity: 'note',
    mend: HISTORY,
    source: PRACTICE,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) => {
        const dates = disagreeing(edition, 'onSaleDate');
        return dates && !isComing(edition)
          ? `The formats of ${edition.label} went on sale on different days: ${dates}.`
          : null;
      }),
  },
  {
    id: 'publication-dates-differ',
    sentence: 'The formats of an edition have one publication date.',
    severity: 'note',
    mend: 'Give those that are not on sale yet one date, or leave the dates if one format is meant to follow later.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) => {
        const dates = disagreeing(edition, 'publicationDate');
        return dates ? `The formats of ${edition.label} have different publication dates: ${dates}.` : null;
      }),
  },
  {
    id: 'sale-after-publication',
    sentence: 'A format can be bought on its publication date.',
    severity: 'note',
    mend: 'Move the publication date to the on-sale date or after it.',
    source: 'ONIX List 163, roles 01 and 02 (a publication date is nominal; an on-sale date is strict)',
    find: (facts) =>
      each(facts.formats, ofFormat, ({ publicationDate, onSaleDate, ...format }) =>
        publicationDate && onSaleDate && onSaleDate > publicationDate && BEFORE_SALE.has(format.standing)
          ? `${format.label} is published on ${publicationDate}, but on sale only on ${onSaleDate}.`
          : null,
      ),
  },
  {
    id: 'sale-date-missing',
    sentence: 'A format that was sent and is not on sale yet has an on-sale date or a publication date.',
    severity: 'should fix',
    mend: 'Enter the date that the channels were given, or plan the release.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) =>
        isSubmitted(format) &&
        format.standing !== 'live' &&
        !format.publicationDate &&
        format.listings.every((listing) => !saleDay(listing))
          ? `${format.label} has neither an on-sale date nor a publication date.`
          : null,
      ),
  },
  {
    id: 'release-day-passed',
    sentence: 'Every listing of an edition is on sale once the day of its release plan has passed.',
    severity: 'must fix',
    mend: 'Bring the listings on sale and record it, or move the plan to another day.',
    source: OURS,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) => {
        const late = lateOfRelease(edition, facts.day);
        const where = late.map((l) => `${l.format.name} on ${l.channel.name} (${l.standing})`).join(', ');
        return late.length > 0
          ? `${edition.label} was to be released on ${edition.release?.day}; not on sale yet: ${where}.`
          : null;
      }),
  },
  {
    id: 'sale-date-passed',
    sentence: 'A format is selling once its on-sale date has passed.',
    severity: 'must fix',
    mend: 'Bring the listings on sale and record it, or give everybody the new date.',
    source: PRACTICE,
    find: (facts) => {
      const late = new Set(facts.editions.flatMap((edition) => lateOfRelease(edition, facts.day)));
      return facts.formats.flatMap((format): Found[] => {
        const { onSaleDate, standing, label, listings } = format;
        if (BEFORE_SALE.has(standing))
          return onSaleDate && onSaleDate < facts.day && !listings.some((listing) => late.has(listing))
            ? [ofFormat(format, `${label} was to be on sale on ${onSaleDate} and is ${standing}.`)]
            : [];
        if (standing !== 'live') return [];
        return each(listings, ofListing, (listing) => {
          const day = saleDay(listing);
          const waits = listing.standing === 'cleared' && (listing.lastStepOn ?? '') < facts.day;
          return waits && day && day < facts.day && !late.has(listing)
            ? `${listing.label} was to be on sale on ${day} and is only cleared.`
            : null;
        });
      });
    },
  },
  {
    id: 'on-sale-too-early',
    sentence: 'Nothing is on sale before its on-sale date.',
    severity: 'must fix',
    mend: 'Ask the channel to hold it back until its day, and tell whoever was promised that day.',
    source: 'ONIX List 163, role 02 (nothing is sold before this day)',
    find: (facts) =>
      each(facts.listings, ofListing, (listing) => {
        const day = saleDay(listing);
        return listing.standing === 'selling' && day && day > facts.day
          ? `${listing.label} is selling, but its on-sale date is ${day}.`
          : null;
      }),
  },
  {
    id: 'sale-date-before-predecessor',
    sentence: 'A coming edition goes on sale after the edition it replaces.',
    severity: 'should fix',
    mend: 'Correct the on-sale date of the coming edition.',
    source: PRACTICE,
    find: (facts) =>
      each(facts.editions, ofEdition, (edition) => {
        const own = firstSaleDay(edition);
        const before = edition.replaces && firstSaleDay(edition.replaces);
        return own && before && own < before && isComing(edition)
          ? `${edition.label} goes on sale on ${own}, ${edition.replaces?.label} on ${before}.`
          : null;
      }),
  },
  {
    id: 'step-in-the-future',
    sentence: 'A step is recorded with the day on which it happened.',
    severity: 'should fix',
    mend: 'The listing stands where this step left it although the day has not come; check the day with the channel.',
    source: OURS,
    find: ({ listings, day }) => {
      const isToCome = ({ onDate }: { onDate: string }) => onDate > day;
      return each(listings, ofListing, (listing) => {
        const step = listing.steps.find(isToCome);
        return step
          ? `${listing.label} moved to '${step.toStanding}' on ${step.onDate}, a day still to come.`
          : null;
      });
    },
  },
];
