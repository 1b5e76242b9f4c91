import type { OnixRow } from '../contract/onix.ts';
import { formName } from '../contract/terms.ts';
import { inChunks, readMessage } from '../exchange/onix/read.ts';
import { plainDescription } from '../exchange/onix/xhtml.ts';
import { type OnixPlan, planGroups } from '../records/onix-groups.ts';
import { readingHouse } from '../records/onix-house.ts';
import { type PlanRow, planRow } from '../records/onix-plan.ts';
import { fieldName } from '../rules/locks.ts';
import { shownValue } from '../rules/onix/compare.ts';
import type { Queries } from './context.ts';

function shown(row: OnixPlan['rows'][number]): OnixRow {
  const changes = Object.entries({ ...row.editionChanges, ...row.formatChanges }).map(([field, value]) => ({
    field: fieldName(field),
    from: shownValue(row.before[field]),
    to: shownValue(value),
    locked: row.lockedFields.includes(field),
  }));
  const { line, isbn, title, state, work, edition, why, notes, kept } = row;
  const form = row.form === '' ? '' : formName(row);
  return { row: row.row, line, isbn, title, form, state, work, edition, why, changes, notes, kept };
}

export const onixPreviewQueries = {
  'onix.preview': ({ db, files, step }, { file, places }) => {
    const rows: PlanRow[] = [];
    const seen = new Map<string, number>();
    const head = readMessage(
      inChunks((from, most) => files.part(file, from, most)),
      readingHouse(db),
      (product) => {
        rows.push(planRow(db, product, seen, plainDescription));
        step(rows.length, null, 'products read');
      },
    );
    const plan = planGroups(db, rows, places);
    return {
      ...head,
      products: rows.length,
      counts: plan.counts,
      rows: plan.rows.map(shown),
      works: plan.works,
    };
  },
} satisfies Queries<'onix.preview'>;
