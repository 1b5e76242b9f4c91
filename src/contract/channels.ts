import { z } from 'zod';
import { anyText, filledText, isoDate, operation, rowId } from './operation.ts';
import { MARKUPS, SHEET_ITEMS } from './submissions.ts';
import { CHANNEL_KINDS, LOCKABLE_FIELDS, PROOF_KINDS } from './terms.ts';

const limit = z.int().nonnegative().nullable();

/** A channel is any place a format is listed or sold, made by the user with its own rules. */
export const channelFields = z.object({
  name: filledText,
  kind: z.enum(CHANNEL_KINDS),
  /** Mail address or web address where requests go. */
  contact: anyText,
  note: anyText,
  /** Working days from upload to on sale, and the days it promises for a removal. */
  leadDays: z.int().min(0).max(365),
  removalDays: z.int().min(0).max(365),
  proof: z.enum(PROOF_KINDS),
  subjectLimit: limit,
  keywordLimit: limit,
  keywordSeparator: z.string().max(3, { error: 'Keep it to three signs at most.' }),
  descriptionLimit: limit,
  titleLimit: limit,
  subtitleLimit: limit,
  /** What markup it takes in a description. */
  descriptionMarkup: z.enum(MARKUPS),
  /** What its form asks for, in its order; empty for everything in the usual order. */
  sheetItems: z.array(z.enum(SHEET_ITEMS)).max(SHEET_ITEMS.length),
  defaultDiscountBp: z.int().min(0).max(10_000).nullable(),
  defaultReturns: z.enum(['Y', 'N', 'C', 'S']).nullable(),
  /** Request text of this channel; empty uses the removal request in use (text-kinds.ts). */
  requestTemplate: anyText,
  /** Open fields that this channel locks at its submission too. */
  locksMore: z.array(z.enum(LOCKABLE_FIELDS)),
});
export type ChannelFields = z.infer<typeof channelFields>;

export const BLANK_CHANNEL = {
  kind: 'any',
  contact: '',
  note: '',
  leadDays: 3,
  removalDays: 7,
  proof: 'electronic',
  subjectLimit: null,
  keywordLimit: null,
  keywordSeparator: ';',
  descriptionLimit: null,
  titleLimit: null,
  subtitleLimit: null,
  descriptionMarkup: 'any',
  sheetItems: [],
  defaultDiscountBp: null,
  defaultReturns: null,
  requestTemplate: '',
  locksMore: [],
} satisfies Omit<ChannelFields, 'name'>;

export const channel = channelFields.extend({
  id: rowId,
  closedOn: isoDate.nullable(),
  listings: z.int(),
  selling: z.int(),
});
export type Channel = z.infer<typeof channel>;

const channelId = z.object({ channelId: rowId });

export const listChannels = operation({
  name: 'channels.list',
  kind: 'query',
  summary: 'List the channels with how many listings each has.',
  input: z.object({}),
  output: z.object({ channels: z.array(channel) }),
  errors: [],
});

export const createChannel = operation({
  name: 'channels.create',
  kind: 'command',
  summary: 'Add a channel.',
  input: channelFields.partial().required({ name: true }),
  output: channelId,
  errors: ['ALREADY_EXISTS'],
});

export const updateChannel = operation({
  name: 'channels.update',
  kind: 'command',
  summary: 'Change a channel, or close it with a date (a closed channel takes no new listing).',
  input: channelFields.partial().extend({ id: rowId, closedOn: isoDate.nullable().optional() }),
  output: channelId,
  errors: ['ALREADY_EXISTS'],
});

export const removeChannel = operation({
  name: 'channels.remove',
  kind: 'command',
  summary: 'Remove a channel that has no listing.',
  input: z.object({ id: rowId }),
  output: channelId,
  errors: ['IN_USE'],
});
