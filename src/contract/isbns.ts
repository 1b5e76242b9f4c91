import { z } from 'zod';
import { operation } from './operation.ts';

/** What a text holds: a valid number with all its parts, or one named problem. */
export const isbnCheck = z.object({
  text: z.string(),
  ok: z.boolean(),
  isbn13: z.string().nullable(),
  hyphenated: z.string().nullable(),
  isbn10: z.string().nullable(),
  agency: z.string().nullable(),
  group: z.string().nullable(),
  registrant: z.string().nullable(),
  publication: z.string().nullable(),
  problem: z
    .object({
      code: z.string(),
      message: z.string(),
      hint: z.string().nullable(),
      position: z.int().nullable(),
      repair: z.string().nullable(),
    })
    .nullable(),
  /** Where the number stands in this catalogue, when it is valid. */
  standing: z.enum(['free', 'reserved', 'assigned', 'spent', 'outside every block']).nullable(),
  formatId: z.int().nullable(),
});
export type IsbnCheck = z.infer<typeof isbnCheck>;

export const checkIsbns = operation({
  name: 'isbns.check',
  kind: 'query',
  summary: 'Check typed or scanned ISBNs and say exactly what is wrong with each.',
  input: z.object({ texts: z.array(z.string().max(500)).min(1).max(10_000) }),
  output: z.object({ checks: z.array(isbnCheck) }),
  errors: [],
});
