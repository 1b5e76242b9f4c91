import { z } from 'zod';
import { asOf, isoDate, operation, rowId } from './operation.ts';
import { formatStanding, numberStanding } from './terms.ts';

export const catalogueInfo = operation({
  name: 'catalogue.info',
  kind: 'query',
  summary:
    'What catalogue is open: file, name, version of its form, today, range table date, whether it is the demo.',
  input: z.object({}),
  output: z.object({
    name: z.string(),
    file: z.string(),
    fileName: z.string(),
    schemaVersion: z.int(),
    appVersion: z.string(),
    today: isoDate,
    demo: z.boolean(),
    empty: z.boolean(),
    readOnly: z.boolean(),
    /** What the user should know about this file: a synced folder, a clock set back, a newer form. */
    warnings: z.array(z.string()),
    rangesDate: z.string(),
    rangesSerial: z.string().nullable(),
    journalEntries: z.int(),
  }),
  errors: [],
});

export const catalogueStatus = operation({
  name: 'catalogue.status',
  kind: 'query',
  summary: 'How many formats and numbers stand where, today or on a past day.',
  input: z.object({
    asOf,
    /** Whether every format is listed as well; the counts alone come sooner. */
    withList: z.boolean().default(true),
  }),
  output: z.object({
    asOf: isoDate,
    formats: z.record(formatStanding, z.int()),
    numbers: z.record(numberStanding, z.int()),
    works: z.int(),
    openTasks: z.int(),
    overdueTasks: z.int(),
    list: z.array(
      z.object({
        formatId: rowId,
        workId: rowId,
        editionLabel: z.string(),
        name: z.string(),
        standing: formatStanding,
        hyphenated: z.string().nullable(),
      }),
    ),
  }),
  errors: [],
});

export const loadDemo = operation({
  name: 'catalogue.demo',
  kind: 'command',
  summary: 'Fill an empty catalogue with the demo press; its numbers are invented and must never be printed.',
  input: z.object({}),
  output: z.object({ works: z.int(), formats: z.int() }),
  errors: ['ALREADY_EXISTS'],
});

export const checkCatalogue = operation({
  name: 'catalogue.check',
  kind: 'query',
  summary:
    'Check the file: its pages, its rules, its references, the chain of its journal, and its tables against a replay of it.',
  input: z.object({}),
  output: z.object({
    ok: z.boolean(),
    integrity: z.string(),
    foreignKeys: z.int(),
    journal: z.object({
      entries: z.int(),
      ok: z.boolean(),
      firstBroken: z.int().nullable(),
      head: z.string(),
    }),
    /** Rows that differ from what the journal says; none when it tells the whole story. */
    replay: z.array(z.string()),
    /** Tables, indexes, views and triggers that are not as this program makes them: 'trigger step_kept is missing'. */
    schema: z.array(z.string()),
    sentences: z.array(z.string()),
  }),
  errors: [],
});
