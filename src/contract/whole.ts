import { z } from 'zod';
import { stagedId } from './files.ts';
import { job } from './jobs.ts';
import { operation } from './operation.ts';

/** One value of a row; bytes are written as base64. */
const value = z.union([
  z.string(),
  z.number(),
  z.null(),
  z.strictObject({ base64: z.base64() }).describe('Bytes.'),
]);

/** A whole catalogue as one JSON file: what is written by exports.make as 'json' and read by catalogue.import. */
export const wholeCatalogue = z
  .strictObject({
    editionLedger: z.literal('catalogue').describe('Says what the file is.'),
    layout: z
      .literal(1)
      .describe('The layout of this file: raised when it changes so that older programs cannot read it.'),
    form: z
      .int()
      .positive()
      .describe(
        'The form of the catalogue file it was written from: how many of its migrations had been applied.',
      ),
    tables: z
      .record(z.string(), z.array(z.record(z.string(), value)))
      .describe(
        'Every table of the catalogue by its name, in the order of the names: rows in the order of their keys, columns in the order of their names, as migrations/ declare them. Rows keep their ids. The journal and what follows from the tables (runs and tallies of numbers, the index of the search) are left out.',
      ),
  })
  .describe('A whole catalogue of Edition Ledger.');
export type WholeCatalogue = z.infer<typeof wholeCatalogue>;

export const importCatalogue = operation({
  name: 'catalogue.import',
  kind: 'command',
  summary:
    'Take over a whole catalogue from its JSON file that lies ready, into a catalogue that is empty; the journal of the old file stays behind.',
  input: z.object({ file: stagedId, dryRun: z.boolean().default(false), ...job }),
  output: z.object({
    /** Rows by table, those that have any. */
    tables: z.array(z.object({ table: z.string(), rows: z.int() })),
    works: z.int(),
    formats: z.int(),
    numbers: z.int(),
  }),
  errors: ['ALREADY_EXISTS', 'CATALOGUE_NEWER', 'CATALOGUE_DAMAGED', 'CANCELLED'],
});
