import type { NewFile, ProofOutcome } from '../contract/proofs.ts';
import type { ListingStanding, Made } from '../contract/terms.ts';
import { proofDays, spanOf } from './plans/proof-days.ts';
import type { PlanListing } from './plans/types.ts';
import { dayPlus, type WorkCalendar, workingDayFrom, workingDaysAfter } from './working-days.ts';

// What a proof round brings about: steps and tasks by its outcome. The outcomes and what follows from them are
// common practice, no source; the steps are those of standings.ts.

/** Kinds of task that only a proof round makes. */
export const ROUND_KINDS = ['order-copies', 'await-mend', 'chase-mend'] as const;

interface OutcomeRule {
  /** The steps it takes from each standing in which such an outcome can be recorded. */
  moves: Partial<Record<ListingStanding, readonly ListingStanding[]>>;
  /** Kinds of task that follow, in order; 'make' stands for the files to be made anew. */
  tasks: readonly (
    | 'make'
    | 'submit'
    | 'check-proof'
    | 'approve'
    | 'on-sale'
    | (typeof ROUND_KINDS)[number]
  )[];
}

/** Every outcome with its steps and tasks. The identity stays locked whatever the outcome is. */
export const OUTCOMES: Record<ProofOutcome, OutcomeRule> = {
  'clear for sale': {
    moves: { sent: ['proof', 'cleared'], proof: ['cleared'], cleared: [] },
    tasks: [],
  },
  'clear for own orders': {
    moves: { sent: ['proof', 'cleared'], proof: ['cleared'] },
    tasks: ['order-copies', 'on-sale'],
  },
  'new file needed': {
    moves: { sent: ['proof', 'unsent'], proof: ['unsent'], cleared: ['unsent'] },
    tasks: ['make', 'submit', 'check-proof', 'approve'],
  },
  'channel error': {
    moves: { sent: ['proof'], proof: [], cleared: [] },
    tasks: ['await-mend', 'chase-mend', 'check-proof'],
  },
};

/** The steps an outcome takes from a standing; null where it cannot be recorded. */
export function stepsOf(outcome: ProofOutcome, from: ListingStanding): readonly ListingStanding[] | null {
  return OUTCOMES[outcome].moves[from] ?? null;
}

/** The files a format is made of. */
export const FILES_OF: Record<Made, readonly NewFile[]> = {
  print: ['interior', 'cover'],
  'e-book': ['e-book'],
  audio: ['audio'],
};

/** Working days to make a file anew; our own allowance. */
const MAKE_WITHIN = 3;

export interface RoundTask {
  key: string;
  kind: string;
  title: string;
  note: string;
  dueOn: string;
  /** Whom it waits for; empty where it is open. */
  waitingFor: string;
  /** Keys of tasks that come first. */
  needs: string[];
}

export interface RoundInput {
  calendar: WorkCalendar;
  /** The day of the round. */
  on: string;
  outcome: ProofOutcome;
  listing: PlanListing;
  /** Files to be made anew. */
  files: readonly NewFile[];
  saleDay: string | null;
  answerBy: string | null;
  /** The day of sale that stands; nothing is dated after it. */
  saleDue: string | null;
}

const within = (day: string, last: string | null) => (last !== null && day > last ? last : day);

interface Days {
  make: string;
  submit: string;
  check: string;
  answer: string;
}

function daysOf({ calendar, on, listing, answerBy }: RoundInput): Days {
  const make = workingDaysAfter(calendar, on, MAKE_WITHIN);
  const submit = workingDaysAfter(calendar, make, 1);
  const check = workingDaysAfter(calendar, submit, proofDays(listing.proof) || 1);
  const answer = answerBy ?? workingDaysAfter(calendar, on, Math.max(listing.leadDays, 1));
  return { make, submit, check, answer };
}

/** The earliest day of sale after a new file: made, submitted, proofed, and the channel's own days. */
export function earliestSale(input: RoundInput): string {
  return workingDaysAfter(input.calendar, daysOf(input).submit, Math.max(spanOf(input.listing), 1));
}

function newFileTasks(input: RoundInput, days: Days): RoundTask[] {
  const { formatName, channelName, proof } = input.listing;
  const due = (day: string) => within(day, input.saleDue);
  const plain = { note: '', waitingFor: '' };
  const makes = input.files.map((file) => ({
    ...plain,
    key: `make-${file}`,
    kind: `make-${file}`,
    title: `Make the ${file} file of ${formatName} anew`,
    dueOn: due(days.make),
    needs: [],
  }));
  const submit = {
    ...plain,
    key: 'submit',
    kind: 'submit',
    title: `Submit the new file of ${formatName} to ${channelName}`,
    note: 'The ISBN and all that is locked stay as they are.',
    dueOn: due(days.submit),
    needs: makes.map((task) => task.key),
  };
  const check = {
    ...plain,
    key: 'check-proof',
    kind: 'check-proof',
    title: `Check the new proof of ${formatName} from ${channelName}`,
    dueOn: due(days.check),
    needs: ['submit'],
  };
  const checks = proof === 'none' ? [] : [check];
  const approve = {
    ...plain,
    key: 'approve',
    kind: 'approve',
    title: `Approve ${formatName} at ${channelName}`,
    dueOn: due(days.check),
    needs: [checks[0]?.key ?? 'submit'],
  };
  return [...makes, submit, ...checks, approve];
}

function errorTasks(input: RoundInput, days: Days): RoundTask[] {
  const { formatName, channelName, standing } = input.listing;
  const again = workingDayFrom(input.calendar, dayPlus(days.answer, 1));
  return [
    {
      key: 'await-mend',
      kind: 'await-mend',
      title: `${channelName} mends its error in ${formatName}`,
      note: '',
      dueOn: days.answer,
      waitingFor: channelName,
      needs: [],
    },
    {
      key: 'chase-mend',
      kind: 'chase-mend',
      title: `Ask ${channelName} again about ${formatName} if nothing came`,
      note: '',
      dueOn: again,
      waitingFor: '',
      needs: [],
    },
    ...(standing === 'cleared'
      ? []
      : [
          {
            key: 'check-proof',
            kind: 'check-proof',
            title: `Check the mended proof of ${formatName} from ${channelName}`,
            note: '',
            dueOn: workingDaysAfter(input.calendar, days.answer, 1),
            waitingFor: '',
            needs: ['await-mend'],
          },
        ]),
  ];
}

function ownOrderTasks({ calendar, on, listing, saleDay }: RoundInput): RoundTask[] {
  const { formatName, channelName } = listing;
  const plain = { note: '', waitingFor: '' };
  const order = {
    ...plain,
    key: 'order-copies',
    kind: 'order-copies',
    title: `Order own copies of ${formatName} from ${channelName} and look at them`,
    dueOn: workingDaysAfter(calendar, on, 1),
    needs: [],
  };
  if (saleDay === null) return [order];
  return [
    { ...order, dueOn: within(order.dueOn, saleDay) },
    {
      ...plain,
      key: 'on-sale',
      kind: 'on-sale',
      title: `Put ${formatName} on sale at ${channelName}`,
      dueOn: saleDay,
      needs: ['order-copies'],
    },
  ];
}

/** The tasks that follow from a round, every one after what it needs; none after the day of sale but what waits for the channel. */
export function roundTasks(input: RoundInput): RoundTask[] {
  const days = daysOf(input);
  if (input.outcome === 'new file needed') return newFileTasks(input, days);
  if (input.outcome === 'channel error') return errorTasks(input, days);
  return input.outcome === 'clear for own orders' ? ownOrderTasks(input) : [];
}
