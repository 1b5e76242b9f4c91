import type { WorkCalendar } from '../working-days.ts';
import type { ReleaseKind, RetirementKind } from './kinds.ts';
import { releaseDays } from './release-days.ts';
import { later, retirementDue } from './retirement.ts';
import type { ProofKind } from './types.ts';

/** A task of a plan that has not ended, with the rules of its listing's channel where it has one. */
export interface OpenPlanTask {
  id: number;
  kind: string;
  listingId: number | null;
  leadDays: number | null;
  removalDays: number | null;
  proof: ProofKind | null;
  /** The latest day of what it still needs from another plan. */
  awaitedDue: string | null;
}

interface NewDay {
  calendar: WorkCalendar;
  today: string;
  day: string;
  tasks: readonly OpenPlanTask[];
}

/**
 * Days of the unfinished tasks of a release plan for a new release day. The span is that of the listings still
 * to be submitted, else of every listing with something left to do.
 */
export function redatedRelease({ calendar, today, day, tasks }: NewDay): Map<number, string> {
  const toSubmit = tasks.filter((task) => task.kind === 'submit');
  const spans = (toSubmit.length > 0 ? toSubmit : tasks).flatMap(({ leadDays, proof }) =>
    leadDays === null || proof === null ? [] : [{ leadDays, proof }],
  );
  const due = releaseDays(calendar, today, day, spans);
  return new Map(tasks.map((task) => [task.id, due(task.kind as ReleaseKind, task.proof ?? 'none')]));
}

/** Days of the unfinished tasks of a retirement plan for a new day to ask; nothing is asked before what it waits for. */
export function redatedRetirement({ calendar, today, day, tasks }: NewDay): Map<number, string> {
  const start = later(day, today);
  const asks = tasks.filter((task) => task.kind === 'ask-removal');
  const askFrom = new Map(asks.map((ask) => [ask.listingId, later(start, ask.awaitedDue)]));
  const from = (task: OpenPlanTask): string => {
    if (task.kind === 'record-out-of-print') return [...askFrom.values()].reduce(later, start);
    if (task.kind === 'move-links') return later(start, task.awaitedDue);
    return askFrom.get(task.listingId) ?? start;
  };
  return new Map(
    tasks.map((task) => [
      task.id,
      retirementDue(calendar, task.kind as RetirementKind, from(task), task.removalDays ?? 0),
    ]),
  );
}
