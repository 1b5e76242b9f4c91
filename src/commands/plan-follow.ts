import type { ListingStanding } from '../contract/terms.ts';
import { newDays } from '../records/plan-dates.ts';
import { type OpenTask, openTasks, planListing, planSteps } from '../records/plans.ts';
import { type Instance, planInstances } from '../rules/plans/instances.ts';
import { inNeedOrder } from '../rules/plans/order.ts';
import { taskOf } from '../rules/plans/release.ts';
import { earlier } from '../rules/plans/release-days.ts';
import { later } from '../rules/plans/retirement-days.ts';
import { listingOfPlan, type PlanListingRow, planInForce, type StoredPlan } from '../store/plans.ts';
import { dateStoredTask, insertNeed, insertTask } from '../store/tasks.ts';
import type { CommandContext } from './context.ts';
import { plannedEdition } from './plan-making.ts';

/** Counts a channel's promise from the day on which it was really asked. */
function countFromAsking(context: CommandContext, plan: StoredPlan, listingId: number): void {
  const tasks = openTasks(context.db, plan);
  const days = newDays(context, plan, plan.day, tasks);
  for (const { key, listing, step, dueOn } of tasks) {
    const counted = step.anchor === 'request' || step.anchor === 'promise';
    const day = days.get(key) ?? dueOn;
    if (counted && (listing === null || listing.id === listingId) && day !== dueOn)
      dateStoredTask(context.db, key, day);
  }
}

/** What is to be done again for a listing that came back: its steps that no unfinished task stands for. */
function toDoAgain(
  steps: ReturnType<typeof planSteps>,
  row: PlanListingRow,
  plan: StoredPlan,
  open: readonly OpenTask[],
) {
  const listing = planListing(row, plan.printedProof === null ? null : plan.printedProof === 1);
  const there = new Set(open.filter((task) => task.listing?.id === row.id).map(({ step }) => step.key));
  const instances = planInstances(steps, {
    listings: [listing],
    edition: '',
    replacement: '',
    wanted: (step) => step.scope === 'listing' && !(step.anchor === 'submission' && step.side === 'before'),
  });
  return { instances, again: instances.filter(({ step }) => !there.has(step.key)) };
}

/** Gives a listing that was refused or taken back its tasks again, so that it is sent, checked and approved anew. */
function askAgain(
  context: CommandContext,
  plan: StoredPlan,
  row: PlanListingRow & { editionId: number },
): void {
  const { db, today } = context;
  const open = openTasks(db, plan);
  const { instances, again } = toDoAgain(planSteps(db, plan), row, plan, open);
  if (again.length === 0) return;
  const { workId, id: editionId } = plannedEdition(db, row.editionId);
  const ids = new Map<string, number>();
  for (const task of open) if (task.listing?.id === row.id) ids.set(`${task.step.key}:${row.id}`, task.key);
  const added = new Set<number>();
  for (const instance of again) {
    const task = { ...taskOf(instance, plan.day), planId: plan.id, workId, editionId };
    const id = insertTask(db, { ...task, formatId: row.formatId });
    ids.set(instance.key, id);
    added.add(id);
  }
  for (const instance of instances)
    for (const pair of newNeeds(instance, ids, added)) insertNeed(db, ...pair);
  dateAgain({ db, today: earlier(plan.day, today) }, plan, row.id, added);
}

/** Days for the tasks of a listing that came back: none earlier than it was, and none before what it needs. */
function dateAgain(
  context: CommandContext,
  plan: StoredPlan,
  listingId: number,
  added: ReadonlySet<number>,
): void {
  const tasks = openTasks(context.db, plan);
  const days = newDays(context, plan, plan.day, tasks);
  const due = new Map(tasks.map((task) => [task.key, task.dueOn]));
  for (const task of inNeedOrder(tasks)) {
    const now = due.get(task.key) ?? plan.day;
    if (task.listing?.id !== listingId || task.step.kind === 'on-sale') continue;
    const wanted = later(days.get(task.key) ?? plan.day, added.has(task.key) ? null : now);
    const day = task.needs.map((key) => due.get(key) ?? '').reduce(later, wanted);
    due.set(task.key, day);
    if (day !== now) dateStoredTask(context.db, task.key, day);
  }
}

/** The pairs of tasks of which at least one is new: the one, and what it needs. */
function newNeeds(instance: Instance, ids: ReadonlyMap<string, number>, added: ReadonlySet<number>) {
  const task = ids.get(instance.key);
  return instance.needs.flatMap((key): [number, number][] => {
    const need = ids.get(key);
    if (task === undefined || need === undefined || (!added.has(task) && !added.has(need))) return [];
    return [[task, need]];
  });
}

/** Lets the plans in force follow a listing to where it moved. */
export function followListing(context: CommandContext, listingId: number, reached: ListingStanding): void {
  const kind = reached === 'leaving' ? 'retirement' : reached === 'unsent' ? 'release' : undefined;
  const row = kind && listingOfPlan(context.db, listingId);
  const plan = row && planInForce(context.db, row.editionId, kind);
  if (!plan) return;
  if (kind === 'retirement') countFromAsking(context, plan, listingId);
  else askAgain(context, plan, row);
}
