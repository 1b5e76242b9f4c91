import { dayPlus } from '../working-days.ts';
import type { BlockRow, Facts, ListingFacts, NumberFacts } from './facts.ts';
import {
  each,
  type Found,
  hasEnded,
  NEVER_REUSED,
  NUMBER_PER_FORM,
  OURS,
  ofFormat,
  ofListing,
  ofNothing,
  ofNumber,
  type Rule,
} from './rule.ts';

// Where numbers show that should not, and how long the stock of numbers lasts.

const RESERVED_DAYS = 365;
const FEW_LEFT = 5;

function isOut(listing: ListingFacts): boolean {
  return listing.standing !== 'unsent' && listing.standing !== 'gone';
}

const ISBN13 = /(?<![\d-])97[89](?:[ -]?\d){10}(?!\d)/g;

/** The ISBN-13 in a listing's reference, with or without hyphens and blanks. */
function numbersIn(reference: string): string[] {
  if (reference.length < 13) return [];
  return (reference.match(ISBN13) ?? []).map((written) => written.replace(/[ -]/g, ''));
}

function mentions(
  facts: Facts,
  check: (listing: ListingFacts, number: NumberFacts) => string | null,
): Found[] {
  const known = new Map(facts.numbers.map((number) => [number.isbn13, number]));
  const found: Found[] = [];
  for (const listing of facts.listings) {
    if (!isOut(listing)) continue;
    for (const isbn13 of numbersIn(listing.reference)) {
      const number = known.get(isbn13);
      const message = number ? check(listing, number) : null;
      if (message !== null) found.push(ofListing(listing, message));
    }
  }
  return found;
}

function capacity(block: BlockRow): number {
  return 10 ** (12 - block.digits.length);
}

function givenOn(number: NumberFacts): string | null {
  return number.reservedOn ?? number.assignedOn ?? number.spentOn;
}

/** Numbers of each block that no row takes. */
function left(facts: Facts): { block: BlockRow; free: number }[] {
  const free = new Map(facts.blocks.map((block) => [block, capacity(block)]));
  for (const { block } of facts.numbers) if (block) free.set(block, (free.get(block) ?? 0) - 1);
  return facts.blocks.map((block) => ({ block, free: free.get(block) ?? 0 }));
}

/** Free numbers of all recorded blocks. */
export function freeNumbers(facts: Facts): number {
  return left(facts).reduce((sum, { free }) => sum + Math.max(0, free), 0);
}

export const numberStockRules: readonly Rule[] = [
  {
    id: 'spent-number-listed',
    whole: true,
    sentence: 'A spent number shows on no channel.',
    severity: 'must fix',
    mend: 'Have the channel show the number that the format carries now, or take the listing down; a format without a number takes a new one first.',
    source: NEVER_REUSED,
    find: (facts) => [
      ...each(facts.listings, ofListing, (listing) => {
        const [spent] = listing.format.numbers;
        return spent && !listing.format.number && listing.format.standing !== 'cancelled' && isOut(listing)
          ? `${listing.label} is ${listing.standing}, but its only number, ${spent.written}, is spent.`
          : null;
      }),
      ...mentions(facts, (listing, number) =>
        number.standing === 'spent' && number.isbn13 !== listing.format.number?.isbn13
          ? `${listing.label} is recorded with the spent number ${number.written}.`
          : null,
      ),
    ],
  },
  {
    id: 'listing-names-other-number',
    whole: true,
    sentence: 'The reference noted with a listing does not name the number of another format.',
    severity: 'should fix',
    mend: 'Look the listing up at the channel; correct the reference here, or have the channel correct the number.',
    source: OURS,
    find: (facts) =>
      mentions(facts, (listing, number) =>
        number.standing !== 'spent' && number.format !== listing.format
          ? `${listing.label} is recorded with ${number.written}, the number of ${number.format?.label ?? 'nothing yet'}.`
          : null,
      ),
  },
  {
    id: 'release-planned-without-number',
    whole: true,
    sentence: 'Every format of an edition whose release is planned has its number.',
    severity: 'should fix',
    mend: 'Take a number for the format; it is printed on the back of the title page and sent with the first files.',
    source: NUMBER_PER_FORM,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) =>
        format.standing === 'planned' && !format.number && (format.edition.release?.day ?? '') >= facts.day
          ? `${format.label} is to be released on ${format.edition.release?.day} and has no number.`
          : null,
      ),
  },
  {
    id: 'number-reserved-long',
    whole: true,
    sentence: 'A reserved number is used or given back within a year.',
    severity: 'note',
    mend: 'Give the number to a format, or release it on the Numbers screen.',
    source: OURS,
    find: (facts) => {
      const old = facts.numbers.filter(
        ({ standing, reservedOn }) =>
          standing === 'reserved' && reservedOn && dayPlus(reservedOn, RESERVED_DAYS) < facts.day,
      );
      const together = Map.groupBy(old, (number) => `${number.reservedOn} ${number.reservedFor}`);
      return [...together.values()].flatMap((numbers) =>
        each(numbers.slice(0, 1), ofNumber, (first) => {
          const more = numbers.length > 1 ? ` and ${numbers.length - 1} more have` : ' has';
          return `${first.written}${more} been reserved since ${first.reservedOn} (${first.reservedFor || 'no purpose'}).`;
        }),
      );
    },
  },
  {
    id: 'number-before-its-block',
    whole: true,
    sentence: 'No number is given out before its block was bought.',
    severity: 'note',
    mend: 'Correct the day on which the block was bought.',
    source: OURS,
    find: (facts) => {
      const early = new Map<BlockRow, NumberFacts>();
      for (const number of facts.numbers) {
        const { block } = number;
        const given = givenOn(number);
        const before = block?.boughtOn && given && given < block.boughtOn;
        const known = block && early.get(block);
        if (before && !(known && (givenOn(known) ?? '') <= given)) early.set(block, number);
      }
      return [...early].map(([block, number]) =>
        ofNumber(
          number,
          `${number.written} was given out on ${givenOn(number)}, its block ${block.hyphenatedPrefix} bought on ${block.boughtOn}.`,
        ),
      );
    },
  },
  {
    id: 'number-after-first-sending',
    whole: true,
    sentence: 'A format has its number on the day it is first sent to a channel.',
    severity: 'note',
    mend: 'Nothing needs doing. The number was recorded with a later day than the listing, so that a look at a day between the two shows the format without it.',
    source: OURS,
    find: (facts) => {
      const found = each(facts.formats, ofFormat, (format) => {
        const given = hasEnded(format) ? null : format.number?.assignedOn;
        const sent = format.listings.find((l) => given && l.firstSentOn && l.firstSentOn < given);
        return sent
          ? `${format.label} was sent to ${sent.channel.name} on ${sent.firstSentOn}, its number given on ${given}.`
          : null;
      });
      const [first] = found;
      return first && found.length > 1
        ? [
            ofNothing(
              `${found.length} formats were sent before the day of their number; the first: ${first.message}`,
            ),
          ]
        : found;
    },
  },
  {
    id: 'block-nearly-used',
    whole: true,
    sentence: 'A block has at least five numbers and a tenth of its numbers left.',
    severity: 'note',
    mend: 'Buy a further block in time; a full block is not enlarged, a new registrant prefix is added.',
    source: OURS,
    find: (facts) =>
      left(facts).flatMap(({ block, free }) => {
        const few = free < FEW_LEFT || free * 10 < capacity(block);
        const name = block.label ? `${block.hyphenatedPrefix} (${block.label})` : block.hyphenatedPrefix;
        return few && free > 0
          ? [ofNothing(`The block ${name} has ${free} of ${capacity(block)} numbers left.`)]
          : [];
      }),
  },
  {
    id: 'no-number-left',
    whole: true,
    sentence: 'There is a free number for the next format.',
    severity: 'should fix',
    mend: 'Buy a further block and record it on the Numbers screen.',
    source: OURS,
    find: (facts) =>
      facts.blocks.length > 0 && left(facts).every(({ free }) => free <= 0)
        ? [ofNothing('Every number of every recorded block is used.')]
        : [],
  },
];
