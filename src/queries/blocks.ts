import { Refusal } from '../contract/refusal.ts';
import { blockFacts } from '../records/blocks.ts';
import { allBlocks, blockById, takenBands } from '../store/numbers.ts';
import type { Queries } from './context.ts';

/** Numbers to a band of the overview. */
const BAND = 1000;

export const blockQueries = {
  'blocks.list': (context, input) => {
    const db = context.on(input.asOf);
    return { blocks: allBlocks(db).map((stored) => blockFacts(db, stored)) };
  },

  'blocks.bands': (context, { blockId, asOf }) => {
    const db = context.on(asOf);
    const block = blockById(db, blockId);
    if (!block)
      throw new Refusal(
        'NOT_FOUND',
        `There is no block ${blockId}; the Numbers screen lists them.`,
        'blockId',
      );
    const capacity = 10 ** block.publicationDigits;
    const taken = new Map(takenBands(db, blockId, BAND).map(({ band, ...counts }) => [band, counts]));
    const bands = Array.from({ length: Math.ceil(capacity / BAND) }, (_, band) => {
      const counts = taken.get(band) ?? { reserved: 0, assigned: 0, spent: 0 };
      const size = Math.min(BAND, capacity - band * BAND);
      return { from: band * BAND, free: size - counts.reserved - counts.assigned - counts.spent, ...counts };
    });
    return { bands };
  },
} satisfies Queries<'blocks.list' | 'blocks.bands'>;
