import { z } from 'zod';
import { anyText, asOf, isoDate, money, operation, rowId } from './operation.ts';

export const block = z.object({
  id: rowId,
  digits: z.string(),
  hyphenatedPrefix: z.string(),
  agency: z.string(),
  label: z.string(),
  note: z.string(),
  boughtOn: isoDate.nullable(),
  cost: money.nullable(),
  /** How many numbers the block holds: 10^(9 − group − registrant digits). */
  capacity: z.int(),
  /** First and last number, hyphenated. */
  first: z.string(),
  last: z.string(),
  counts: z.object({ free: z.int(), reserved: z.int(), assigned: z.int(), spent: z.int() }),
  nextFree: z.string().nullable(),
});
export type Block = z.infer<typeof block>;

const blockFacts = z.object({
  label: anyText.default(''),
  note: anyText.default(''),
  boughtOn: isoDate.nullable().default(null),
  cost: money.nullable().default(null),
});

export const addBlock = operation({
  name: 'blocks.add',
  kind: 'command',
  summary: 'Record an owned block of ISBNs from its prefix (979-8-…) or from any one of its numbers.',
  input: blockFacts.extend({
    prefix: z.string().trim().min(1, { error: 'Type the prefix of the block or one of its numbers.' }),
  }),
  output: block,
  errors: ['NUMBER_INVALID', 'BLOCK_OVERLAP'],
});

export const updateBlock = operation({
  name: 'blocks.update',
  kind: 'command',
  summary: 'Change what is noted about a block: label, note, day bought, cost.',
  input: blockFacts.partial().extend({ id: rowId }),
  output: block,
  errors: [],
});

export const listBlocks = operation({
  name: 'blocks.list',
  kind: 'query',
  summary: 'List the number blocks with their capacity and how many numbers stand where.',
  input: z.object({ asOf }),
  output: z.object({ blocks: z.array(block) }),
  errors: [],
});
