import { z } from 'zod';
import { anyText, asOf, filledText, isoDate, operation, rowId } from './operation.ts';
import { listingStanding, taskStanding } from './terms.ts';

/** What becomes of copies that are left; plain names of ours. */
export const STOCK_FATES = ['undecided', 'sell off', 'give away', 'keep', 'recycle'] as const;

/** What is to be done next about a listing of an edition that leaves. */
export const DESK_STEPS = [
  'wait for sale',
  'ask',
  'await promise',
  'confirm gone',
  'chase',
  'take back',
  'nothing',
] as const;
export type DeskStep = (typeof DESK_STEPS)[number];

const deskListing = z.object({
  listingId: rowId,
  formatId: rowId,
  formatName: z.string(),
  hyphenated: z.string().nullable(),
  /** Number of the format that takes its place. */
  replacement: z.string().nullable(),
  channelName: z.string(),
  contact: z.string(),
  standing: listingStanding,
  askedOn: isoDate.nullable(),
  promisedBy: isoDate.nullable(),
  chasedOn: isoDate.nullable(),
  chases: z.int(),
  goneOn: isoDate.nullable(),
  evidence: z.string(),
  returnable: z.boolean(),
  returnsUntil: isoDate.nullable(),
  returnsNote: z.string(),
  returnsOpen: z.boolean(),
  next: z.enum(DESK_STEPS),
  /** Why that is next, as a short sentence. */
  because: z.string(),
});
export type DeskListing = z.infer<typeof deskListing>;

const stockCount = z.object({
  id: rowId,
  formatId: rowId,
  formatName: z.string(),
  place: z.string(),
  copies: z.int(),
  countedOn: isoDate,
  fate: z.enum(STOCK_FATES),
  note: z.string(),
});
export type StockCount = z.infer<typeof stockCount>;

export const desk = z.object({
  editionId: rowId,
  workId: rowId,
  label: z.string(),
  replacement: z.object({ editionId: rowId, label: z.string(), sells: z.boolean() }).nullable(),
  planned: z.boolean(),
  listings: z.array(deskListing),
  /** The newest count of every place. */
  stock: z.array(stockCount),
  /** Formats that were on sale, with the day the agency's record was set to out of print. */
  numbers: z.array(
    z.object({
      formatId: rowId,
      formatName: z.string(),
      hyphenated: z.string().nullable(),
      printed: z.boolean(),
      outOfPrintOn: isoDate.nullable(),
      note: z.string(),
    }),
  ),
  /** Tasks of the retirement that are about no single listing: agency, links, website, reviews, returns. */
  checklist: z.array(
    z.object({
      id: rowId,
      title: z.string(),
      note: z.string(),
      dueOn: isoDate,
      standing: taskStanding,
      endedOn: isoDate.nullable(),
      needs: z.int(),
    }),
  ),
});
export type Desk = z.infer<typeof desk>;

export const getDesk = operation({
  name: 'retirement.desk',
  kind: 'query',
  summary:
    'The retirement desk of an edition: every listing with when it was asked, promised, chased and gone, and what is next; copies left, returns, numbers and the checklist.',
  input: z.object({ editionId: rowId, asOf }),
  output: desk,
  errors: [],
});

const moved = z.object({ listingId: rowId, standing: listingStanding });
const day = isoDate.optional();
const note = anyText.default('');

export const askRemoval = operation({
  name: 'retirement.ask',
  kind: 'command',
  summary:
    'Record that a channel was asked to stop selling, and by when it promised to; refused while nothing of the replacing edition sells, unless that is meant.',
  input: z.object({
    listingId: rowId,
    on: day,
    note,
    promisedBy: isoDate.optional(),
    beforeReplacement: z.boolean().default(false),
  }),
  output: moved,
  errors: ['STEP_REFUSED', 'NOT_READY'],
});

export const promiseRemoval = operation({
  name: 'retirement.promise',
  kind: 'command',
  summary: 'Record the day by which a channel promised to stop selling; its tasks are dated by it.',
  input: z.object({ listingId: rowId, promisedBy: isoDate, on: day, note }),
  output: moved,
  errors: ['STEP_REFUSED'],
});

export const chaseRemoval = operation({
  name: 'retirement.chase',
  kind: 'command',
  summary: 'Record that a channel was asked again to stop selling, and what it promised now.',
  input: z.object({ listingId: rowId, on: day, note, promisedBy: isoDate.optional() }),
  output: moved,
  errors: ['STEP_REFUSED'],
});

export const confirmGone = operation({
  name: 'retirement.gone',
  kind: 'command',
  summary: 'Record that a listing no longer shows for sale, with what was seen as evidence.',
  input: z.object({ listingId: rowId, on: day, evidence: filledText }),
  output: moved,
  errors: ['STEP_REFUSED', 'NOT_READY'],
});

export const setReturns = operation({
  name: 'retirement.returns',
  kind: 'command',
  summary:
    'Set the last day on which a channel may send copies back (ONIX List 166, code 18), with a task on that day; it can be moved after the listing is gone.',
  input: z.object({ listingId: rowId, until: isoDate, note }),
  output: z.object({ listingId: rowId, until: isoDate, taskId: rowId.nullable() }),
  errors: ['STEP_REFUSED'],
});

export const countStock = operation({
  name: 'retirement.count',
  kind: 'command',
  summary:
    'Record how many copies of a format are left at a place, and what is to become of them; a later count replaces it.',
  input: z.object({
    formatId: rowId,
    place: filledText,
    copies: z.int().nonnegative().max(10_000_000),
    countedOn: day,
    fate: z.enum(STOCK_FATES).default('undecided'),
    note,
  }),
  output: z.object({ countId: rowId }),
  errors: ['STEP_REFUSED'],
});

export const outOfPrint = operation({
  name: 'retirement.outOfPrint',
  kind: 'command',
  summary:
    'Record that the bibliographic record of an edition’s numbers was set to out of print; the task of the plan is done with it.',
  input: z.object({ editionId: rowId, on: day, note }),
  output: z.object({ formatIds: z.array(rowId) }),
  errors: ['STEP_REFUSED', 'ALREADY_EXISTS'],
});
