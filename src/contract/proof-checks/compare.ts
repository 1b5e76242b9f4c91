import { z } from 'zod';
import { operation, rowId } from '../operation.ts';
import { pictured } from './checks.ts';

/** How a page of the later interior stands to one of the earlier. */
export const PAGE_STATES = ['same', 'changed', 'put in', 'taken out', 'moved'] as const;

const pagePair = z.object({
  state: z.enum(PAGE_STATES),
  /** Pages count from 1; null where a file has none. */
  before: z.int().positive().nullable(),
  after: z.int().positive().nullable(),
  /** Of a changed page: whether its text is another, or its look alone. */
  what: z.enum(['text', 'look']).nullable(),
});
export type ComparedPages = z.infer<typeof pagePair>;

/** An interior that was checked, as it is named beside others. */
const checkedInterior = z.object({
  checkId: rowId,
  fileName: z.string(),
  checkedOn: z.string(),
  /** 'Paperback, The Salt Almanac, 2nd edition' */
  of: z.string(),
});

const side = checkedInterior.extend({ pages: z.int(), pictured: z.array(pictured) });
export type ComparedSide = z.infer<typeof side>;

export const comparableChecks = operation({
  name: 'proofChecks.comparable',
  kind: 'query',
  summary: 'The other checked interiors of the same work, the newest first, at most 100.',
  input: z.object({ checkId: rowId }),
  output: z.object({ checks: z.array(checkedInterior) }),
  errors: [],
});

export const compareChecks = operation({
  name: 'proofChecks.compare',
  kind: 'query',
  summary: 'Two checked interiors page by page: what is the same, changed, put in, taken out or moved.',
  input: z.object({ beforeId: rowId, afterId: rowId }),
  output: z.object({
    before: side,
    after: side,
    counts: z.record(z.enum(PAGE_STATES), z.int()),
    /** Every page of both files once, in the order of the later one. */
    pairs: z.array(pagePair),
  }),
  errors: [],
});
