import { Refusal } from '../contract/refusal.ts';
import { formName } from '../contract/terms.ts';
import { editionFacts } from '../records/editions.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import { editionsOfWork } from '../store/editions.ts';
import { type ListedFormat, worksPage } from '../store/work-list.ts';
import type { Queries } from './context.ts';

/** A listed format as lists show it. */
export function listedFacts(row: ListedFormat) {
  return {
    workId: row.workId,
    editionLabel: editionLabel(row),
    name: formName({ ...row, largePrint: row.largePrint === 1 }),
    standing: row.standing,
    hyphenated: shownIsbn(row.isbn13),
  };
}

export const workQueries = {
  'works.get': (context, { id, asOf }) => {
    const db = context.on(asOf);
    const stored = db.one<{ id: number; title: string; note: string }>(
      'SELECT id, title, note FROM work WHERE id = ?',
      id,
    );
    if (!stored) {
      const day = asOf === undefined ? '' : ` as of ${asOf}`;
      throw new Refusal('NOT_FOUND', `There is no work ${id}${day}; the Catalogue screen lists them.`, 'id');
    }
    return { ...stored, editions: editionFacts(db, editionsOfWork(db, id)) };
  },

  'works.list': (context, { asOf, ...filter }) => {
    const page = worksPage(context.on(asOf), { ...filter, past: asOf !== undefined });
    const byWork = Map.groupBy(page.formats, (row) => row.workId);
    const works = page.works.map((work) => ({
      ...work,
      formats: (byWork.get(work.id) ?? []).map((row) => ({
        id: row.id,
        editionId: row.editionId,
        ...listedFacts(row),
      })),
    }));
    return { works, total: page.total };
  },
} satisfies Queries<'works.get' | 'works.list'>;
