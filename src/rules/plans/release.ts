import type { PlanStep } from '../../contract/plan-templates.ts';
import type { WorkCalendar } from '../working-days.ts';
import { DEFAULT_STEPS } from './default-templates.ts';
import { type Instance, planInstances } from './instances.ts';
import { isThere, movesTo } from './kinds.ts';
import { releaseDates } from './release-days.ts';
import type { Dated, PlanListing, PlanTask } from './types.ts';

export interface ReleaseInput {
  calendar: WorkCalendar;
  today: string;
  day: string;
  listings: readonly PlanListing[];
  /** As delivered unless given. */
  steps?: readonly PlanStep[];
  /** Label of the edition. */
  edition?: string;
}

/**
 * Whether a step has anything to do: what a listing has passed is not asked for again, and preparations only
 * while something is still to be sent. Registering is asked for in any case; it does no harm twice.
 */
function wanted(listings: readonly PlanListing[]) {
  const anyUnsent = listings.some(({ standing }) => standing === 'unsent');
  return (step: PlanStep, listing: PlanListing | null): boolean => {
    const prepares = step.anchor === 'submission' && step.side === 'before';
    if (listing === null) return !prepares || anyUnsent || step.kind === 'register-numbers';
    if (prepares) return listing.standing === 'unsent';
    const target = movesTo(step.kind);
    if (step.kind === 'check-proof' && listing.proof === 'none') return false;
    return target === null || !isThere(listing.standing, target);
  };
}

/** What is to be dated of some instances of a plan. */
export function datedOf(instances: readonly Instance[]): Dated<string>[] {
  return instances.map(({ key, step, listing, needs }) => ({ key, step, listing, needs, awaitedDue: null }));
}

/** An instance as the task it becomes. */
export function taskOf(instance: Instance, dueOn: string): PlanTask {
  const { key, step, title, formatId, listingId, needs } = instance;
  return {
    key,
    kind: step.kind,
    step: step.key,
    title,
    note: step.note,
    dueOn,
    formatId,
    listingId,
    needs,
    needsTasks: [],
  };
}

/** Everything there is to do to bring these listings on sale, each behind what it needs, without days. */
export function releaseInstances(input: Omit<ReleaseInput, 'calendar' | 'today' | 'day'>): Instance[] {
  const { steps = DEFAULT_STEPS.release, listings, edition = '' } = input;
  return planInstances(steps, { listings, edition, replacement: '', wanted: wanted(listings) });
}

/**
 * The tasks that bring these listings on sale on one day: once for the edition, once for each format to be
 * sent, and for each listing. Listings are those not yet selling; every task stands after what it needs.
 */
export function releaseTasks(input: ReleaseInput): PlanTask[] {
  const instances = releaseInstances(input);
  const days = releaseDates(input, datedOf(instances));
  return instances.map((instance) => taskOf(instance, days.get(instance.key) ?? input.day));
}
