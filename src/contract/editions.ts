import { z } from 'zod';
import { statedChanges } from './edition-advice.ts';
import { format, formatFields } from './formats.ts';
import { anyText, filledText, isoDate, operation, rowId } from './operation.ts';
import { AUDIENCES, SUBJECT_SCHEMES } from './terms.ts';

/** A contributor in order; role is a code of ONIX List 17. */
export const contributor = z.object({
  role: z.string().regex(/^[A-Z]\d\d$/, { error: 'Choose a role.' }),
  name: filledText,
});
export type Contributor = z.infer<typeof contributor>;

/** BISAC codes are three letters and six digits; Thema codes start with a capital or digit. Only the syntax is checked. */
export const subject = z
  .object({ scheme: z.enum(SUBJECT_SCHEMES), code: filledText, heading: anyText.default('') })
  .refine((s) => s.scheme !== 'bisac' || /^[A-Z]{3}\d{6}$/.test(s.code), {
    error: 'A BISAC code is three capital letters and six digits, for example ABC012345.',
    path: ['code'],
  })
  .refine((s) => s.scheme !== 'thema' || /^[A-Z1-6][A-Z0-9]*(-[A-Z0-9]*)*$/.test(s.code), {
    error: 'A Thema code is capital letters and digits, with hyphens only in national extensions.',
    path: ['code'],
  });
export type Subject = z.infer<typeof subject>;

const age = z.int().min(0).max(120).nullable();

/** What an edition records. The first group is identity and locks at the first submission; the second stays open. */
export const editionFields = z.object({
  title: filledText,
  subtitle: anyText,
  number: z.int().min(1).max(999).nullable(),
  statement: anyText,
  contributors: z.array(contributor).max(100),
  language: z.string().regex(/^[a-z]{3}$/, { error: 'Choose a language (three letters, ISO 639-2/B).' }),
  imprint: anyText,
  series: anyText,
  seriesNumber: anyText,
  description: anyText,
  keywords: z.array(filledText).max(200),
  subjects: z.array(subject).max(50),
  audience: z.enum(AUDIENCES),
  ageFrom: age,
  ageTo: age,
});
export type EditionFields = z.infer<typeof editionFields>;

/** Since when, through which listing and why the named fields may no longer change. */
export const lock = z.object({
  since: isoDate,
  listingId: rowId,
  channelName: z.string(),
  formatName: z.string(),
  fields: z.array(z.string()),
  reason: z.string(),
  source: z.string(),
  /** Whether a recorded correction is possible: every listing taken back, none ever cleared. */
  correctable: z.boolean(),
});
export type Lock = z.infer<typeof lock>;

export const edition = editionFields.extend({
  id: rowId,
  workId: rowId,
  /** 'The Salt Almanac, 2nd edition' */
  label: z.string(),
  replacesId: rowId.nullable(),
  replacedById: rowId.nullable(),
  lock: lock.nullable(),
  /** An open recorded correction: identity fields may change until the next submission. */
  correction: z.object({ madeOn: isoDate, reason: z.string() }).nullable(),
  formats: z.array(format),
  plans: z.array(
    z.object({
      id: rowId,
      kind: z.enum(['release', 'retirement']),
      day: isoDate,
      open: z.int(),
      done: z.int(),
      /** All its tasks have ended; it is no longer in force. */
      ended: z.boolean(),
    }),
  ),
});
export type Edition = z.infer<typeof edition>;

const blank = {
  subtitle: '',
  number: null,
  statement: '',
  contributors: [],
  language: 'eng',
  imprint: '',
  series: '',
  seriesNumber: '',
  description: '',
  keywords: [],
  subjects: [],
  audience: 'general',
  ageFrom: null,
  ageTo: null,
} satisfies Omit<EditionFields, 'title'>;

/** What may be left out when an edition is made; imprint and language then come from Settings. */
export const newEditionFields = editionFields.partial().required({ title: true });
export const BLANK_EDITION = blank;

export const createEdition = operation({
  name: 'editions.create',
  kind: 'command',
  summary:
    'Add an edition to a work that does not follow from one of its editions (for a following one use editions.prepareNext).',
  input: newEditionFields.extend({ workId: rowId }),
  output: z.object({ editionId: rowId }),
  errors: [],
});

export const updateEdition = operation({
  name: 'editions.update',
  kind: 'command',
  summary: 'Change fields of an edition; identity fields are refused once any of its listings was sent.',
  input: editionFields.partial().extend({ id: rowId }),
  output: z.object({ editionId: rowId, changed: z.array(z.string()) }),
  errors: ['FIELD_LOCKED'],
});

export const removeEdition = operation({
  name: 'editions.remove',
  kind: 'command',
  summary: 'Remove an edition that has no format yet.',
  input: z.object({ id: rowId }),
  output: z.object({ editionId: rowId }),
  errors: ['IN_USE'],
});

export const prepareNextEdition = operation({
  name: 'editions.prepareNext',
  kind: 'command',
  summary:
    'Make the edition that replaces this one: what should carry carries, the number rises, ISBNs and dates do not carry; numbers may be taken at once.',
  input: z.object({
    editionId: rowId,
    /** Formats of the old edition to carry over. */
    carry: z.array(rowId),
    /** Formats the old edition did not have. */
    add: z.array(formatFields.partial().required({ form: true })).default([]),
    takeNumbers: z.boolean().default(true),
    blockId: rowId.optional(),
    /** Changes to the carried fields, for example a new subtitle or a foreword's author. */
    changes: editionFields.partial().default({}),
    /** Also make a listing on the same channels for each carried format. */
    carryListings: z.boolean().default(true),
    /** What was stated of the change that leads to this edition; kept with it, with what the rules said. */
    stated: statedChanges.optional(),
  }),
  output: z.object({ editionId: rowId, formatIds: z.array(rowId) }),
  errors: ['NOT_READY', 'ALREADY_EXISTS', 'BLOCK_EMPTY'],
});

export const linkEdition = operation({
  name: 'editions.link',
  kind: 'command',
  summary:
    'Link an edition to the earlier one of its work that it replaces; refused where either has such a link already.',
  input: z.object({ id: rowId, replacesId: rowId }),
  output: z.object({ editionId: rowId }),
  errors: ['ALREADY_EXISTS', 'STEP_REFUSED'],
});

export const correctEdition = operation({
  name: 'editions.correct',
  kind: 'command',
  summary:
    'Record a correction: opens the identity fields of a submitted edition again, only when every listing was taken back and none was ever cleared; the next submission locks them again.',
  input: z.object({ id: rowId, reason: filledText }),
  output: z.object({ editionId: rowId }),
  errors: ['STEP_REFUSED'],
});
