import { z } from 'zod';
import { operation } from './operation.ts';

export const lockRules = operation({
  name: 'locks.rules',
  kind: 'query',
  summary: 'Which field locks when, why, and on whose word.',
  input: z.object({}),
  output: z.object({
    points: z.array(
      z.object({
        /** The first submission, the day on which it is on sale, or the end: retired, cancelled or gone. */
        at: z.enum(['submission', 'on sale', 'end']),
        reason: z.string(),
        source: z.string(),
        /** Plain names of the fields that lock then, by the record they belong to. */
        edition: z.array(z.string()),
        format: z.array(z.string()),
        listing: z.array(z.string()),
      }),
    ),
  }),
  errors: [],
});
