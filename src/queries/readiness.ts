import { editionReadiness, wholeEdition } from '../records/readiness.ts';
import { type CopyrightFacts, copyrightPages, copyrightRemarks } from '../rules/copyright-page.ts';
import type { ReadDb } from '../store/connection.ts';
import { firstDayBefore } from '../store/editions.ts';
import { readSettings } from '../store/settings.ts';
import { currentText } from '../store/templates.ts';
import type { Queries } from './context.ts';

function factsOf(db: ReadDb, editionId: number): CopyrightFacts {
  const edition = wholeEdition(db, editionId);
  const formats = edition.formats.filter((format) => format.standing !== 'cancelled');
  return {
    edition: { ...edition, formats },
    publisher: readSettings(db).publisher,
    firstPublished: firstDayBefore(db, editionId),
    plannedDay: edition.plans.find((plan) => plan.kind === 'release')?.day ?? null,
  };
}

export const readinessQueries = {
  'editions.readiness': (context, { editionId, asOf }) => ({
    editionId,
    formats: editionReadiness(context.on(asOf), editionId),
  }),

  'editions.copyrightPage': ({ db }, { editionId }) => {
    const facts = factsOf(db, editionId);
    return {
      formats: copyrightPages(currentText(db, 'copyright page').body, facts),
      remarks: copyrightRemarks(facts),
    };
  },
} satisfies Queries<'editions.readiness' | 'editions.copyrightPage'>;
