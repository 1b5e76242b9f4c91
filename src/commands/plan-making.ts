import { Refusal } from '../contract/refusal.ts';
import { DEFAULT_STEPS } from '../rules/plans/default-templates.ts';
import type { PlanTask } from '../rules/plans/types.ts';
import type { ReadDb, WriteDb } from '../store/connection.ts';
import { currentSteps, insertSteps } from '../store/plan-templates.ts';
import {
  editionOfPlan,
  insertPlan,
  type NewPlan,
  type PlanKind,
  type PlannedEdition,
  planInForce,
} from '../store/plans.ts';
import { insertNeed, insertTask } from '../store/tasks.ts';

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

/**
 * The saved version of the steps in use, to be remembered by a plan. Where nothing was saved the steps as delivered
 * become a version first, so that a later program with other steps changes no plan that was made from these.
 */
function rememberedSteps(db: WriteDb, kind: PlanKind, today: string): number {
  const saved = currentSteps(db, kind);
  if (saved) return saved.id;
  return insertSteps(db, { kind, steps: DEFAULT_STEPS[kind], note: 'As delivered', savedOn: today }).id;
}

/** Writes a plan with its tasks and what each task needs; answers the plan's id and how many tasks it has. */
export function storePlan(
  db: WriteDb,
  edition: PlannedEdition,
  plan: Pick<NewPlan, 'kind' | 'day' | 'madeOn'> & Partial<Pick<NewPlan, 'printedProof' | 'onSaleFixed'>>,
  tasks: readonly PlanTask[],
): { planId: number; tasks: number } {
  const planId = insertPlan(db, {
    editionId: edition.id,
    templateId: rememberedSteps(db, plan.kind, plan.madeOn),
    printedProof: null,
    onSaleFixed: true,
    ...plan,
  });
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
