import { Refusal } from '../contract/refusal.ts';
import { ancestorsOf } from '../rules/plans/order.ts';
import { earliestRelease, pushed, workingDaysBetween } from '../rules/plans/reach.ts';
import type { ReadDb } from '../store/connection.ts';
import { planById, type StoredPlan } from '../store/plans.ts';
import { taskById } from '../store/tasks.ts';
import { newDays } from './plan-dates.ts';
import { calendarOf, type OpenTask, openTasks } from './plans.ts';

interface Slip {
  plan: StoredPlan;
  tasks: readonly OpenTask[];
  /** The day of every task when the release stays on its day, or is moved to the one asked for. */
  days: ReadonlyMap<number, string>;
  moves: { id: number; title: string; from: string; to: string }[];
  earliest: string;
  shortBy: number;
  canSqueeze: boolean;
}

function needTask(db: ReadDb, taskId: number) {
  const task = taskById(db, taskId);
  if (!task) throw new Refusal('NOT_FOUND', `There is no task ${taskId}.`, 'taskId');
  const plan = task.planId === null ? undefined : planById(db, task.planId);
  if (task.endedOn !== null || plan?.kind !== 'release')
    throw new Refusal('STEP_REFUSED', `'${task.title}' is no open task of a release plan.`, 'taskId');
  if (task.kind === 'on-sale')
    throw new Refusal(
      'STEP_REFUSED',
      `'${task.title}' has its day from the release plan; move the plan to another day instead.`,
      'taskId',
    );
  return { task, plan };
}

/**
 * What a slip brings about. Throws NOT_FOUND or STEP_REFUSED for a task that is not of a release, and STEP_REFUSED
 * where the day asked for lies before what the task needs.
 */
export function slipOf(
  { db, today }: { db: ReadDb; today: string },
  asked: { taskId: number; dueOn: string; moveTo?: string | undefined },
): Slip {
  const { task, plan } = needTask(db, asked.taskId);
  const calendar = calendarOf(db);
  const open = openTasks(db, plan);
  const tasks = open.map((one) => (one.key === task.id ? { ...one, notBefore: asked.dueOn } : one));
  const day = asked.moveTo ?? plan.day;
  const now = new Map(open.map(({ key, dueOn }) => [key, dueOn]));
  const start = asked.moveTo === undefined ? now : newDays({ db, today }, plan, day, tasks);
  const days = pushed(calendar, tasks, start, new Map([[task.id, asked.dueOn]]));
  const early = tasks
    .find(({ key }) => key === task.id)
    ?.needs.find((need) => (days.get(need) ?? '') > asked.dueOn);
  if (early !== undefined)
    throw new Refusal(
      'STEP_REFUSED',
      `'${task.title}' cannot be due on ${asked.dueOn}, before '${open.find(({ key }) => key === early)?.title}' (${days.get(early)}).`,
      'dueOn',
    );
  const beforeSale = ancestorsOf(tasks, ({ step }) => step.kind === 'on-sale');
  const earliest = earliestRelease(calendar, today, tasks);
  return {
    plan,
    tasks,
    days,
    moves: open.flatMap(({ key, title, dueOn }) => {
      const to = days.get(key) ?? dueOn;
      return to === dueOn ? [] : [{ id: key, title, from: dueOn, to }];
    }),
    earliest,
    shortBy: workingDaysBetween(calendar, day, earliest),
    canSqueeze: tasks.every(({ key }) => !beforeSale.has(key) || (days.get(key) ?? '') <= day),
  };
}
