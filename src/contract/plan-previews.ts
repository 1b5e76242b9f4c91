import { z } from 'zod';
import { isoDate, operation, rowId } from './operation.ts';

/** Whether a release day can be kept, and which can. */
const reach = z.object({
  /** The first day that leaves every channel its time. */
  earliest: isoDate,
  /** Working days by which the release day comes too early; 0 when it holds. */
  shortBy: z.int(),
});

const learned = z.object({ median: z.int(), slowest: z.int(), count: z.int() }).nullable();

/** What the recorded steps of a channel's listings tell of the time it takes. */
const leadTime = z.object({
  channelId: rowId,
  channelName: z.string(),
  /** As recorded of the channel: working days to on sale, calendar days for a removal. */
  leadDays: z.int(),
  removalDays: z.int(),
  /** Working days from sent to proof, and from cleared to selling. */
  toProof: learned,
  toSale: learned,
  /** Calendar days from leaving to gone. */
  toGone: learned,
  /** What could be recorded instead; null where too little is known. */
  learnedLeadDays: z.int().nullable(),
  learnedRemovalDays: z.int().nullable(),
});
export type LeadTime = z.infer<typeof leadTime>;

export const leadTimes = operation({
  name: 'channels.leadTimes',
  kind: 'query',
  summary: 'How long each channel took so far, from the recorded steps, beside what is recorded of it.',
  input: z.object({}),
  output: z.object({ channels: z.array(leadTime) }),
  errors: [],
});

export const previewRelease = operation({
  name: 'plans.previewRelease',
  kind: 'query',
  summary:
    'The plan a release on a day would have, before it is made, and the earliest day that can be kept.',
  input: z.object({
    editionId: rowId,
    /** The day to look at; left out, the first without haste. */
    day: isoDate.optional(),
    printedProof: z.boolean().nullable().default(null),
  }),
  output: reach.extend({
    day: isoDate,
    /** The first day on which no step is done in haste either. */
    withoutHaste: isoDate,
    submitOn: isoDate.nullable(),
    /** The channels whose time decides, slowest first: working days from submitting to on sale. */
    channels: z.array(z.object({ channelName: z.string(), days: z.int() })),
    tasks: z.array(z.object({ key: z.string(), title: z.string(), dueOn: isoDate })),
  }),
  errors: ['NOT_READY'],
});

const move = z.object({ id: rowId, title: z.string(), from: isoDate, to: isoDate });

export const previewSlip = operation({
  name: 'plans.previewSlip',
  kind: 'query',
  summary: 'What moves when a task of a release slips to a day, and whether the release day still holds.',
  input: z.object({ taskId: rowId, dueOn: isoDate }),
  output: reach.extend({
    planId: rowId,
    day: isoDate,
    moves: z.array(move),
    /** Whether everything fits in before the release day if what follows is done in haste. */
    canSqueeze: z.boolean(),
  }),
  errors: ['STEP_REFUSED'],
});

export const slipPlan = operation({
  name: 'plans.slip',
  kind: 'command',
  summary:
    'Let a task of a release slip: keep the release day and push what follows towards it, or move the release to another day.',
  input: z.object({
    taskId: rowId,
    dueOn: isoDate,
    /** The new release day; left out, the day stays and what follows is squeezed. */
    moveTo: isoDate.optional(),
  }),
  output: z.object({ planId: rowId, day: isoDate, moved: z.int() }),
  errors: ['STEP_REFUSED'],
});

export const latePlans = operation({
  name: 'plans.late',
  kind: 'query',
  summary: 'Release plans in force with a task that is late or a day that cannot be kept any more.',
  input: z.object({ editionId: rowId.optional() }),
  output: z.object({
    plans: z.array(
      reach.extend({
        planId: rowId,
        editionId: rowId,
        day: isoDate,
        late: z.array(z.object({ id: rowId, title: z.string(), dueOn: isoDate })),
      }),
    ),
  }),
  errors: [],
});
