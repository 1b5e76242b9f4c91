import { releaseDates } from '../rules/plans/release-days.ts';
import { later, retirementDates } from '../rules/plans/retirement-days.ts';
import type { ReadDb } from '../store/connection.ts';
import type { StoredPlan } from '../store/plans.ts';
import { calendarOf, type OpenTask } from './plans.ts';

/** The latest day of what the tasks of a retirement still await from the release that replaces it. */
const awaitedOf = (tasks: readonly OpenTask[]) =>
  tasks.reduce<string | null>((day, task) => later(task.awaitedDue ?? '', day) || null, null);

/** The days that the unfinished tasks of a plan would have, made for a day; what else was said of them is kept. */
export function newDays(
  { db, today }: { db: ReadDb; today: string },
  plan: StoredPlan,
  day: string,
  tasks: readonly OpenTask[],
): Map<number, string> {
  const frame = { calendar: calendarOf(db), today, day };
  return plan.kind === 'release'
    ? releaseDates(frame, tasks)
    : retirementDates({ ...frame, replacementOn: awaitedOf(tasks) }, tasks);
}
