import { z } from 'zod';
import { isoDate, operation } from './operation.ts';

const facts = z.object({
  /** Who issued the table and when, as the agency wrote it. */
  source: z.string(),
  serial: z.string().nullable(),
  issued: z.string(),
  date: isoDate,
  groups: z.int(),
  /** The day the user loaded it; null for the bundled table. */
  loadedOn: isoDate.nullable(),
});

export const getRanges = operation({
  name: 'ranges.get',
  kind: 'query',
  summary: 'Which table of ISBN ranges is in use: its source, date and serial.',
  input: z.object({}),
  output: facts,
  errors: [],
});

export const loadRanges = operation({
  name: 'ranges.load',
  kind: 'command',
  summary:
    'Load a newer range message (XML) of the International ISBN Agency; refused with the reason when it is malformed, older or hostile.',
  input: z.object({
    xml: z
      .string()
      .min(1, { error: 'The file is empty.' })
      .max(4_000_000, { error: 'The file is too large for a range message.' }),
  }),
  output: facts,
  errors: ['BAD_INPUT'],
});
