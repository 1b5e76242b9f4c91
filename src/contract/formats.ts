import { z } from 'zod';
import { formatFile } from './format-files.ts';
import { listing } from './listings.ts';
import { anyText, filledText, isoDate, money, operation, rowId } from './operation.ts';
import { CASE_KINDS, FINISHES, formatStanding, INTERIOR_COLOURS } from './terms.ts';

/** The format that took the place of another, in the edition that replaces its own. */
export const replacement = z.object({
  formatId: rowId,
  workId: rowId,
  hyphenated: z.string(),
  /** 'The Salt Almanac, 2nd edition · Paperback' */
  label: z.string(),
});

const um = z.int().positive().max(2_000_000).nullable();

/** One retail price; one per currency. */
export const price = money.extend({ tax: z.enum(['including', 'excluding']).default('including') });
export type Price = z.infer<typeof price>;

/** What a format records. `form`, `formDetail`, `caseKind` and `largePrint` lock at its first submission. */
export const formatFields = z.object({
  /** ONIX List 150 code. */
  form: z.string().regex(/^[A-Z]{2}$/, { error: 'Choose a product form.' }),
  /** ONIX List 175 code: file format of an e-book or audiobook. */
  formDetail: z
    .string()
    .regex(/^[A-Z]\d{3}$/, { error: 'Choose a file format.' })
    .nullable(),
  caseKind: z.enum(CASE_KINDS).nullable(),
  /** Trim size in micrometres (1 in = 25,400 µm). */
  trimWidthUm: um,
  trimHeightUm: um,
  pages: z.int().positive().max(20_000).nullable(),
  durationMinutes: z.int().positive().max(100_000).nullable(),
  interiorColour: z.enum(INTERIOR_COLOURS).nullable(),
  paper: anyText,
  finish: z.enum(FINISHES).nullable(),
  insideCoverPrint: z.boolean(),
  largePrint: z.boolean(),
  rightToLeft: z.boolean(),
  publicationDate: isoDate.nullable(),
  onSaleDate: isoDate.nullable(),
  note: anyText,
  prices: z.array(price).max(50),
});
export type FormatFields = z.infer<typeof formatFields>;

export const BLANK_FORMAT = {
  formDetail: null,
  caseKind: null,
  trimWidthUm: null,
  trimHeightUm: null,
  pages: null,
  durationMinutes: null,
  interiorColour: null,
  paper: '',
  finish: null,
  insideCoverPrint: false,
  largePrint: false,
  rightToLeft: false,
  publicationDate: null,
  onSaleDate: null,
  note: '',
  prices: [],
} satisfies Omit<FormatFields, 'form'>;

export const format = formatFields.extend({
  id: rowId,
  editionId: rowId,
  /** 'Hardcover (jacket)' */
  name: z.string(),
  standing: formatStanding,
  isbn13: z.string().nullable(),
  hyphenated: z.string().nullable(),
  numberSince: isoDate.nullable(),
  cancelledOn: isoDate.nullable(),
  cancelReason: z.string().nullable(),
  /** What took its place in the edition that replaces its own. */
  replacedBy: replacement.nullable(),
  lock: z
    .object({ since: isoDate, channelName: z.string(), fields: z.array(z.string()), reason: z.string() })
    .nullable(),
  listings: z.array(listing),
  /** Final files, those in force first, then the newest. */
  files: z.array(formatFile),
});
export type Format = z.infer<typeof format>;

const formatId = z.object({ formatId: rowId });

export const createFormat = operation({
  name: 'formats.create',
  kind: 'command',
  summary: 'Add a format to an edition.',
  input: formatFields.partial().required({ form: true }).extend({ editionId: rowId }),
  output: formatId,
  errors: [],
});

export const copyFormat = operation({
  name: 'formats.copy',
  kind: 'command',
  summary:
    'Make another format of the same edition: everything carries but the number and what belongs to the form.',
  input: formatFields.partial().required({ form: true }).extend({ fromFormatId: rowId }),
  output: formatId,
  errors: [],
});

export const updateFormat = operation({
  name: 'formats.update',
  kind: 'command',
  summary:
    'Change fields of a format; its product form is refused once it was sent, everything once it is retired.',
  input: formatFields.partial().extend({ id: rowId }),
  output: formatId.extend({ changed: z.array(z.string()) }),
  errors: ['FIELD_LOCKED'],
});

export const cancelFormat = operation({
  name: 'formats.cancel',
  kind: 'command',
  summary:
    'Cancel a format that was never live: its listings are taken back and its number is spent for ever.',
  input: z.object({ id: rowId, reason: filledText, on: isoDate.optional() }),
  output: formatId.extend({ spent: z.string().nullable() }),
  errors: ['STEP_REFUSED'],
});

export const removeFormat = operation({
  name: 'formats.remove',
  kind: 'command',
  summary: 'Remove a format that never had a number and never was sent.',
  input: z.object({ id: rowId }),
  output: formatId,
  errors: ['IN_USE'],
});
