import { z } from 'zod';
import { progress } from '../contract/jobs.ts';
import { refusalBody } from '../contract/refusal.ts';
import { FILE_KINDS } from '../contract/terms.ts';

/** What a reader's thread is asked: to read a file and to write what it read, as JSON, to another. */
export const readerTask = z.object({
  path: z.string().min(1),
  /** What the user calls the file. */
  name: z.string(),
  kind: z.enum(FILE_KINDS),
  /** Where what was read is written. */
  to: z.string().min(1),
});
export type ReaderTask = z.infer<typeof readerTask>;

/** What a reader says of what it read; the rest lies in the file it wrote. */
export const readSummary = z.object({
  fileName: z.string(),
  bytes: z.int().nonnegative(),
  sha256: z.string(),
});

/** What a reader's thread tells. */
export const fromReader = z.discriminatedUnion('say', [
  progress.extend({ say: z.literal('progress') }),
  readSummary.extend({ say: z.literal('read') }),
  z.object({ say: z.literal('refused'), error: refusalBody }),
]);
export type FromReader = z.infer<typeof fromReader>;
