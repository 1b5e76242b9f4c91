import { z } from 'zod';
import { madeFile, stagedId } from './files.ts';
import { job } from './jobs.ts';
import { operation } from './operation.ts';
import { reading, sheetFieldKey } from './sheet-fields.ts';

const sheetName = z.string().max(255).optional();
const place = z.int().min(0).max(999);

/** A column of a file and what it is taken to hold. */
export const foundColumn = z.object({
  /** From zero. */
  index: place,
  header: z.string(),
  samples: z.array(z.string()),
  /** Null for a column that is left out. */
  field: z.string().nullable(),
  /** Currency, channel or role (ONIX List 17), where the field takes one. */
  detail: z.string(),
  /** How its dates or amounts are written; null where the person must say so, or where it does not matter. */
  reading: reading.nullable(),
  from: z.enum(['remembered', 'header', 'cells', 'none']),
  why: z.string(),
});
export type FoundColumn = z.infer<typeof foundColumn>;

/** A column as the person has settled it. */
export const chosenColumn = z.object({
  index: place,
  field: sheetFieldKey.nullable(),
  detail: z.string().max(2000).default(''),
  reading: reading.nullable().default(null),
});

/** A repair that the person has taken up for one cell; the file itself stays as it is. */
export const repair = z.object({ row: z.int().positive(), column: place, text: z.string().max(2000) });

/** One cell, or row where `column` is null, that is not taken over as it stands. */
export const sheetProblem = z.object({
  row: z.int(),
  column: z.int().nullable(),
  header: z.string(),
  text: z.string(),
  message: z.string(),
  /** Only offered. */
  repair: z.string().nullable(),
});
export type SheetProblem = z.infer<typeof sheetProblem>;

export const lookAtSheet = operation({
  name: 'sheets.look',
  kind: 'query',
  summary:
    'Look into a CSV or XLSX file that lies ready: its sheets, columns and what each is taken to hold, remembered or guessed.',
  input: z.object({ file: stagedId, sheet: sheetName, ...job }),
  output: z.object({
    kind: z.enum(['csv', 'xlsx']),
    sheets: z.array(z.string()),
    sheet: z.string(),
    columns: z.array(foundColumn),
    /** Rows below the header. */
    rows: z.int(),
  }),
  errors: ['CANCELLED'],
});

const previewRow = z.object({
  row: z.int(),
  name: z.string(),
  hyphenated: z.string().nullable(),
  what: z.enum(['new', 'changed', 'same', 'refused']),
  /** Names of the fields that change. */
  changes: z.array(z.string()),
});

/** Works, editions and rows as they were grouped; the first hundred works. */
const previewWork = z.object({
  title: z.string(),
  known: z.boolean(),
  editions: z.array(z.object({ label: z.string(), known: z.boolean(), rows: z.array(previewRow) })),
});

export const sheetOutcome = z.object({
  rows: z.int(),
  counts: z.object({ new: z.int(), changed: z.int(), same: z.int(), refused: z.int() }),
  made: z.object({
    works: z.int(),
    editions: z.int(),
    formats: z.int(),
    numbers: z.int(),
    listings: z.int(),
  }),
  works: z.array(previewWork),
  worksTotal: z.int(),
  /** The first two hundred. */
  problems: z.array(sheetProblem),
  problemsTotal: z.int(),
  /** The refused rows with their reasons, same columns, to be mended and fed back; null when there is none. */
  refused: madeFile.nullable(),
  /** What the person should know, in sentences. */
  notes: z.array(z.string()),
});
export type SheetOutcome = z.infer<typeof sheetOutcome>;

export const importSheet = operation({
  name: 'sheets.import',
  kind: 'command',
  summary:
    'Record the formats of a CSV or XLSX file that lies ready, grouped to works and editions; all rows or none, or the good ones alone; dryRun tells what would come of it.',
  input: z.object({
    file: stagedId,
    sheet: sheetName,
    columns: z.array(chosenColumn).min(1, { error: 'Say what the columns hold.' }).max(1000),
    repairs: z.array(repair).max(100_000).default([]),
    goodRowsOnly: z.boolean().default(false),
    dryRun: z.boolean().default(false),
    ...job,
  }),
  output: sheetOutcome,
  errors: ['NUMBER_INVALID', 'FIELD_LOCKED', 'CANCELLED'],
});
