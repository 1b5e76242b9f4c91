import { z } from 'zod';
import { madeFile } from './files.ts';
import { job } from './jobs.ts';
import { isoDate, operation, rowId } from './operation.ts';

export const ONIX_VERSIONS = ['3.1', '3.0'] as const;
export const TAG_SETS = ['reference', 'short'] as const;
export type OnixVersion = (typeof ONIX_VERSIONS)[number];
export type TagSet = (typeof TAG_SETS)[number];

/** Which products a message holds. */
export const onixScope = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('all') }),
  z.object({ kind: z.literal('work'), workId: rowId }),
  /** Everything that changed, or reads otherwise by now, since this day. */
  z.object({ kind: z.literal('since'), since: isoDate }),
]);
export type OnixScope = z.infer<typeof onixScope>;

export const exportOnix = operation({
  name: 'onix.export',
  kind: 'query',
  summary: 'Make an ONIX for Books message of the catalogue, one work, or what changed since a day.',
  input: z.object({
    version: z.enum(ONIX_VERSIONS).default('3.1'),
    tags: z.enum(TAG_SETS).default('reference'),
    scope: onixScope.default({ kind: 'all' }),
    /** `registration`: only what is registered with the ISBN agency. */
    content: z.enum(['full', 'registration']).default('full'),
    /** Leave out formats that no channel has seen yet. */
    announcedOnly: z.boolean().default(false),
    ...job,
  }),
  output: madeFile.extend({
    products: z.int(),
    /** Formats that have no number, so no record. */
    withoutNumber: z.int(),
    /** Formats left out because no channel has seen them yet. */
    unannounced: z.int(),
  }),
  errors: ['CANCELLED'],
});
