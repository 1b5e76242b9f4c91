import { z } from 'zod';
import { stagedId } from './files.ts';
import { job } from './jobs.ts';
import { isoDate, operation, rowId } from './operation.ts';

export const ONIX_VERSIONS = ['3.1', '3.0'] as const;
export const TAG_SETS = ['reference', 'short'] as const;
export type OnixVersion = (typeof ONIX_VERSIONS)[number];
export type TagSet = (typeof TAG_SETS)[number];

/** How a message is written, and of what. */
export const onixTerms = z.object({
  version: z.enum(ONIX_VERSIONS).default('3.1'),
  tags: z.enum(TAG_SETS).default('reference'),
  /** Only what changed, or reads otherwise by now, since this day. */
  since: isoDate.optional(),
  /** Leave out formats that no channel has seen yet. */
  announcedOnly: z.boolean().default(false),
});
export type OnixTerms = z.infer<typeof onixTerms>;

/** How a product of a message stands to the catalogue. */
export const ONIX_STATES = ['new', 'changed', 'unchanged', 'locked', 'conflicting', 'refused'] as const;
export type OnixState = (typeof ONIX_STATES)[number];

/** Where a product goes: `w12` and `e34` are of the catalogue, anything else names a new work or edition. */
const place = z
  .string()
  .regex(/^[a-z][\w.]{0,30}$/, { error: 'A place is a letter and digits, for example w12 or n3.' });

export const onixRow = z.object({
  /** From 1, in the order of the message. */
  row: z.int(),
  /** Line of the file. */
  line: z.int(),
  isbn: z.string(),
  title: z.string(),
  /** 'Paperback', 'Hardcover (jacket)' */
  form: z.string(),
  state: z.enum(ONIX_STATES),
  work: z.string(),
  edition: z.string(),
  /** Why it is placed there. */
  why: z.string(),
  changes: z.array(z.object({ field: z.string(), from: z.string(), to: z.string(), locked: z.boolean() })),
  notes: z.array(z.string()),
  /** Parts of the record that the catalogue has no field for and keeps. */
  kept: z.int(),
});
export type OnixRow = z.infer<typeof onixRow>;

export const onixWork = z.object({
  key: z.string(),
  /** Of the catalogue, or null for a new work. */
  id: rowId.nullable(),
  title: z.string(),
  editions: z.array(
    z.object({ key: z.string(), id: rowId.nullable(), label: z.string(), replaces: z.string().nullable() }),
  ),
});

/** Where the user wants a product to go, in place of what was proposed. */
const placing = z.object({ row: z.int().positive(), work: place, edition: place });

export const previewOnix = operation({
  name: 'onix.preview',
  kind: 'query',
  summary:
    'Look through an ONIX message that lies ready: what is new, changed, locked or in conflict, row by row.',
  input: z.object({
    file: stagedId,
    places: z.array(placing).max(200_000).default([]),
    ...job,
  }),
  output: z.object({
    version: z.string(),
    sender: z.string(),
    products: z.int(),
    counts: z.record(z.enum(ONIX_STATES), z.int()),
    rows: z.array(onixRow),
    works: z.array(onixWork),
  }),
  errors: ['CANCELLED', 'DISK_TROUBLE'],
});

export const importOnix = operation({
  name: 'onix.import',
  kind: 'command',
  summary:
    'Take products of an ONIX message over, all of the chosen ones or none; what has no field here is kept and given back on export.',
  input: z.object({
    file: stagedId,
    /** The rows to take; left out: all that are new, changed or locked. */
    rows: z.array(z.int().positive()).max(500_000).optional(),
    places: z.array(placing).max(200_000).default([]),
    ...job,
  }),
  output: z.object({
    worksAdded: z.int(),
    editionsAdded: z.int(),
    formatsAdded: z.int(),
    formatsChanged: z.int(),
    /** Changes left out because a field is locked. */
    lockedLeft: z.int(),
    /** Parts kept to be given back. */
    kept: z.int(),
  }),
  errors: ['CANCELLED', 'DISK_TROUBLE', 'NUMBER_INVALID', 'NUMBER_SPENT', 'NUMBER_TAKEN', 'NOT_READY'],
});
