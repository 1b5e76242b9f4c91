import { z } from 'zod';
import { operation } from './operation.ts';

export const programLog = operation({
  name: 'program.log',
  kind: 'errand',
  summary: 'The newest part of the error log on this computer, to be read and sent by you alone.',
  input: z.object({}),
  output: z.object({
    /** Full path of the log; null where this program keeps none, as on the command line. */
    file: z.string().nullable(),
    /** Whole lines, oldest first; empty when no error was noted. */
    text: z.string(),
  }),
  errors: [],
});
