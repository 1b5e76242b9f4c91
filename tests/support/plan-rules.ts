import fc from 'fast-check';
import { expect } from 'vitest';
import type { PlanStep } from '../../src/contract/plan-templates.ts';
import type { ListingStanding, Made } from '../../src/contract/terms.ts';
import { DEFAULT_STEPS } from '../../src/rules/plans/default-templates.ts';
import type { Dated, PlanListing, PlanTask, ProofKind } from '../../src/rules/plans/types.ts';
import { dayPlus, workCalendar } from '../../src/rules/working-days.ts';

/** A Monday. */
export const TODAY = '2026-03-02';
export const WEEK = workCalendar({ workingDays: [1, 2, 3, 4, 5], holidays: [] });

export const listing = (given: Partial<PlanListing> = {}): PlanListing => ({
  id: 1,
  standing: 'unsent',
  lastStepOn: null,
  returnable: false,
  formatId: 1,
  formatName: 'Paperback',
  made: 'print',
  channelId: 1,
  channelName: 'Printworks Direct',
  leadDays: 3,
  removalDays: 7,
  proof: 'electronic',
  ...given,
});

export const dueOf = (tasks: PlanTask[], key: string) => tasks.find((task) => task.key === key)?.dueOn;

export const someDay = fc.integer({ min: 0, max: 400 }).map((offset) => dayPlus(TODAY, offset));
export const someCalendar = fc
  .record({
    workingDays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1 }),
    holidays: fc.array(someDay, { maxLength: 30 }),
  })
  .map(workCalendar);
export const someListings = (standings: ListingStanding[]) =>
  fc
    .array(
      fc.record({
        standing: fc.constantFrom(...standings),
        formatId: fc.integer({ min: 1, max: 3 }),
        channelId: fc.integer({ min: 1, max: 4 }),
        made: fc.constantFrom<Made>('print', 'e-book', 'audio'),
        proof: fc.constantFrom<ProofKind>('none', 'electronic', 'physical'),
        leadDays: fc.integer({ min: 0, max: 40 }),
        removalDays: fc.integer({ min: 0, max: 60 }),
        lastStepOn: fc.integer({ min: 0, max: 90 }).map((ago) => dayPlus(TODAY, -ago)),
        returnable: fc.boolean(),
      }),
      { minLength: 1, maxLength: 8 },
    )
    .map((given) => given.map((entry, at) => listing({ ...entry, id: at + 1 })));

/** A made plan as it is found again when it is dated anew. */
export const asOpen = (
  tasks: PlanTask[],
  listings: PlanListing[],
  awaited = new Map<number, string>(),
  steps: readonly PlanStep[] = [...DEFAULT_STEPS.release, ...DEFAULT_STEPS.retirement],
): Dated<number>[] =>
  tasks.map((task, at) => {
    const step = steps.find(({ key }) => key === task.step);
    if (!step) throw new Error(`There is no step ${task.step}.`);
    const days = task.needsTasks.map((id) => awaited.get(id) ?? '').sort();
    return {
      key: at,
      step,
      listing: listings.find((entry) => entry.id === task.listingId) ?? null,
      needs: task.needs.map((key) => tasks.findIndex((other) => other.key === key)),
      awaitedDue: days.at(-1) ?? null,
    };
  });

/** Every task stands after what it needs, and is due no earlier. */
export function expectOrder(tasks: PlanTask[], dueOn: (task: PlanTask, at: number) => string): void {
  const position = new Map(tasks.map((task, at) => [task.key, at]));
  expect(position.size).toBe(tasks.length);
  for (const [at, task] of tasks.entries())
    for (const key of task.needs) {
      const before = position.get(key) ?? Number.NaN;
      expect(before).toBeLessThan(at);
      const need = tasks[before];
      expect(need && dueOn(need, before) <= dueOn(task, at)).toBe(true);
    }
}
