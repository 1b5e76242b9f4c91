import type { z } from 'zod';
import type { RefusalBody } from './refusal.ts';

/** The first thing wrong with an input as one sentence: where, what, how to mend it. The same at both ends of the wire. */
export function badInput(error: z.ZodError): RefusalBody {
  const issue = error.issues[0];
  const field = issue?.path.map(String).join('.') ?? '';
  const what = issue?.message ?? 'This input cannot be read.';
  return {
    code: 'BAD_INPUT',
    message: field ? `${field}: ${what}` : what,
    ...(field ? { field } : {}),
  };
}
