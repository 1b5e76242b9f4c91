import { type PlanStep, planSteps as stepsShape } from '../contract/plan-templates.ts';
import type { PlanVersion } from '../contract/templates.ts';
import { formName, madeOf } from '../contract/terms.ts';
import { DEFAULT_STEPS } from '../rules/plans/default-templates.ts';
import type { Dated, PlanListing } from '../rules/plans/types.ts';
import { type WorkCalendar, workCalendar } from '../rules/working-days.ts';
import type { ReadDb } from '../store/connection.ts';
import { currentSteps, stepsOfPlan, stepVersions } from '../store/plan-templates.ts';
import { openTasksOfPlan, type PlanKind, type PlanListingRow, type StoredPlan } from '../store/plans.ts';
import { readSettings } from '../store/settings.ts';

/** The working days by the settings of this catalogue. */
export function calendarOf(db: ReadDb): WorkCalendar {
  return workCalendar(readSettings(db));
}

/** The steps that a plan made today would have. */
export function stepsInUse(db: ReadDb, kind: PlanKind): readonly PlanStep[] {
  return currentSteps(db, kind)?.steps ?? DEFAULT_STEPS[kind];
}

/** Every version of the steps of a plan, the one in use first, those as delivered last. */
export function planVersions(db: ReadDb, kind: PlanKind): PlanVersion[] {
  const saved = stepVersions(db, kind).map(({ id: _id, ...version }) => version);
  // Parsed like a saved version, so that both compare field by field.
  const steps = stepsShape.parse(DEFAULT_STEPS[kind]);
  return [...saved, { kind, version: 0, steps, note: '', savedOn: null, plans: 0 }];
}

/** A stored listing as the rules of plans see it. `printed` says whether a printed proof is wanted of what is printed. */
export function planListing(row: PlanListingRow, printed: boolean | null = null): PlanListing {
  const made = madeOf(row.form);
  return {
    id: row.id,
    standing: row.standing,
    lastStepOn: row.lastStepOn,
    returnable: row.returns !== null && row.returns !== 'N',
    formatId: row.formatId,
    formatName: formName({ ...row, largePrint: row.largePrint === 1 }),
    made,
    channelId: row.channelId,
    channelName: row.channelName,
    leadDays: row.leadDays,
    removalDays: row.removalDays,
    proof: printed === null || made !== 'print' ? row.proof : printed ? 'physical' : withoutPost(row.proof),
  };
}

/** A proof on the screen takes the place of a printed one that is not wanted. */
function withoutPost(proof: PlanListing['proof']): PlanListing['proof'] {
  return proof === 'physical' ? 'electronic' : proof;
}

/** An unfinished task of a plan, ready to be dated anew. */
export interface OpenTask extends Dated<number> {
  title: string;
  dueOn: string;
  kind: string;
}

/** The step a task was made from: by its name, else by its kind, for tasks made before steps had names. */
function stepOf(
  steps: readonly PlanStep[],
  task: { step: string | null; kind: string; proof: string | null },
) {
  const fits = (step: PlanStep) =>
    step.kind === task.kind && (step.proof.length === 0 || step.proof.some((proof) => proof === task.proof));
  return steps.find(({ key }) => key === task.step) ?? steps.find(fits);
}

/** What no step tells about is done up to the day of its plan. */
function lone(kind: PlanKind, title: string): PlanStep {
  const at =
    kind === 'release'
      ? ({ side: 'before', anchor: 'release' } as const)
      : ({ side: 'after', anchor: 'start' } as const);
  const rest = { note: '', scope: 'edition', made: [], proof: [], days: 0, needs: [], on: true } as const;
  return stepsShape.element.parse({ key: 'own', kind: 'own', title, ...rest, ...at });
}

/** The steps that a plan was made from. */
export function planSteps(db: ReadDb, plan: Pick<StoredPlan, 'id' | 'kind'>): readonly PlanStep[] {
  return stepsOfPlan(db, plan.id)?.steps ?? DEFAULT_STEPS[plan.kind];
}

/** The unfinished tasks of a plan with their steps and their order. */
export function openTasks(db: ReadDb, plan: StoredPlan): OpenTask[] {
  const steps = planSteps(db, plan);
  return openTasksOfPlan(db, plan.id).map((row) => {
    const proof =
      row.proof === null || row.form === null || plan.printedProof === null || madeOf(row.form) !== 'print'
        ? row.proof
        : plan.printedProof === 1
          ? 'physical'
          : withoutPost(row.proof);
    const listing =
      row.listingId === null || row.standing === null || proof === null
        ? null
        : {
            id: row.listingId,
            standing: row.standing,
            lastStepOn: row.lastStepOn,
            leadDays: row.leadDays ?? 0,
            removalDays: row.removalDays ?? 0,
            proof,
          };
    return {
      key: row.id,
      kind: row.kind,
      title: row.title,
      dueOn: row.dueOn,
      step: stepOf(steps, { step: row.step, kind: row.kind, proof }) ?? lone(plan.kind, row.title),
      listing,
      needs: JSON.parse(row.needs) as number[],
      awaitedDue: row.awaitedDue,
    };
  });
}
