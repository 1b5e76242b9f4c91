import { z } from 'zod';
import { stagedId } from './files.ts';
import { job } from './jobs.ts';
import { operation } from './operation.ts';

const row = z.record(z.string(), z.union([z.string(), z.number(), z.null()]));
const hash = z.string().regex(/^[0-9a-f]{64}$/);

/** One entry of a journal, as the copy wrote it. */
export const carriedEntry = z.strictObject({
  seq: z.int().positive(),
  hash,
  entity: z.string().max(60),
  key: z.string().max(200),
  action: z.enum(['added', 'changed', 'removed']),
  before: row.nullable(),
  after: row.nullable(),
});
export type CarriedEntry = z.infer<typeof carriedEntry>;

/** What was done in a copy of a list, or to one work of it: written by exports.make as 'changes'. */
export const changesFile = z.strictObject({
  editionLedger: z.literal('changes'),
  layout: z.literal(1),
  /** The form of the catalogue file it was written from. */
  form: z.int().positive(),
  /** Seal of the first entry of the journal: copies of one list share it. */
  birth: hash,
  entries: z.array(carriedEntry),
});

/** Which side holds where both have changed the same thing. */
export const MERGE_SIDES = ['here', 'there'] as const;
export const mergeSide = z.enum(MERGE_SIDES);
export type MergeSide = z.infer<typeof mergeSide>;

const told = z.union([z.string(), z.number()]).nullable();

export const mergeConflict = z.object({
  /** Names the conflict in `choices`. */
  id: z.string(),
  /** What the record is called: 'The Salt Almanac, 2nd edition'. */
  about: z.string(),
  entity: z.string(),
  /** The field that both changed; null where the whole record is meant. */
  field: z.string().nullable(),
  /** Values when the copy was made, here now, and in the file; null where there is none. */
  before: told,
  here: told,
  there: told,
  /** What it is about, in a sentence. */
  sentence: z.string(),
  /** The choices there are; a change that the rules refuse can only be left out. */
  sides: z.array(mergeSide),
  chosen: mergeSide.nullable(),
});
export type MergeConflict = z.infer<typeof mergeConflict>;

export const mergeChanges = operation({
  name: 'changes.merge',
  kind: 'command',
  summary:
    'Take over what was done in a copy of this list, from its file of changes that lies ready; what both have changed is shown and chosen, never guessed.',
  input: z.object({
    file: stagedId,
    dryRun: z.boolean().default(false),
    /** Sides chosen, by the id of the conflict. */
    choices: z.record(z.string().max(300), mergeSide).default({}),
    /** For every conflict that is not named. */
    otherwise: mergeSide.optional(),
    ...job,
  }),
  output: z.object({
    /** Entries of the file, those known here already, those taken over and those left out. */
    entries: z.int(),
    known: z.int(),
    taken: z.int(),
    left: z.int(),
    /** What the records are called that were added or changed; the first 200. */
    records: z.array(z.string()),
    conflicts: z.array(mergeConflict),
  }),
  errors: ['STEP_REFUSED', 'CATALOGUE_NEWER', 'CATALOGUE_FOREIGN', 'CANCELLED'],
});
