import { OWN_KIND } from '../contract/plan-templates.ts';
import { Refusal } from '../contract/refusal.ts';
import { calendarOf } from '../records/plans.ts';
import { isThere, movesTo } from '../rules/plans/kinds.ts';
import { workingDayFrom } from '../rules/working-days.ts';
import type { ReadDb, WriteDb } from '../store/connection.ts';
import {
  dateStoredTask,
  dropStoredTask,
  finishStoredTask,
  insertTask,
  type StoredTask,
  standingOfListing,
  taskById,
  unfinishedDependents,
  unfinishedNeeds,
  waitStoredTask,
} from '../store/tasks.ts';
import type { CommandContext, Commands } from './context.ts';
import { moveListing } from './listing-steps.ts';

const quoted = (tasks: readonly StoredTask[]) => tasks.map((task) => `'${task.title}'`).join(', ');

/** The task, while it has not ended; throws NOT_FOUND or STEP_REFUSED. */
function unfinishedTask(db: ReadDb, id: number): StoredTask {
  const task = taskById(db, id);
  if (!task) throw new Refusal('NOT_FOUND', `There is no task ${id}.`, 'id');
  if (task.endedOn !== null)
    throw new Refusal(
      'STEP_REFUSED',
      `'${task.title}' ended on ${task.endedOn} (${task.standing}); make a new task if there is more to do.`,
      'id',
    );
  return task;
}

/** Takes the task's listing where the task brings it; a listing that is there or further stays. */
function moveWithTask(context: CommandContext, task: StoredTask, on: string, note: string) {
  const to = movesTo(task.kind);
  const standing = task.listingId === null ? undefined : standingOfListing(context.db, task.listingId);
  if (to === null || task.listingId === null || standing === undefined || isThere(standing, to)) return [];
  const { listingId, standing: reached } = moveListing(context, { id: task.listingId, to, on, note });
  return [{ listingId, standing: reached }];
}

/** Days for the tasks that come after a task and would be due before it on its new day; they fall on working days. */
export function pushedDays(db: ReadDb, task: StoredTask, dueOn: string): Map<StoredTask, string> {
  const pushDay = workingDayFrom(calendarOf(db), dueOn);
  const pushed = new Map<number, StoredTask>();
  const queue = [{ id: task.id, dueOn }];
  for (let at = queue.shift(); at; at = queue.shift())
    for (const dependent of unfinishedDependents(db, at.id))
      if (dependent.dueOn < at.dueOn && !pushed.has(dependent.id)) {
        pushed.set(dependent.id, dependent);
        queue.push({ id: dependent.id, dueOn: pushDay });
      }
  return new Map([...pushed.values()].map((dependent) => [dependent, pushDay]));
}

/**
 * Gives a task another day. It stays after what it needs, and takes along what comes after it; the one day on
 * which a plan puts everything on sale moves with the plan only. Throws STEP_REFUSED.
 */
function redate(db: WriteDb, task: StoredTask, dueOn: string): void {
  const early = unfinishedNeeds(db, task.id).filter((need) => need.dueOn > dueOn);
  if (early.length > 0)
    throw new Refusal(
      'STEP_REFUSED',
      `'${task.title}' cannot be due on ${dueOn}, before ${quoted(early)}; give those an earlier day first.`,
      'dueOn',
    );
  const days = new Map([[task, dueOn], ...pushedDays(db, task, dueOn)]);
  const fixed = [...days.keys()].find(
    (entry) => entry.kind === 'on-sale' && entry.planId !== null && entry.dueOn !== days.get(entry),
  );
  if (fixed)
    throw new Refusal(
      'STEP_REFUSED',
      `'${fixed.title}' has its day (${fixed.dueOn}) from the release plan, the same everywhere; move the plan to another day instead.`,
      'dueOn',
    );
  for (const [entry, day] of days) dateStoredTask(db, entry.id, day);
}

export const taskCommands = {
  'tasks.create': ({ db }, { title, dueOn, workId, note }) => {
    if (workId !== undefined && !db.one('SELECT 1 FROM work WHERE id = ?', workId))
      throw new Refusal('NOT_FOUND', `There is no work ${workId}.`, 'workId');
    return { taskId: insertTask(db, { kind: OWN_KIND, title, dueOn, note, workId: workId ?? null }) };
  },

  'tasks.finish': (context, { id, on, note }) => {
    const { db, today } = context;
    const task = unfinishedTask(db, id);
    const day = on ?? today;
    if (day > today)
      throw new Refusal(
        'STEP_REFUSED',
        `${day} is still to come; finish a task on the day it is done.`,
        'on',
      );
    const needs = unfinishedNeeds(db, task.id);
    if (needs.length > 0)
      throw new Refusal(
        'STEP_REFUSED',
        `'${task.title}' comes after ${quoted(needs)}; finish what comes first.`,
        'id',
      );
    finishStoredTask(db, task, day, note);
    return { taskId: task.id, moved: moveWithTask(context, task, day, note) };
  },

  'tasks.wait': ({ db }, { id, waitingFor, dueOn }) => {
    const task = unfinishedTask(db, id);
    waitStoredTask(db, task.id, waitingFor);
    if (dueOn !== undefined) redate(db, task, dueOn);
    return { taskId: task.id };
  },

  'tasks.redate': ({ db }, { id, dueOn }) => {
    const task = unfinishedTask(db, id);
    redate(db, task, dueOn);
    return { taskId: task.id };
  },

  'tasks.drop': ({ db, today }, { id, reason }) => {
    const task = unfinishedTask(db, id);
    dropStoredTask(db, task.id, today, reason);
    return { taskId: task.id };
  },
} satisfies Commands<'tasks.create' | 'tasks.finish' | 'tasks.wait' | 'tasks.redate' | 'tasks.drop'>;
