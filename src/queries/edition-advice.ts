import { editionAdvice } from '../records/edition-advice.ts';
import { ADVICE_RULES } from '../rules/edition-advice/index.ts';
import { sourceText } from '../rules/edition-advice/sources.ts';
import { adviceKeptWith } from '../store/edition-advice.ts';
import type { Queries } from './context.ts';

/** What changed, in words; a change that only another version knows goes by its own name. */
const titleOf = (change: string) => ADVICE_RULES.find((rule) => rule.change === change)?.label ?? change;

export const editionAdviceQueries = {
  'editions.adviceRules': () => ({
    rules: ADVICE_RULES.map(({ sources, concerns, ...rule }) => ({
      ...rule,
      concerns: [...concerns],
      source: sourceText(sources),
    })),
  }),

  'editions.advise': ({ db }, { editionId, stated }) => editionAdvice(db, editionId, stated),

  'editions.keptAdvice': (context, { editionId, asOf }) => ({
    kept: adviceKeptWith(context.db, editionId, asOf ?? context.today).map((kept) => ({
      ...kept,
      lines: kept.lines.map(({ change, ...line }) => ({ ...line, title: titleOf(change) })),
    })),
  }),
} satisfies Queries<'editions.adviceRules' | 'editions.advise' | 'editions.keptAdvice'>;
