import { type OwnedNumbers, readOwnedNumbers } from '../exchange/owned-numbers.ts';
import { blockSizes, runway, sizeToBuy } from '../rules/isbn/index.ts';
import type { ReadDb } from '../store/connection.ts';
import { allBlocks, assignmentDays, type StoredBlock } from '../store/numbers.ts';
import type { Queries } from './context.ts';

/** Years that the next block should last. */
const YEARS_AHEAD = 5;

function shown(db: ReadDb, list: OwnedNumbers) {
  const known = new Set(allBlocks(db).map((block) => block.digits));
  return {
    blocks: list.blocks.map(({ block, numbers, complete }) => ({
      hyphenatedPrefix: block.hyphenatedPrefix,
      agency: block.agency,
      capacity: block.capacity,
      complete,
      known: known.has(block.digits),
      numbers: numbers.map(({ line, isbn, use, on, title }) => ({
        line,
        hyphenated: isbn.hyphenated,
        use,
        on,
        title,
      })),
    })),
    problems: list.problems.map(({ line, column, text, message, hint, repair }) => ({
      line,
      column,
      text,
      message: [message, hint].filter(Boolean).join(' '),
      repair,
    })),
  };
}

const freeIn = (block: StoredBlock) =>
  10 ** block.publicationDigits - block.reserved - block.assigned - block.spent;

/** The size of the newest block's group that lasts some years at a pace. */
function nextSize(newest: StoredBlock | undefined, perYear: number) {
  const [prefix, group] = newest?.hyphenatedPrefix.split('-') ?? [];
  if ((prefix !== '978' && prefix !== '979') || !group) return null;
  const size = sizeToBuy(blockSizes(prefix, group), perYear, YEARS_AHEAD);
  return size && { capacity: size.capacity, registrantDigits: size.registrantDigits };
}

function sentenceOf(
  free: number,
  facts: { assigned: number; perYear: number; runsOutOn: string | null; buy: number | null },
): string {
  const left = `${free.toLocaleString('en')} ${free === 1 ? 'number is' : 'numbers are'} left.`;
  if (facts.assigned === 0) return `${left} None was assigned of late, so there is no pace to reckon with.`;
  const pace = facts.perYear < 10 ? facts.perYear.toFixed(1) : Math.round(facts.perYear).toLocaleString('en');
  const end = facts.runsOutOn ? `they run out about ${facts.runsOutOn}` : 'they last more than a century';
  const buy = facts.buy
    ? ` A block of ${facts.buy.toLocaleString('en')} would last ${YEARS_AHEAD} years or more; ask your ISBN agency which sizes it sells.`
    : '';
  return `${left} At ${pace} a year ${end}.${buy}`;
}

export const ownedListQueries = {
  'blocks.readList': ({ db }, { text }) => shown(db, readOwnedNumbers(text)),

  'blocks.runway': ({ db, today }) => {
    const blocks = allBlocks(db);
    const free = blocks.reduce((sum, block) => sum + freeIn(block), 0);
    const pace = runway(assignmentDays(db), free, today);
    const buyNext = nextSize(blocks.at(-1), pace.perYear);
    return {
      free,
      ...pace,
      buyNext,
      sentence: sentenceOf(free, { ...pace, buy: buyNext?.capacity ?? null }),
    };
  },
} satisfies Queries<'blocks.readList' | 'blocks.runway'>;
