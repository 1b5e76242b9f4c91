import { z } from 'zod';
import { anyText, isoDate, operation } from './operation.ts';
import { PLAN_KINDS, planSteps } from './plan-templates.ts';
import { TEXT_KINDS } from './text-kinds.ts';

const textKind = z.enum(TEXT_KINDS);

/** A version of a text; 0 is the program's own, which is in use until something is saved. */
const textVersion = z.object({
  kind: textKind,
  version: z.int().nonnegative(),
  subject: anyText,
  body: z.string(),
  note: z.string(),
  savedOn: isoDate.nullable(),
});
export type TextVersion = z.infer<typeof textVersion>;

const saved = z.object({ version: z.int() });
/** What changed, in the user's own words. */
const note = z.string().trim().max(300, { error: 'Keep this under 300 characters.' }).default('');

export const listTexts = operation({
  name: 'templates.texts',
  kind: 'query',
  summary: 'The texts in use, one of each kind.',
  input: z.object({}),
  output: z.object({ texts: z.array(textVersion) }),
  errors: [],
});

export const textVersions = operation({
  name: 'templates.textVersions',
  kind: 'query',
  summary: "Every version of a text, the newest first, the program's own last.",
  input: z.object({ kind: textKind }),
  output: z.object({ versions: z.array(textVersion) }),
  errors: [],
});

export const saveText = operation({
  name: 'templates.saveText',
  kind: 'command',
  summary: 'Save a text as a new version; words in braces must be ones that can be filled in.',
  input: z.object({
    kind: textKind,
    subject: z.string().trim().max(300, { error: 'Keep this under 300 characters.' }).default(''),
    body: anyText.min(1, { error: 'Fill this in.' }),
    note,
  }),
  output: saved,
  errors: [],
});

export const putBackText = operation({
  name: 'templates.putBackText',
  kind: 'command',
  summary: "Put an older version of a text back in use, as a new version; 0 is the program's own.",
  input: z.object({ kind: textKind, version: z.int().nonnegative() }),
  output: saved,
  errors: ['STEP_REFUSED'],
});

const planKind = z.enum(PLAN_KINDS);

/** A version of the steps of a plan; 0 is the program's own, which is in use until something is saved. */
const planVersion = z.object({
  kind: planKind,
  version: z.int().nonnegative(),
  steps: planSteps,
  note: z.string(),
  savedOn: isoDate.nullable(),
  /** How many plans were made from it. */
  plans: z.int(),
});
export type PlanVersion = z.infer<typeof planVersion>;

export const planVersions = operation({
  name: 'templates.planVersions',
  kind: 'query',
  summary: "Every version of the steps of a plan, the one in use first, the program's own last.",
  input: z.object({ kind: planKind }),
  output: z.object({ versions: z.array(planVersion) }),
  errors: [],
});

export const savePlan = operation({
  name: 'templates.savePlan',
  kind: 'command',
  summary: 'Save the steps of a plan as a new version; plans that were made before keep theirs.',
  input: z.object({ kind: planKind, steps: planSteps, note }),
  output: saved,
  errors: [],
});

export const putBackPlan = operation({
  name: 'templates.putBackPlan',
  kind: 'command',
  summary: "Put an older version of the steps back in use, as a new version; 0 is the program's own.",
  input: z.object({ kind: planKind, version: z.int().nonnegative() }),
  output: saved,
  errors: ['STEP_REFUSED'],
});
