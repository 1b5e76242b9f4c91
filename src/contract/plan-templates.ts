import { z } from 'zod';

/** Kinds of task that bring an edition on sale. */
export const RELEASE_KINDS = [
  'finish-content',
  'register-numbers',
  'settle-data',
  'make-interior',
  'make-cover',
  'make-e-book',
  'make-audio',
  'submit',
  'check-proof',
  'approve',
  'on-sale',
  'check-page',
] as const;
export type ReleaseKind = (typeof RELEASE_KINDS)[number];

/** Kinds of task that take an edition off sale. */
export const RETIREMENT_KINDS = [
  'ask-removal',
  'chase',
  'confirm-gone',
  'take-back',
  'record-out-of-print',
  'move-links',
  'note-returns',
] as const;
export type RetirementKind = (typeof RETIREMENT_KINDS)[number];

/** The kind of a task that a person wrote. */
export const OWN_KIND = 'own';

export const PLAN_KINDS = ['release', 'retirement'] as const;
export type PlanKind = (typeof PLAN_KINDS)[number];

/** What a step is done for: once, for each format, or for each format on each channel. */
export const STEP_SCOPES = ['edition', 'format', 'listing'] as const;

/**
 * The days that a step can be counted from. Of a release: the one day on which everything is sent, and the release
 * day. Of a retirement: the day of the plan, the day the replacing edition sells, the day a channel is asked, and
 * the day by which it promises to be done.
 */
export const ANCHORS = {
  release: ['submission', 'release'],
  retirement: ['start', 'replacement', 'request', 'promise'],
} as const satisfies Record<PlanKind, readonly string[]>;

/** What is not filled in in a title, by what the step is done for; each scope also knows those before it. */
export const STEP_PLACEHOLDERS = {
  edition: ['edition', 'replacement'],
  format: ['edition', 'replacement', 'format'],
  listing: ['edition', 'replacement', 'format', 'channel'],
} as const satisfies Record<(typeof STEP_SCOPES)[number], readonly string[]>;

export const planStep = z.object({
  /** Its name inside the plan; other steps need it by this name. */
  key: z.string().regex(/^[a-z][a-z0-9-]{0,39}$/, {
    error: 'Write the short name in small letters, digits and hyphens, beginning with a letter.',
  }),
  kind: z.enum([...RELEASE_KINDS, ...RETIREMENT_KINDS, OWN_KIND]),
  /** Words in braces are filled in. */
  title: z
    .string()
    .trim()
    .min(1, { error: 'Write what is to be done.' })
    .max(200, { error: 'Keep this under 200 characters.' }),
  note: z.string().trim().max(1000, { error: 'Keep this under 1,000 characters.' }),
  scope: z.enum(STEP_SCOPES),
  /** For what is made so; an empty list for everything. */
  made: z.array(z.enum(['print', 'e-book', 'audio'])).max(3),
  /** For listings that get such a proof; an empty list for every listing. */
  proof: z.array(z.enum(['none', 'electronic', 'physical'])).max(3),
  /** Working days. */
  days: z
    .int({ error: 'Write a whole number of working days.' })
    .min(0, { error: 'Write 0 or more working days.' })
    .max(365, { error: 'Keep this within 365 working days.' }),
  side: z.enum(['before', 'after']),
  anchor: z.enum([...ANCHORS.release, ...ANCHORS.retirement]),
  /** Steps that come first. */
  needs: z.array(z.string()).max(60),
  on: z.boolean(),
});
export type PlanStep = z.infer<typeof planStep>;

export const planSteps = z
  .array(planStep)
  .min(1, { error: 'A plan has at least one step.' })
  .max(60, { error: 'A plan has at most 60 steps.' });
