import { z } from 'zod';
import { operation } from './operation.ts';

/** Bytes that travel in one call, before they are written as base64. */
export const PART_BYTES = 1024 * 1024;

/** Names a file that lies ready for the catalogue, or that the catalogue has made for the user to fetch. */
export const stagedId = z
  .string()
  .regex(/^[0-9a-f]{32}$/, { error: 'There is no such file; send it again.' });

/** A file the catalogue has made. */
export const madeFile = z.object({
  file: stagedId,
  /** What to save it as. */
  name: z.string(),
  /** Media type. */
  type: z.string(),
  bytes: z.int().nonnegative(),
});
export type MadeFile = z.infer<typeof madeFile>;

const fileName = z.string().trim().min(1).max(255);

export const putFile = operation({
  name: 'files.put',
  kind: 'errand',
  summary: 'Lay a file of the user’s ready to be read, in parts of at most 1 MiB; the first call names it.',
  input: z.object({
    /** The file begun by an earlier call; left out for the first part. */
    file: stagedId.optional(),
    name: fileName.default('file'),
    part: z.base64({ error: 'Send the part as base64.' }).max(Math.ceil(PART_BYTES / 3) * 4, {
      error: 'Send at most 1 MiB at once.',
    }),
  }),
  output: z.object({ file: stagedId, bytes: z.int() }),
  errors: ['DISK_TROUBLE'],
});

export const getFile = operation({
  name: 'files.get',
  kind: 'errand',
  summary: 'Fetch a file that lies ready, at most 1 MiB at once, from a byte on.',
  input: z.object({ file: stagedId, from: z.int().nonnegative().default(0) }),
  output: z.object({
    part: z.base64(),
    /** Where the next part begins; null behind the last. */
    next: z.int().nullable(),
    bytes: z.int(),
  }),
  errors: ['DISK_TROUBLE'],
});

export const dropFile = operation({
  name: 'files.drop',
  kind: 'errand',
  summary: 'Throw away a file that lies ready; otherwise it goes when the catalogue is closed.',
  input: z.object({ file: stagedId }),
  output: z.object({ dropped: z.boolean() }),
  errors: [],
});
