import type { PlanListingRow } from '../store/plans.ts';

const BEFORE_LIVE = ['planned', 'committed', 'proofing'];

/**
 * The listings that a release brings on sale: of formats not yet live, not gone themselves, and not on a closed
 * channel that they were never sent to.
 */
export function toRelease(rows: readonly PlanListingRow[]): PlanListingRow[] {
  return rows.filter(
    (row) =>
      BEFORE_LIVE.includes(row.formatStanding) &&
      row.standing !== 'gone' &&
      (row.closedOn === null || row.standing !== 'unsent'),
  );
}
