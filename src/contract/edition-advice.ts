import { z } from 'zod';
import { anyText, asOf, isoDate, operation, rowId } from './operation.ts';

/** How far the text changes, as only the user can say, from not at all to substantially. */
export const TEXT_EXTENTS = ['unchanged', 'corrections', 'some', 'substantial'] as const;
export type TextExtent = (typeof TEXT_EXTENTS)[number];

/** What may differ between an edition and what is to follow it; each has one rule in src/rules/edition-advice. */
export const EDITION_CHANGES = [
  'unchanged',
  'text-corrections',
  'text-some',
  'text-substantial',
  'matter-added',
  'reworked',
  'language',
  'credits',
  'narration',
  'title',
  'subtitle',
  'series',
  'imprint',
  'publisher-name',
  'other-publisher',
  'list-bought',
  'joint-imprint',
  'form',
  'large-print',
  'file-format',
  'binding',
  'trim-shaved',
  'trim',
  'interior-colour',
  'pages',
  'paper',
  'cover',
  'price',
  'price-model',
  'channel',
  'data',
  'pod-bought',
  'drm',
  'usage',
  'lending',
  'set',
  'pack',
  'chapter',
  'personal',
  'converter',
  'marketing',
] as const;
export type EditionChange = (typeof EDITION_CHANGES)[number];

/** `new`: a new number is required; `same`: the number is kept; `judge`: the user has to weigh it. */
export const ADVICE_VERDICTS = ['new', 'judge', 'same'] as const;
export type AdviceVerdict = (typeof ADVICE_VERDICTS)[number];
/** Of all formats together; `mixed` where they differ. */
export const OVERALL_VERDICTS = [...ADVICE_VERDICTS, 'mixed'] as const;

export const ADVICE_GROUPS = ['text', 'names', 'form', 'sale', 'rights', 'beside'] as const;

const verdict = z.enum(ADVICE_VERDICTS);
const change = z.enum(EDITION_CHANGES);

/** One rule: what changes, what it calls for, on whose word, and what to weigh. */
export const adviceRule = z.object({
  change,
  group: z.enum(ADVICE_GROUPS),
  /** What the user ticks: 'The title changes'. */
  label: z.string(),
  /** Whether the user can state it; the others are read from the records alone or from the text's extent. */
  stated: z.boolean(),
  /** Whether the records of two editions tell it, so that it is not asked where there are two. */
  recorded: z.boolean(),
  /** Whether it concerns the whole edition or single formats. */
  scope: z.enum(['edition', 'format']),
  /** Ways of making it concerns. */
  concerns: z.array(z.enum(['print', 'e-book', 'audio'])),
  /** A product beside the formats that takes the number in question, such as 'The set'; null for the formats themselves. */
  beside: z.string().nullable(),
  verdict,
  rule: z.string(),
  source: z.string(),
  weigh: z.string(),
});

/** What the user says of the change. */
export const statedChanges = z.object({
  /** Null: not said yet. */
  text: z.enum(TEXT_EXTENTS).nullable().default(null),
  /** No format named means every format that the change can concern. */
  changes: z
    .array(z.object({ change, formatIds: z.array(rowId).max(200).default([]) }))
    .max(200)
    .default([]),
  /** Product forms that come out beside those there are: codes of ONIX List 150, with the file format where there is one. */
  added: z
    .array(
      z.object({
        form: z.string().regex(/^[A-Z]{2}$/, { error: 'Choose a product form.' }),
        formDetail: z
          .string()
          .regex(/^[A-Z]\d{3}$/, { error: 'Choose a file format.' })
          .nullable()
          .default(null),
        largePrint: z.boolean().default(false),
      }),
    )
    .max(50)
    .default([]),
  /** What the user would like: a new number, or to keep the old one. */
  wish: z.enum(['new', 'keep']).nullable().default(null),
  note: anyText.default(''),
});
export type StatedChanges = z.output<typeof statedChanges>;

const line = z.object({
  change,
  /** What changes, in a few words. */
  title: z.string(),
  /** From what to what, where the records tell. */
  detail: z.string(),
  told: z.enum(['stated', 'record']),
  verdict,
  rule: z.string(),
  source: z.string(),
  weigh: z.string(),
});
export type AdviceLine = z.infer<typeof line>;

const formatAdvice = z.object({
  /** Null for what is no format yet: an added form, a set. */
  formatId: rowId.nullable(),
  name: z.string(),
  hyphenated: z.string().nullable(),
  verdict,
  /** The verdict as a sentence. */
  why: z.string(),
  lines: z.array(line),
  /** The wish granted, refused or left to the user, with the reason. */
  answer: z.object({ granted: z.boolean().nullable(), sentence: z.string(), source: z.string() }).nullable(),
});
export type FormatAdvice = z.infer<typeof formatAdvice>;

export const editionAdvice = z.object({
  editionId: rowId,
  /** `pondering`: the edition is or was on sale and changes are thought about; `draft`: it is compared with the one it replaces. */
  mode: z.enum(['pondering', 'draft']),
  /** The edition it is compared with. */
  against: z.string(),
  overall: z.enum(OVERALL_VERDICTS),
  headline: z.string(),
  /** Whether new numbers are called for by what concerns the edition as a whole, so that a next edition is the way. */
  needsEdition: z.boolean(),
  /** What only the user can say and has not said yet. */
  asked: z.string().nullable(),
  formats: z.array(formatAdvice),
  caution: z.string(),
  /** What to do where the numbers are kept. */
  toDo: z.array(z.string()),
});
export type EditionAdvice = z.infer<typeof editionAdvice>;

export const adviceRules = operation({
  name: 'editions.adviceRules',
  kind: 'query',
  summary: 'The rules on when a new ISBN is needed: what changes, verdict, source and what to weigh.',
  input: z.object({}),
  output: z.object({ rules: z.array(adviceRule) }),
  errors: [],
});

export const adviseEdition = operation({
  name: 'editions.advise',
  kind: 'query',
  summary:
    'New edition or reprint: for an edition on sale from the changes stated, for a draft from its difference to the edition it replaces and what is stated; a verdict per format with rule and source.',
  input: z.object({ editionId: rowId, stated: statedChanges.prefault({}) }),
  output: editionAdvice,
  errors: ['NOT_READY'],
});

export const noteAdvice = operation({
  name: 'editions.noteAdvice',
  kind: 'command',
  summary: 'Keep with an edition what was stated of its changes and what the rules said to it that day.',
  input: z.object({ editionId: rowId, stated: statedChanges }),
  output: z.object({ adviceId: rowId }),
  errors: ['NOT_READY'],
});

export const keptAdvice = operation({
  name: 'editions.keptAdvice',
  kind: 'query',
  summary: 'What was kept with an edition on why it took new numbers or kept them, newest first.',
  input: z.object({ editionId: rowId, asOf }),
  output: z.object({
    kept: z.array(
      z.object({
        id: rowId,
        madeOn: isoDate,
        verdict: z.enum(OVERALL_VERDICTS),
        note: z.string(),
        lines: z.array(
          z.object({
            formatName: z.string(),
            title: z.string(),
            detail: z.string(),
            told: z.enum(['stated', 'record']),
            verdict,
            rule: z.string(),
            source: z.string(),
          }),
        ),
      }),
    ),
  }),
  errors: [],
});
