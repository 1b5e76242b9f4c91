import { Refusal } from '../contract/refusal.ts';
import { calendarOf, planListing, stepsInUse } from '../records/plans.ts';
import { editionLabel } from '../rules/labels.ts';
import { type AwaitedSale, retirementTasks } from '../rules/plans/retirement.ts';
import { later } from '../rules/plans/retirement-days.ts';
import type { ReadDb } from '../store/connection.ts';
import {
  listingsOfEdition,
  type PlanListingRow,
  planInForce,
  replacingEdition,
  salesAhead,
} from '../store/plans.ts';
import type { CommandHandler } from './context.ts';
import { plannedEdition, refusePastDay, refuseSecondPlan, storePlan } from './plan-making.ts';

/** What is known of the edition that takes this one's place. */
interface Replacement {
  label: string;
  sells: boolean;
  /** Day of its release plan in force, while anything of it is still to go on sale. */
  releaseDay: string | null;
  sales: AwaitedSale[];
}

function replacementOf(db: ReadDb, editionId: number): Replacement | null {
  const edition = replacingEdition(db, editionId);
  if (!edition) return null;
  const plan = planInForce(db, edition.id, 'release');
  const sales = plan ? salesAhead(db, plan.id) : [];
  return {
    label: editionLabel(edition),
    sells: listingsOfEdition(db, edition.id).some((row) => row.standing === 'selling'),
    releaseDay: plan && sales.length > 0 ? plan.day : null,
    sales,
  };
}

/** Throws NOT_READY with the reason when nothing of the edition is on sale. */
function refuseNothingToRetire(rows: readonly PlanListingRow[], label: string): void {
  if (rows.some((row) => row.standing === 'selling' || row.standing === 'leaving')) return;
  const reason =
    rows.length === 0
      ? 'it is listed nowhere'
      : rows.every((row) => row.standing === 'gone')
        ? 'every listing is gone already'
        : rows.every((row) => row.standing === 'unsent')
          ? 'no listing was ever sent; cancel its formats instead'
          : 'no listing is on sale; take back what was sent and cancel its formats instead';
  throw new Refusal('NOT_READY', `Nothing of ${label} can be taken off sale: ${reason}.`, 'editionId');
}

/** Throws NOT_READY when the old edition would be asked off before anything of the new one sells. */
function refuseGap(replacement: Replacement, day: string, label: string): void {
  if (replacement.sells || (replacement.releaseDay !== null && day >= replacement.releaseDay)) return;
  const mend =
    replacement.releaseDay === null
      ? 'plan its release first, or say that removal is to be asked before the replacement sells'
      : `choose its release day ${replacement.releaseDay} or later, or say that removal is to be asked before the replacement sells`;
  throw new Refusal(
    'NOT_READY',
    `${replacement.label}, which replaces ${label}, is not on sale anywhere yet: ${mend}.`,
    'day',
  );
}

/** Plans a retirement; asking waits for the sales of the replacing edition unless told otherwise. */
export const planRetirement: CommandHandler<'plans.retirement'> = ({ db, today }, input) => {
  const edition = plannedEdition(db, input.editionId);
  const label = editionLabel(edition);
  refuseSecondPlan(db, edition.id, 'retirement', label);
  const rows = listingsOfEdition(db, edition.id);
  refuseNothingToRetire(rows, label);
  const replacement = replacementOf(db, edition.id);
  const day = input.day ?? later(today, replacement?.releaseDay ?? null);
  refusePastDay(day, today);
  if (replacement && !input.beforeReplacement) refuseGap(replacement, day, label);
  const tasks = retirementTasks({
    calendar: calendarOf(db),
    today,
    day,
    listings: rows.map((row) => planListing(row)),
    awaited: input.beforeReplacement ? [] : (replacement?.sales ?? []),
    replacementSells: replacement?.sells ?? false,
    replacement: replacement?.label ?? null,
    steps: stepsInUse(db, 'retirement'),
    edition: label,
  });
  return storePlan(db, edition, { kind: 'retirement', day, madeOn: today }, tasks);
};
