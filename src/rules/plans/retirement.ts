import type { PlanStep } from '../../contract/plan-templates.ts';
import type { WorkCalendar } from '../working-days.ts';
import { DEFAULT_STEPS } from './default-templates.ts';
import { type Instance, planInstances } from './instances.ts';
import { taskOf } from './release.ts';
import { later, retirementDates } from './retirement-days.ts';
import type { PlanListing, PlanTask } from './types.ts';

/** An 'on sale' task, not yet done, of the edition that replaces this one. */
export interface AwaitedSale {
  taskId: number;
  channelId: number;
  dueOn: string;
}

export interface RetirementInput {
  calendar: WorkCalendar;
  today: string;
  /** The day to ask for removal. */
  day: string;
  listings: readonly PlanListing[];
  /** Sales of the replacing edition to wait for; empty when nothing is waited for. */
  awaited: readonly AwaitedSale[];
  /** Whether the replacing edition is selling somewhere already. */
  replacementSells: boolean;
  /** Label of the replacing edition. */
  replacement: string | null;
  /** As delivered unless given. */
  steps?: readonly PlanStep[];
  /** Label of the edition. */
  edition?: string;
}

const SENT = ['sent', 'proof', 'cleared'];

/** Whether a step has anything to do for a listing where it stands, or once for the edition. */
function wanted(input: RetirementInput) {
  const returnable = input.listings.some(({ returnable, standing }) => returnable && standing !== 'unsent');
  return (step: PlanStep, listing: PlanListing | null): boolean => {
    if (listing === null) return step.kind !== 'note-returns' || returnable;
    if (step.kind === 'take-back') return SENT.includes(listing.standing);
    if (step.kind === 'ask-removal') return listing.standing === 'selling';
    return listing.standing === 'selling' || listing.standing === 'leaving';
  };
}

/** The sales that asking about a listing waits for: on its own channel; where there is none, the whole release while nothing of it sells. */
function awaitedFor(input: RetirementInput, listing: PlanListing): readonly AwaitedSale[] {
  const same = input.awaited.filter((sale) => sale.channelId === listing.channelId);
  return same.length > 0 || input.replacementSells ? same : input.awaited;
}

function awaitedBy(input: RetirementInput, { step, listing }: Instance): readonly AwaitedSale[] {
  if (step.kind === 'ask-removal' && listing) return awaitedFor(input, listing);
  return step.anchor === 'replacement' ? input.awaited : [];
}

const latest = (sales: readonly AwaitedSale[]) =>
  sales.reduce<string | null>((day, sale) => later(sale.dueOn, day), null);

/** A title or note with what only the catalogue knows: no replacement, and whom to ask about returns. */
function worded(input: RetirementInput, task: PlanTask): PlanTask {
  if (task.kind === 'move-links' && input.replacement === null && task.title === MOVE_LINKS)
    return {
      ...task,
      title: 'Take links and the website entry down; keep reviews where they can be kept',
    };
  if (task.kind !== 'note-returns') return task;
  const asked = input.listings.filter(({ returnable, standing }) => returnable && standing !== 'unsent');
  const channels = [...new Set(asked.map(({ channelName }) => channelName))].join(', ');
  return { ...task, note: `Ask ${channels}. ${task.note}`.trim() };
}

const NO_REPLACEMENT = 'its replacement';
const MOVE_LINKS = `Move links, the website entry and reviews to ${NO_REPLACEMENT}`;

/**
 * The tasks that take these listings off sale: asking, chasing and confirming for each that sells (asking is
 * left out where it was done already), taking back what was sent and never sold, and what is done once for
 * the edition. Asking waits for the sales of the replacing edition named in `awaited`.
 */
export function retirementTasks(input: RetirementInput): PlanTask[] {
  const { steps = DEFAULT_STEPS.retirement, listings, edition = '' } = input;
  const replacement = input.replacement ?? NO_REPLACEMENT;
  const instances = planInstances(steps, { listings, edition, replacement, wanted: wanted(input) });
  const awaited = new Map(instances.map((instance) => [instance.key, awaitedBy(input, instance)]));
  const days = retirementDates(
    { ...input, replacementOn: latest(input.awaited) },
    instances.map(({ key, step, listing, needs }) => ({
      ...{ key, step, listing, needs },
      awaitedDue: latest(awaited.get(key) ?? []),
    })),
  );
  return instances.map((instance) => ({
    ...worded(input, taskOf(instance, days.get(instance.key) ?? input.day)),
    needsTasks: (awaited.get(instance.key) ?? []).map(({ taskId }) => taskId),
  }));
}
