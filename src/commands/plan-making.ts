import { Refusal } from '../contract/refusal.ts';
import { formName, madeOf } from '../contract/terms.ts';
import type { PlanListing, PlanTask } from '../rules/plans/types.ts';
import { type WorkCalendar, workCalendar } from '../rules/working-days.ts';
import type { ReadDb, WriteDb } from '../store/connection.ts';
import {
  editionOfPlan,
  insertPlan,
  type PlanKind,
  type PlanListingRow,
  type PlannedEdition,
  planInForce,
} from '../store/plans.ts';
import { readSettings } from '../store/settings.ts';
import { insertNeed, insertTask } from '../store/tasks.ts';

/** The working days by the settings of this catalogue. */
export function calendarOf(db: ReadDb): WorkCalendar {
  return workCalendar(readSettings(db));
}

/** The edition, or NOT_FOUND. */
export function plannedEdition(db: ReadDb, id: number): PlannedEdition {
  const edition = editionOfPlan(db, id);
  if (!edition) throw new Refusal('NOT_FOUND', `There is no edition ${id}.`, 'editionId');
  return edition;
}

/** Throws ALREADY_EXISTS while a plan of the kind is in force for the edition. */
export function refuseSecondPlan(db: ReadDb, editionId: number, kind: PlanKind, label: string): void {
  const plan = planInForce(db, editionId, kind);
  if (plan)
    throw new Refusal(
      'ALREADY_EXISTS',
      `A ${kind} plan for ${label} is in force (day ${plan.day}); move that plan to another day, or drop it first.`,
      'editionId',
    );
}

/** Throws BAD_INPUT for a day that has passed: a plan is about what is to come. */
export function refusePastDay(day: string, today: string): void {
  if (day < today)
    throw new Refusal('BAD_INPUT', `${day} has passed; choose today (${today}) or a later day.`, 'day');
}

/** A stored listing as the rules of plans see it. */
export function planListing(row: PlanListingRow): PlanListing {
  return {
    id: row.id,
    standing: row.standing,
    lastStepOn: row.lastStepOn,
    returnable: row.returns !== null && row.returns !== 'N',
    formatId: row.formatId,
    formatName: formName({ ...row, largePrint: row.largePrint === 1 }),
    made: madeOf(row.form),
    channelId: row.channelId,
    channelName: row.channelName,
    leadDays: row.leadDays,
    removalDays: row.removalDays,
    proof: row.proof,
  };
}

/** Writes a plan with its tasks and what each task needs; answers the plan's id and how many tasks it has. */
export function storePlan(
  db: WriteDb,
  edition: PlannedEdition,
  plan: { kind: PlanKind; day: string; madeOn: string },
  tasks: readonly PlanTask[],
): { planId: number; tasks: number } {
  const planId = insertPlan(db, { editionId: edition.id, ...plan });
  const stored = tasks.map((task) => ({
    ...task,
    id: insertTask(db, { ...task, planId, workId: edition.workId, editionId: edition.id }),
  }));
  const ids = new Map(stored.map((task) => [task.key, task.id]));
  for (const task of stored) {
    const inPlan = task.needs.map((key) => ids.get(key)).filter((id) => id !== undefined);
    for (const needsId of [...inPlan, ...task.needsTasks]) insertNeed(db, task.id, needsId);
  }
  return { planId, tasks: tasks.length };
}
