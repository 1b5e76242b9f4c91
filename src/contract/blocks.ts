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

const ownedNumber = z.object({
  line: z.int(),
  hyphenated: z.string(),
  use: z.enum(['free', 'assigned', 'spent']).nullable(),
  on: isoDate.nullable(),
  title: z.string(),
});

/** What a list of owned numbers holds: blocks with their numbers, and every cell that was not understood. */
export const ownedList = z.object({
  blocks: z.array(
    z.object({
      hyphenatedPrefix: z.string(),
      agency: z.string(),
      capacity: z.int(),
      /** Whether the list names every number of the block. */
      complete: z.boolean(),
      /** Whether the block is recorded here already. */
      known: z.boolean(),
      numbers: z.array(ownedNumber),
    }),
  ),
  problems: z.array(
    z.object({
      line: z.int(),
      column: z.int().nullable(),
      text: z.string(),
      message: z.string(),
      repair: z.string().nullable(),
    }),
  ),
});

const listText = z
  .string()
  .min(1, { error: 'The file is empty.' })
  .max(7_000_000, { error: 'The list is longer than 7,000,000 characters; split it.' });

export const readOwnedList = operation({
  name: 'blocks.readList',
  kind: 'query',
  summary:
    'Read the agency’s list of owned numbers (CSV text) and show what recording it would do; nothing is saved.',
  input: z.object({ text: listText }),
  output: ownedList,
  errors: [],
});

export const importOwnedList = operation({
  name: 'blocks.importList',
  kind: 'command',
  summary:
    'Record the blocks of the agency’s list (CSV text); numbers it calls assigned are reserved under their title, spent ones are spent. Refused whole when a line is not understood, unless good lines alone are wanted.',
  input: z.object({ text: listText, goodLinesOnly: z.boolean().default(false) }),
  output: z.object({ blocksAdded: z.int(), reserved: z.int(), spent: z.int(), leftAlone: z.int() }),
  errors: ['BLOCK_OVERLAP', 'NUMBER_INVALID'],
});

export const runwayOfBlocks = operation({
  name: 'blocks.runway',
  kind: 'query',
  summary:
    'How many numbers are left, at what pace they were assigned, when they run out at that pace, and what size to buy next.',
  input: z.object({}),
  output: z.object({
    free: z.int(),
    /** Window the pace was measured over. */
    from: isoDate,
    to: isoDate,
    assigned: z.int(),
    perYear: z.number(),
    runsOutOn: isoDate.nullable(),
    /** Smallest block of the newest block's group that lasts five years at this pace; null without a pace. */
    buyNext: z.object({ capacity: z.int(), registrantDigits: z.int() }).nullable(),
    sentence: z.string(),
  }),
  errors: [],
});

export const bandsOfBlock = operation({
  name: 'blocks.bands',
  kind: 'query',
  summary: 'How many numbers stand where in each thousand of a block, for an overview of a large one.',
  input: z.object({ blockId: rowId, asOf }),
  output: z.object({
    bands: z.array(
      z.object({ from: z.int(), free: z.int(), reserved: z.int(), assigned: z.int(), spent: z.int() }),
    ),
  }),
  errors: [],
});
