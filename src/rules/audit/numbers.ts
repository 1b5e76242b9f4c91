import { checkDigit13 } from '../isbn/index.ts';
import { byDigits, byNumber, rowsOf } from './digits.ts';
import type { FormatFacts, NumberFacts } from './facts.ts';
import {
  each,
  type Index,
  keyed,
  NEVER_REUSED,
  NUMBER_PER_FORM,
  OURS,
  ofFormat,
  ofNothing,
  ofNumber,
  PRACTICE,
  type Rule,
  STRUCTURE,
} from './rule.ts';

// What a number is, and that it names one thing for ever.

function holder(number: NumberFacts): string {
  if (number.format) return `${number.format.label} (${number.format.standing})`;
  return number.standing === 'spent'
    ? 'a spent number'
    : `a reservation (${number.reservedFor || 'no purpose'})`;
}

function checkFits(isbn13: string): boolean {
  return /^97[89][0-9]{10}$/.test(isbn13) && checkDigit13(isbn13.slice(0, 12)) === isbn13[12];
}

function unspent(format: FormatFacts): string[] {
  const numbers = format.numbers.filter((number) => number.standing !== 'spent');
  return [...new Set(numbers.map((number) => number.written))];
}

/** Numbers in use that lie in no block: each for itself, or all together where no block is recorded at all. */
const outsideBlocks: Index<NumberFacts> = {
  entries: ({ numbers, blocks }) =>
    numbers
      .filter((number) => !number.block && number.standing !== 'spent')
      .map((number) => [blocks.length === 0 ? '' : number.isbn13, number]),
  order: byNumber,
};

export const numberRules: readonly Rule[] = [
  keyed({
    id: 'number-used-twice',
    sentence: 'A number names one format and no other, whether that format is live, retired or cancelled.',
    severity: 'must fix',
    mend: 'Keep the number with the format it was printed on or sent out with; give the other one a new number and tell everybody who was given the wrong one.',
    source: NEVER_REUSED,
    by: byDigits,
    judge: (known) => {
      const rows = rowsOf(known);
      const [first] = rows;
      if (!first || rows.length < 2) return [];
      const about = rows.find((row) => row.format?.standing === 'live') ?? first;
      const holders = rows.map(holder).join(' and for ');
      return [ofNumber(about, `${first.written} is recorded for ${holders}.`)];
    },
  }),
  {
    id: 'format-with-two-numbers',
    sentence: 'A format carries one number.',
    severity: 'must fix',
    mend: 'Find out which number is printed and listed, and mark the other one as spent.',
    source: NUMBER_PER_FORM,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) => {
        const numbers = unspent(format);
        return numbers.length > 1 ? `${format.label} carries ${numbers.join(' and ')}.` : null;
      }),
  },
  {
    id: 'number-check-digit',
    of: 'numbers',
    sentence: 'A number has thirteen digits that begin with 978 or 979, and its check digit holds.',
    severity: 'must fix',
    mend: 'Compare it with the list from your ISBN agency; one digit was mistyped. Record the right number and mark this one as spent.',
    source: "ISBN Users' Manual, 5th edition, section 4.5 (check digit)",
    find: (facts) =>
      each(facts.numbers, ofNumber, (number) =>
        checkFits(number.isbn13) ? null : `${number.isbn13} of ${holder(number)} is not a valid ISBN-13.`,
      ),
  },
  {
    id: 'number-range-not-in-use',
    of: 'numbers',
    sentence: 'A number lies in a range that the ISBN agencies have given out.',
    severity: 'must fix',
    mend: 'Compare it with the list from your ISBN agency. If the number is right, the range table of this program may be older than the number.',
    source: STRUCTURE,
    find: (facts) =>
      each(facts.numbers, ofNumber, (number) =>
        checkFits(number.isbn13) && number.written === number.isbn13
          ? `${number.isbn13} of ${holder(number)} lies in a range that is not in use.`
          : null,
      ),
  },
  keyed({
    id: 'number-outside-blocks',
    sentence: 'A number comes from a block that is recorded here.',
    severity: 'should fix',
    mend: 'Record the block it belongs to on the Numbers screen, or make sure that the number is yours to use.',
    source: PRACTICE,
    by: outsideBlocks,
    judge: (numbers, { blocks }) => {
      const [first] = numbers;
      if (!first) return [];
      return blocks.length === 0
        ? [ofNothing(`No block is recorded, yet ${numbers.length} of its numbers are in use.`)]
        : [ofNumber(first, `${first.written} of ${holder(first)} lies outside every recorded block.`)];
    },
  }),
  {
    id: 'number-in-wrong-block',
    of: 'numbers',
    sentence: 'A number is recorded under the block that its digits fall in.',
    severity: 'must fix',
    mend: 'Restore the file from a backup in which the check of the catalogue finds nothing; the program itself never writes this.',
    source: OURS,
    find: (facts) =>
      each(facts.numbers, ofNumber, (number) =>
        number.block && number.blockId !== number.block.id
          ? `${number.written} falls in the block ${number.block.hyphenatedPrefix} but is recorded ${number.blockId === null ? 'outside it' : 'under another'}.`
          : null,
      ),
  },
  {
    id: 'format-without-number',
    sentence: 'A format has its number before it is sent to a channel.',
    severity: 'must fix',
    mend: 'Give the format the number under which the channel lists it.',
    source: NUMBER_PER_FORM,
    find: (facts) =>
      each(facts.formats, ofFormat, (format) => {
        const out = ['committed', 'proofing', 'live', 'retiring'].includes(format.standing);
        return out && format.numbers.length === 0
          ? `${format.label} is ${format.standing} without a number.`
          : null;
      }),
  },
  {
    id: 'cancelled-number-not-spent',
    of: 'numbers',
    sentence: 'The number of a cancelled format is spent.',
    severity: 'must fix',
    mend: 'Mark the number as spent, so that it is never given to another format.',
    source: NEVER_REUSED,
    find: (facts) =>
      each(facts.numbers, ofNumber, (number) =>
        number.format?.standing === 'cancelled' && number.standing !== 'spent'
          ? `${number.written} of ${number.format.label} is not spent although the format is cancelled.`
          : null,
      ),
  },
];
