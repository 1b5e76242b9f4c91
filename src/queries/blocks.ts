import { blockFacts } from '../records/blocks.ts';
import { allBlocks } from '../store/numbers.ts';
import type { Queries } from './context.ts';

export const blockQueries = {
  'blocks.list': (context, input) => {
    const db = context.on(input.asOf);
    return { blocks: allBlocks(db).map((stored) => blockFacts(db, stored)) };
  },
} satisfies Queries<'blocks.list'>;
