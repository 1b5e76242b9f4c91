import { z } from 'zod';
import { madeFile } from './files.ts';
import { job } from './jobs.ts';
import { onixTerms } from './onix.ts';
import { operation, rowId } from './operation.ts';

/** What a catalogue can be written as. `ending` is the file's, `of` what it holds. */
export const EXPORT_KINDS = [
  { kind: 'csv', ending: '.csv', name: 'Table, CSV', of: 'one line a format; opens in any spreadsheet' },
  { kind: 'xlsx', ending: '.xlsx', name: 'Table, XLSX', of: 'one row a format, as a workbook' },
  {
    kind: 'agency-csv',
    ending: '.agency.csv',
    name: 'Agency sheet, CSV',
    of: 'what is to be registered with the ISBN agency, one line a number',
  },
  {
    kind: 'onix',
    ending: '.onix.xml',
    name: 'ONIX for Books',
    of: 'a record a number, as wholesalers, shops and libraries load them',
  },
  {
    kind: 'agency-onix',
    ending: '.agency.xml',
    name: 'Agency sheet, ONIX',
    of: 'what is to be registered with the ISBN agency, as ONIX for Books',
  },
  {
    kind: 'json',
    ending: '.json',
    name: 'Whole catalogue, JSON',
    of: 'everything but the journal, to be read by programs or imported into an empty catalogue',
  },
  {
    kind: 'changes',
    ending: '.changes.json',
    name: 'Changes, JSON',
    of: 'what the journal tells of this list or of one work, to be merged into the list it was copied from',
  },
] as const;
export type ExportKind = (typeof EXPORT_KINDS)[number]['kind'];

export const makeExport = operation({
  name: 'exports.make',
  kind: 'query',
  summary:
    'Write the catalogue, or one work, as a file that then lies ready for files.get; long work that can be followed by its job.',
  input: z.object({
    as: z.enum(EXPORT_KINDS.map(({ kind }) => kind)),
    workId: rowId.optional(),
    /** How an ONIX message is written, and of what. */
    onix: onixTerms.prefault({}),
    ...job,
  }),
  output: madeFile.extend({
    /** Lines, rows or records in it. */
    records: z.int(),
    /** What the user should know about the file, in sentences. */
    notes: z.array(z.string()),
  }),
  errors: ['CANCELLED', 'DISK_TROUBLE'],
});
