import type { ComparedSide } from '../contract/proof-checks/compare.ts';
import type { PdfFacts } from '../contract/proof-checks/facts.ts';
import { Refusal } from '../contract/refusal.ts';
import { formName } from '../contract/terms.ts';
import { keptFacts, needCheck, picturedPages } from '../records/proof-checks.ts';
import { editionLabel } from '../rules/labels.ts';
import { comparePages, PAGE_STATES } from '../rules/proof-check/pages.ts';
import type { ReadDb } from '../store/connection.ts';
import { editionsByIds } from '../store/editions.ts';
import { formatsByIds } from '../store/formats.ts';
import { interiorsOfWork } from '../store/proof-checks.ts';
import type { Queries } from './context.ts';

/** Interiors offered for comparison. */
const MOST_OFFERED = 100;

/** 'Paperback, The Salt Almanac, 2nd edition' by format. */
function namesOf(db: ReadDb, formatIds: readonly number[]): Map<number, string> {
  const formats = [...formatsByIds(db, [...new Set(formatIds)]).values()];
  const ids = [...new Set(formats.map((format) => format.editionId))];
  const editions = new Map(editionsByIds(db, ids).map((edition) => [edition.id, editionLabel(edition)]));
  return new Map(
    formats.map((format) => [format.id, `${formName(format)}, ${editions.get(format.editionId) ?? ''}`]),
  );
}

function sideOf(db: ReadDb, checkId: number, field: string): { side: ComparedSide; facts: PdfFacts } {
  const stored = needCheck(db, checkId, field);
  const { facts } = keptFacts(db, stored);
  if (facts.of !== 'pdf')
    throw new Refusal('BAD_INPUT', `${stored.fileName} is no PDF, so its pages cannot be compared.`, field);
  const side = {
    checkId,
    fileName: stored.fileName,
    checkedOn: stored.checkedOn,
    of: namesOf(db, [stored.formatId]).get(stored.formatId) ?? '',
    pages: facts.pages.length,
    pictured: picturedPages(db, checkId, facts),
  };
  return { side, facts };
}

export const proofCompareQueries = {
  'proofChecks.comparable': ({ db }, { checkId }) => {
    const stored = needCheck(db, checkId);
    const offered = interiorsOfWork(db, stored.formatId, MOST_OFFERED).filter(
      (one) => one.checkId !== checkId,
    );
    const names = namesOf(
      db,
      offered.map((one) => one.formatId),
    );
    return { checks: offered.map(({ formatId, ...one }) => ({ ...one, of: names.get(formatId) ?? '' })) };
  },

  'proofChecks.compare': ({ db }, { beforeId, afterId }) => {
    const before = sideOf(db, beforeId, 'beforeId');
    const after = sideOf(db, afterId, 'afterId');
    const pairs = comparePages(before.facts.pages, after.facts.pages);
    const count = (state: (typeof PAGE_STATES)[number]) =>
      pairs.filter((pair) => pair.state === state).length;
    const counts = Object.fromEntries(PAGE_STATES.map((state) => [state, count(state)]));
    return {
      before: before.side,
      after: after.side,
      counts: counts as Record<(typeof PAGE_STATES)[number], number>,
      pairs,
    };
  },
} satisfies Queries<'proofChecks.comparable' | 'proofChecks.compare'>;
