import { planVersions } from '../records/plans.ts';
import { currentTexts, textVersions } from '../store/templates.ts';
import type { Queries } from './context.ts';

export const templateQueries = {
  'templates.texts': ({ db }) => ({ texts: currentTexts(db) }),
  'templates.textVersions': ({ db }, { kind }) => ({ versions: textVersions(db, kind) }),
  'templates.planVersions': ({ db }, { kind }) => ({ versions: planVersions(db, kind) }),
} satisfies Queries<'templates.texts' | 'templates.textVersions' | 'templates.planVersions'>;
