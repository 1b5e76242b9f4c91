import { Refusal } from '../contract/refusal.ts';
import { newDays } from '../records/plan-dates.ts';
import { openTasks } from '../records/plans.ts';
import { toRelease } from '../records/release.ts';
import { editionLabel } from '../rules/labels.ts';
import type { ReadDb } from '../store/connection.ts';
import {
  dropStoredPlan,
  formatsOfPlan,
  listingsOfEdition,
  openTasksOfPlan,
  planById,
  plansWaitingFor,
  type StoredPlan,
  setPlanDay,
} from '../store/plans.ts';
import { dateStoredTask, dropStoredTask } from '../store/tasks.ts';
import type { CommandContext, CommandHandler } from './context.ts';
import { plannedEdition, refusePastDay } from './plan-making.ts';
import { setDayOf } from './plan-release.ts';

/** 'The release plan for The Salt Almanac, 2nd edition' */
function nameOf(db: ReadDb, plan: StoredPlan): string {
  return `The ${plan.kind} plan for ${editionLabel(plannedEdition(db, plan.editionId))}`;
}

/** The plan in force; throws NOT_FOUND, or STEP_REFUSED for a plan that was dropped or has ended. */
export function planToChange(db: ReadDb, id: number): StoredPlan {
  const plan = planById(db, id);
  if (!plan) throw new Refusal('NOT_FOUND', `There is no plan ${id}.`, 'planId');
  if (plan.droppedOn !== null)
    throw new Refusal(
      'STEP_REFUSED',
      `${nameOf(db, plan)} was dropped on ${plan.droppedOn}; make a new plan instead.`,
      'planId',
    );
  if (plan.endedOn !== null)
    throw new Refusal(
      'STEP_REFUSED',
      `${nameOf(db, plan)} ended on ${plan.endedOn}, when its last task ended; make a new plan instead.`,
      'planId',
    );
  return plan;
}

/** Dates the unfinished tasks of one plan anew; answers how many got another day. */
function redateOne(context: CommandContext, plan: StoredPlan, day: string): number {
  const { db } = context;
  const tasks = openTasks(db, plan);
  const days = newDays(context, plan, day, tasks);
  setPlanDay(db, plan.id, day);
  const moved = tasks.filter((task) => (days.get(task.key) ?? task.dueOn) !== task.dueOn);
  for (const task of moved) dateStoredTask(db, task.key, days.get(task.key) ?? task.dueOn);
  return moved.length;
}

/** The release day on every format of the plan that is not live yet, and on its listings. */
function dateWhatIsNotLive({ db }: CommandContext, plan: StoredPlan, day: string): void {
  const carried = new Set(formatsOfPlan(db, plan.id));
  const rows = toRelease(listingsOfEdition(db, plan.editionId)).filter((row) => carried.has(row.formatId));
  setDayOf(db, rows, { day, onSale: plan.onSaleFixed === 1 ? day : null }, 'STEP_REFUSED');
}

/** Moves a plan; a retirement that waits for the release goes with it, so that nothing is asked off too early. */
export const redatePlan: CommandHandler<'plans.redate'> = (context, { planId, day }) => {
  const plan = planToChange(context.db, planId);
  refusePastDay(day, context.today);
  let moved = redateOne(context, plan, day);
  if (plan.kind === 'release') {
    dateWhatIsNotLive(context, plan, day);
    for (const waiting of plansWaitingFor(context.db, plan.id)) {
      const follows = waiting.day === plan.day || waiting.day < day;
      moved += redateOne(context, waiting, follows ? day : waiting.day);
    }
  }
  return { planId: plan.id, moved };
};

/** Drops a plan with its unfinished tasks; refused while a retirement waits for its sales. */
export const dropPlan: CommandHandler<'plans.drop'> = ({ db, today }, { planId, reason }) => {
  const plan = planToChange(db, planId);
  const waiting = plansWaitingFor(db, plan.id)[0];
  if (waiting)
    throw new Refusal(
      'STEP_REFUSED',
      `${nameOf(db, waiting)} waits for these sales, so that the old is not asked off before the new sells; drop that plan first.`,
      'planId',
    );
  const tasks = openTasksOfPlan(db, plan.id);
  dropStoredPlan(db, plan.id, today, reason);
  for (const task of tasks) dropStoredTask(db, task.id, today, reason);
  return { planId: plan.id, dropped: tasks.length };
};
