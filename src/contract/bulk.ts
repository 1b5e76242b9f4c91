import { z } from 'zod';
import { subject } from './editions.ts';
import { price } from './formats.ts';
import { filledText, isoDate, operation, rowId } from './operation.ts';

/** What can be done to many formats at once. */
export const bulkAction = z.discriminatedUnion('what', [
  z.object({ what: z.literal('set price'), price }),
  z.object({ what: z.literal('add keywords'), keywords: z.array(filledText).min(1).max(200) }),
  z.object({ what: z.literal('add subject'), subject }),
  z.object({ what: z.literal('list on channel'), channelId: rowId }),
  /** One step forward on a channel, from wherever each listing stands there. */
  z.object({ what: z.literal('move one step'), channelId: rowId, on: isoDate.optional() }),
]);
export type BulkAction = z.infer<typeof bulkAction>;

export const changeMany = operation({
  name: 'formats.bulk',
  kind: 'command',
  summary:
    'Do one thing to many formats: as a preview that leaves nothing behind, for all of them or not at all, or for those it can be done to.',
  input: z.object({
    formatIds: z
      .array(rowId)
      .min(1, { error: 'Choose at least one format.' })
      .max(20_000, { error: 'Choose at most 20,000 formats at once.' }),
    action: bulkAction,
    mode: z.enum(['preview', 'all', 'good ones']),
  }),
  output: z.object({
    done: z.int(),
    /** Formats that are so already. */
    unchanged: z.int(),
    refused: z.int(),
    /** How many formats this locks the identity fields of, for ever. */
    locks: z.int(),
    /** Why, for the first hundred that are refused. */
    refusals: z.array(z.object({ formatId: rowId, name: z.string(), sentence: z.string() })),
  }),
  errors: ['NOT_READY'],
});
