import { z } from 'zod';
import { replacement } from './formats.ts';
import { asOf, filledText, isoDate, operation, rowId } from './operation.ts';
import { numberStanding } from './terms.ts';

export const numberRow = z.object({
  isbn13: z.string(),
  hyphenated: z.string(),
  standing: numberStanding,
  blockId: rowId.nullable(),
  /** Place in its block, from 0; null outside every block. */
  index: z.int().nullable(),
  formatId: rowId.nullable(),
  /** 'The Salt Almanac, 2nd edition, Paperback', or what it is reserved for. */
  usedFor: z.string(),
  workId: rowId.nullable(),
  since: isoDate.nullable(),
  spentReason: z.string().nullable(),
  /** What took its place, where its edition is replaced by another. */
  replacedBy: replacement.nullable(),
});
export type NumberRow = z.infer<typeof numberRow>;

export const NUMBER_SORTS = ['number', 'standing', 'used for', 'since'] as const;
export type NumberSort = { by: (typeof NUMBER_SORTS)[number]; down: boolean };

export const listNumbers = operation({
  name: 'numbers.list',
  kind: 'query',
  summary: 'List the numbers of a block with their standings, a page at a time, free ones included.',
  input: z.object({
    blockId: rowId.optional(),
    standing: numberStanding.optional(),
    /** Free numbers have neither use nor day and come last by these; by standing they come first. */
    sort: z.object({ by: z.enum(NUMBER_SORTS), down: z.boolean() }).default({ by: 'number', down: false }),
    from: z.int().nonnegative().default(0),
    count: z.int().min(1).max(1000).default(100),
    asOf,
  }),
  output: z.object({ rows: z.array(numberRow), total: z.int() }),
  errors: [],
});

export const reserveNumbers = operation({
  name: 'numbers.reserve',
  kind: 'command',
  summary: 'Reserve one picked number, or the next free numbers of a block, for a stated purpose.',
  input: z.object({
    isbn: z.string().optional(),
    blockId: rowId.optional(),
    count: z.int().min(1).max(1000).default(1),
    /** Side by side, as for a series; refused when no gap of a block is wide enough. */
    adjacent: z.boolean().default(false),
    reservedFor: filledText,
  }),
  output: z.object({ rows: z.array(numberRow) }),
  errors: ['NUMBER_INVALID', 'NUMBER_TAKEN', 'NUMBER_SPENT', 'NUMBER_OUTSIDE_BLOCKS', 'BLOCK_EMPTY'],
});

export const releaseNumber = operation({
  name: 'numbers.release',
  kind: 'command',
  summary: 'Give a reserved number back to the free ones; assigned and spent numbers are never freed.',
  input: z.object({ isbn: z.string() }),
  output: z.object({ isbn13: z.string() }),
  errors: ['NUMBER_INVALID', 'NUMBER_TAKEN', 'NUMBER_SPENT'],
});

export const assignNumber = operation({
  name: 'numbers.assign',
  kind: 'command',
  summary:
    'Give a format its number: the next free one, or one that is picked or was reserved. This is for ever.',
  input: z.object({
    formatId: rowId,
    isbn: z.string().optional(),
    blockId: rowId.optional(),
    /** A number from outside every recorded block is refused unless this says it is meant. */
    outsideBlocks: z.boolean().default(false),
    on: isoDate.optional(),
  }),
  output: numberRow,
  errors: [
    'NUMBER_INVALID',
    'NUMBER_TAKEN',
    'NUMBER_SPENT',
    'NUMBER_OUTSIDE_BLOCKS',
    'BLOCK_EMPTY',
    'FIELD_LOCKED',
  ],
});

export const spendNumber = operation({
  name: 'numbers.spend',
  kind: 'command',
  summary: 'Record that a number was misprinted or given out by mistake: it is spent and never used again.',
  input: z.object({ isbn: z.string(), reason: filledText, on: isoDate.optional() }),
  output: numberRow,
  errors: ['NUMBER_INVALID', 'NUMBER_SPENT', 'NUMBER_OUTSIDE_BLOCKS', 'FIELD_LOCKED'],
});

export const assignEdition = operation({
  name: 'numbers.assignEdition',
  kind: 'command',
  summary:
    'Give every format of an edition that has none its number, side by side where a block has the room, so that print and electronic numbers stay together.',
  input: z.object({ editionId: rowId, blockId: rowId.optional(), on: isoDate.optional() }),
  output: z.object({ rows: z.array(numberRow), adjacent: z.boolean() }),
  errors: ['BLOCK_EMPTY', 'NOT_READY'],
});
