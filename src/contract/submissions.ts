import { z } from 'zod';
import { anyText, asOf, isoDate, operation, rowId } from './operation.ts';
import { listingStanding } from './terms.ts';

/** What a submission sheet can hold, in the usual order of a channel's form. */
export const SHEET_ITEMS = [
  'isbn',
  'title',
  'subtitle',
  'series',
  'seriesNumber',
  'number',
  'statement',
  'language',
  'contributors',
  'imprint',
  'publisher',
  'form',
  'largePrint',
  'trimSize',
  'pages',
  'duration',
  'interior',
  'cover',
  'direction',
  'description',
  'subjects',
  'keywords',
  'audience',
  'publicationDate',
  'onSaleDate',
  'prices',
  'discount',
  'returns',
] as const;
export type SheetItemName = (typeof SHEET_ITEMS)[number];

/** What markup a channel takes in a description. */
export const MARKUPS = ['none', 'simple HTML', 'any'] as const;
export type Markup = (typeof MARKUPS)[number];

/** One value to type in; a list such as the contributors has several of the same name. */
const sentItem = z.object({
  of: z.enum(SHEET_ITEMS),
  /** 'Contributor 2 (foreword)' */
  label: z.string(),
  /** What is typed; empty where nothing is recorded. */
  value: z.string(),
  /** The recorded value in a form that never depends on how it is shown: what a comparison looks at. */
  is: z.string(),
});
export type SentItem = z.infer<typeof sentItem>;

/** A sheet as it was sent: what was asked for, and every value. */
export const sentSheet = z.object({ asked: z.array(z.enum(SHEET_ITEMS)), items: z.array(sentItem) });
export type SentSheet = z.infer<typeof sentSheet>;

export const sheetItem = sentItem.extend({
  /** A remark beside the value, such as its other unit or the name behind a code. */
  help: z.string(),
  /** `locked` already, `locks` when this sheet is sent, or stays `open`. */
  lock: z.enum(['locked', 'locks', 'open']),
  /** What the channel would not take, one sentence each. */
  problems: z.array(z.string()),
});
export type SheetItem = z.infer<typeof sheetItem>;

/** Something recorded otherwise now than it was last sent. */
export const sentDifference = z.object({
  of: z.enum(SHEET_ITEMS),
  label: z.string(),
  sent: z.string(),
  now: z.string(),
});
export type SentDifference = z.infer<typeof sentDifference>;

export const sheet = z.object({
  listingId: rowId,
  workId: rowId,
  editionId: rowId,
  formatId: rowId,
  editionLabel: z.string(),
  formatName: z.string(),
  channelName: z.string(),
  contact: z.string(),
  standing: listingStanding,
  items: z.array(sheetItem),
  /** The whole sheet as plain text, one line a value. */
  text: z.string(),
  /** Newest first. `update` tells of changes sent after the submission itself. */
  submissions: z.array(
    z.object({
      id: rowId,
      on: isoDate,
      takenOn: isoDate,
      kind: z.enum(['sent', 'update']),
      note: z.string(),
      items: z.array(sentItem),
    }),
  ),
  /** Against the newest submission; empty where there is none, or the listing is unsent or leaves. */
  differences: z.array(sentDifference),
});
export type Sheet = z.infer<typeof sheet>;

export const getSheet = operation({
  name: 'submissions.sheet',
  kind: 'query',
  summary:
    'The submission sheet of a listing: every value to type in, in the order of the channel, checked against its limits, with what locks; and what was sent before.',
  input: z.object({ listingId: rowId, asOf }),
  output: sheet,
  errors: [],
});

export const recordSubmission = operation({
  name: 'submissions.record',
  kind: 'command',
  summary:
    'Record that changes were sent to a channel that already has the listing: the sheet as it stands is kept as what was sent.',
  input: z.object({ listingId: rowId, on: isoDate.optional(), note: anyText.default('') }),
  output: z.object({ submissionId: rowId }),
  errors: ['STEP_REFUSED'],
});
