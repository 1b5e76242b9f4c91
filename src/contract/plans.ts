import { z } from 'zod';
import { filledText, isoDate, operation, rowId } from './operation.ts';

const made = z.object({ planId: rowId, tasks: z.int() });

export const planRelease = operation({
  name: 'plans.release',
  kind: 'command',
  summary:
    'Plan to bring every listing of an edition on sale on one day: dated tasks worked back from the day, the same day set as on-sale date everywhere.',
  input: z.object({
    editionId: rowId,
    day: isoDate,
    /** Whether a printed proof is wanted of everything printed; left out, each channel's own rule holds. */
    printedProof: z.boolean().nullable().default(null),
    /** Whether the day is the on-sale date too, before which nothing is sold, as pre-orders need it; else only the publication date. */
    onSaleFixed: z.boolean().default(true),
  }),
  output: made,
  errors: ['NOT_READY', 'ALREADY_EXISTS'],
});

export const planRetirement = operation({
  name: 'plans.retirement',
  kind: 'command',
  summary:
    'Plan to take an edition off sale: per listing a task to ask for removal, to chase, and to confirm it is gone.',
  input: z.object({
    editionId: rowId,
    /** The day to ask; by default the release day of the edition that replaces this one, or today. */
    day: isoDate.optional(),
    /** Ask for removal although the replacing edition is not selling yet. */
    beforeReplacement: z.boolean().default(false),
  }),
  output: made,
  errors: ['NOT_READY', 'ALREADY_EXISTS'],
});

export const redatePlan = operation({
  name: 'plans.redate',
  kind: 'command',
  summary: 'Move a plan to another day: its open tasks are dated anew, finished ones stay.',
  input: z.object({ planId: rowId, day: isoDate }),
  output: z.object({ planId: rowId, moved: z.int() }),
  errors: ['STEP_REFUSED'],
});

export const dropPlan = operation({
  name: 'plans.drop',
  kind: 'command',
  summary: 'Drop a plan with a reason; its open tasks are dropped with it.',
  input: z.object({ planId: rowId, reason: filledText }),
  output: z.object({ planId: rowId, dropped: z.int() }),
  errors: ['STEP_REFUSED'],
});
