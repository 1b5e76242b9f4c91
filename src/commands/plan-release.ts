import { Refusal } from '../contract/refusal.ts';
import { calendarOf, planListing, stepsInUse } from '../records/plans.ts';
import { toRelease } from '../records/release.ts';
import { editionLabel } from '../rules/labels.ts';
import { releaseTasks } from '../rules/plans/release.ts';
import type { WriteDb } from '../store/connection.ts';
import { dateHeldFast, listingsOfEdition, type PlanListingRow, setReleaseDay } from '../store/plans.ts';
import type { CommandHandler } from './context.ts';
import { plannedEdition, refusePastDay, refuseSecondPlan, storePlan } from './plan-making.ts';

/** Throws NOT_READY with the reason when there is nothing to release, or a format is without a number. */
function refuseUnready(
  rows: readonly PlanListingRow[],
  carried: readonly PlanListingRow[],
  label: string,
): void {
  if (rows.length === 0)
    throw new Refusal(
      'NOT_READY',
      `No format of ${label} is listed on a channel yet; list its formats first.`,
      'editionId',
    );
  if (carried.length === 0)
    throw new Refusal(
      'NOT_READY',
      `Nothing of ${label} is left to release: its listed formats are on sale, retired or cancelled, or their channels are closed.`,
      'editionId',
    );
  const bare = carried.filter((row) => row.isbn13 === null).map((row) => planListing(row).formatName);
  if (bare.length > 0)
    throw new Refusal(
      'NOT_READY',
      `${[...new Set(bare)].join(' and ')} of ${label} ${new Set(bare).size > 1 ? 'have' : 'has'} no number yet; take one first.`,
      'editionId',
    );
}

/**
 * Sets the one day on what a release carries. Throws the given code when a channel that was sent a format
 * locks its dates on another day.
 */
export function setDayOf(
  db: WriteDb,
  carried: readonly PlanListingRow[],
  { day, onSale }: { day: string; onSale: string | null },
  code: 'NOT_READY' | 'STEP_REFUSED',
): void {
  const formats = [...new Set(carried.map((row) => row.formatId))];
  const held = dateHeldFast(db, formats, day, onSale);
  if (held)
    throw new Refusal(
      code,
      held.heldOn === null
        ? `${held.channelName} locks the dates of what it was sent, and it was sent without one; change what that channel locks first.`
        : `${held.channelName} locks the dates of what it was sent, on ${held.heldOn}; choose that day, or change what that channel locks first.`,
      'day',
    );
  setReleaseDay(
    db,
    day,
    onSale,
    formats,
    carried.map((row) => row.id),
  );
}

/** Plans a release: dated tasks, and the same publication and on-sale day on every format and listing it carries. */
export const planRelease: CommandHandler<'plans.release'> = ({ db, today }, input) => {
  const { day, printedProof, onSaleFixed } = input;
  const edition = plannedEdition(db, input.editionId);
  const label = editionLabel(edition);
  refusePastDay(day, today);
  refuseSecondPlan(db, edition.id, 'release', label);
  const rows = listingsOfEdition(db, edition.id);
  const carried = toRelease(rows);
  refuseUnready(rows, carried, label);
  setDayOf(db, carried, { day, onSale: onSaleFixed ? day : null }, 'NOT_READY');
  const tasks = releaseTasks({
    calendar: calendarOf(db),
    today,
    day,
    listings: carried.map((row) => planListing(row, printedProof)),
    steps: stepsInUse(db, 'release'),
    edition: label,
  });
  return storePlan(db, edition, { kind: 'release', day, madeOn: today, printedProof, onSaleFixed }, tasks);
};
