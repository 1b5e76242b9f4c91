import { z } from 'zod';

/** A name that the caller gives to long work, so as to follow it and to call it off; chosen at random. */
export const jobName = z
  .string()
  .regex(/^[\w-]{8,64}$/, { error: 'Name the job with 8 to 64 letters, digits or hyphens.' });

/** How far work has come: `done` of `total` of what `what` counts; null where the total is not known yet. */
export const progress = z.object({
  done: z.int().nonnegative(),
  total: z.int().nonnegative().nullable(),
  /** 'rows read' */
  what: z.string().max(100),
});
export type Progress = z.infer<typeof progress>;

/** What is pushed to windows, topic 'progress'. */
export const jobProgress = progress.extend({ job: jobName });
export type JobProgress = z.infer<typeof jobProgress>;

/** Spread into the input of an operation that may take long. */
export const job = { job: jobName.optional() };

/** Whoever called long work and wants to hear of it. */
export interface Follower {
  progress(progress: Progress): void;
  /** Whether the caller has called the work off. */
  cancelled(): boolean;
}

/**
 * Tells how far work has come, and throws CANCELLED once the caller has called it off. Called between rows, as
 * often as is handy.
 */
export type Step = (done: number, total: number | null, what: string) => void;
