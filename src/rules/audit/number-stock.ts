import { dayPlus } from '../working-days.ts';
import { byDigits, byNumber, shownIn } from './digits.ts';
import type { FormatFacts, ListingFacts, NumberFacts } from './facts.ts';
import {
  byCode,
  byEdition,
  each,
  hasEnded,
  type Index,
  keyed,
  NEVER_REUSED,
  NUMBER_PER_FORM,
  OURS,
  ofFormat,
  ofListing,
  ofNothing,
  ofNumber,
  type Rule,
} from './rule.ts';
import { capacity } from './stock.ts';

// Where numbers show that should not, and how long the stock of numbers lasts.

const RESERVED_DAYS = 365;
const FEW_LEFT = 5;

function givenOn(number: NumberFacts): string | null {
  return number.reservedOn ?? number.assignedOn ?? number.spentOn;
}

/** Reserved for longer than they should be, those together that were reserved together. */
const reservedLong: Index<NumberFacts> = {
  *entries({ numbers, day }) {
    for (const number of numbers) {
      const { standing, reservedOn, reservedFor } = number;
      if (standing === 'reserved' && reservedOn && dayPlus(reservedOn, RESERVED_DAYS) < day)
        yield [`${reservedOn} ${reservedFor}`, number];
    }
  },
  order: byNumber,
};

/** Numbers that were given out before their block was bought, by block, the earliest given first. */
const beforeTheirBlock: Index<NumberFacts> = {
  *entries({ numbers }) {
    for (const number of numbers) {
      const given = givenOn(number);
      const { block } = number;
      if (block?.boughtOn && given && given < block.boughtOn) yield [block.digits, number];
    }
  },
  order: (a, b) => byCode(givenOn(a) ?? '', givenOn(b) ?? '') || byNumber(a, b),
};

/** The first sending of a format before the day of its number. */
function sentBefore(format: FormatFacts): ListingFacts | undefined {
  const given = hasEnded(format) ? null : format.number?.assignedOn;
  return format.listings.find((l) => given && l.firstSentOn && l.firstSentOn < given);
}

/** All formats that were sent before the day of their number, under one key. */
const sentBeforeNumber: Index<FormatFacts> = {
  *entries({ formats }) {
    for (const format of formats) if (sentBefore(format)) yield ['', format];
  },
  order: (a, b) => byEdition(a.edition, b.edition) || a.id - b.id,
};

export const numberStockRules: readonly Rule[] = [
  keyed({
    id: 'spent-number-listed',
    sentence: 'A spent number shows on no channel.',
    severity: 'must fix',
    mend: 'Have the channel show the number that the format carries now, or take the listing down; a format without a number takes a new one first.',
    source: NEVER_REUSED,
    by: byDigits,
    judge: (known) =>
      shownIn(known).flatMap(({ number, listing, noted }) => {
        if (number.standing !== 'spent' || number.isbn13 === listing.format.number?.isbn13) return [];
        const what = noted
          ? `${listing.label} is recorded with the spent number ${number.written}.`
          : `${listing.label} is ${listing.standing}, but its only number, ${number.written}, is spent.`;
        return [ofListing(listing, what)];
      }),
  }),
  keyed({
    id: 'listing-names-other-number',
    sentence: 'The reference noted with a listing does not name the number of another format.',
    severity: 'should fix',
    mend: 'Look the listing up at the channel; correct the reference here, or have the channel correct the number.',
    source: OURS,
    by: byDigits,
    judge: (known) =>
      shownIn(known).flatMap(({ number, listing, noted }) =>
        noted && number.standing !== 'spent' && number.format !== listing.format
          ? ofListing(
              listing,
              `${listing.label} is recorded with ${number.written}, the number of ${number.format?.label ?? 'nothing yet'}.`,
            )
          : [],
      ),
  }),
  {
    id: 'release-planned-without-number',
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
  keyed({
    id: 'number-reserved-long',
    sentence: 'A reserved number is used or given back within a year.',
    severity: 'note',
    mend: 'Give the number to a format, or release it on the Numbers screen.',
    source: OURS,
    by: reservedLong,
    judge: (numbers) =>
      each(numbers.slice(0, 1), ofNumber, (first) => {
        const more = numbers.length > 1 ? ` and ${numbers.length - 1} more have` : ' has';
        return `${first.written}${more} been reserved since ${first.reservedOn} (${first.reservedFor || 'no purpose'}).`;
      }),
    // One of them alone can be given back at a press.
    beside: (numbers) => ({ numbers: numbers.slice(0, 2) }),
  }),
  keyed({
    id: 'number-before-its-block',
    sentence: 'No number is given out before its block was bought.',
    severity: 'note',
    mend: 'Correct the day on which the block was bought.',
    source: OURS,
    by: beforeTheirBlock,
    judge: (numbers) =>
      each(numbers.slice(0, 1), ofNumber, (first) =>
        first.block
          ? `${first.written} was given out on ${givenOn(first)}, its block ${first.block.hyphenatedPrefix} bought on ${first.block.boughtOn}.`
          : null,
      ),
  }),
  keyed({
    id: 'number-after-first-sending',
    sentence: 'A format has its number on the day it is first sent to a channel.',
    severity: 'note',
    mend: 'Nothing needs doing. The number was recorded with a later day than the listing, so that a look at a day between the two shows the format without it.',
    source: OURS,
    by: sentBeforeNumber,
    judge: (formats) => {
      const found = each(formats.slice(0, 1), ofFormat, (format) => {
        const sent = sentBefore(format);
        return sent
          ? `${format.label} was sent to ${sent.channel.name} on ${sent.firstSentOn}, its number given on ${format.number?.assignedOn}.`
          : null;
      });
      const [first] = found;
      return first && formats.length > 1
        ? [
            ofNothing(
              `${formats.length} formats were sent before the day of their number; the first: ${first.message}`,
            ),
          ]
        : found;
    },
  }),
  {
    id: 'block-nearly-used',
    sentence: 'A block has at least five numbers and a tenth of its numbers left.',
    severity: 'note',
    mend: 'Buy a further block in time; a full block is not enlarged, a new registrant prefix is added.',
    source: OURS,
    count: (stock) =>
      stock.blocks.flatMap((block) => {
        const free = stock.left(block);
        const few = free < FEW_LEFT || free * 10 < capacity(block);
        const name = block.label ? `${block.hyphenatedPrefix} (${block.label})` : block.hyphenatedPrefix;
        return few && free > 0
          ? [ofNothing(`The block ${name} has ${free} of ${capacity(block)} numbers left.`)]
          : [];
      }),
  },
  {
    id: 'no-number-left',
    sentence: 'There is a free number for the next format.',
    severity: 'should fix',
    mend: 'Buy a further block and record it on the Numbers screen.',
    source: OURS,
    count: (stock) =>
      stock.blocks.length > 0 && stock.free === 0
        ? [ofNothing('Every number of every recorded block is used.')]
        : [],
  },
];
