import type { Step } from '../../contract/jobs.ts';
import { Refusal } from '../../contract/refusal.ts';

/** How far a file has been read, and whether anybody still waits for it. */
export interface Watch {
  step: Step;
  /** Whether the caller has called it off. */
  cancelled?: (() => boolean) | undefined;
}

/** Tells how far reading has come. Throws CANCELLED once it was called off. */
export function told({ step, cancelled }: Watch, done: number, total: number | null, what: string): void {
  if (cancelled?.()) throw new Refusal('CANCELLED', 'Reading the file was called off; nothing was kept.');
  step(done, total, what);
}

/** A file that is not read: one sentence that says why and how to mend it. */
export const unreadable = (sentence: string) => new Refusal('BAD_INPUT', sentence, 'file');
