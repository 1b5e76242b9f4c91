import type { ADVICE_GROUPS, AdviceVerdict, EditionChange } from '../../contract/edition-advice.ts';
import type { Made } from '../../contract/terms.ts';
import type { Source } from './sources.ts';

/** One rule of the table, as data. */
export interface AdviceRule {
  change: EditionChange;
  group: (typeof ADVICE_GROUPS)[number];
  /** What the user ticks. */
  label: string;
  /** Whether the user can tick it. */
  stated: boolean;
  /** Whether the records of two editions tell it, so that it is not asked where there are two. */
  recorded: boolean;
  scope: 'edition' | 'format';
  concerns: readonly Made[];
  /** A product beside the formats that takes the number in question; null where it is the formats themselves. */
  beside: string | null;
  verdict: AdviceVerdict;
  rule: string;
  sources: readonly Source[];
  weigh: string;
}

const ALL: readonly Made[] = ['print', 'e-book', 'audio'];

const RECORDED: ReadonlySet<EditionChange> = new Set([
  'reworked',
  'language',
  'credits',
  'narration',
  'title',
  'subtitle',
  'series',
  'imprint',
  'file-format',
  'binding',
  'trim-shaved',
  'trim',
  'interior-colour',
  'pages',
  'paper',
  'price',
  'channel',
  'data',
]);

type Given = Pick<AdviceRule, 'change' | 'label' | 'verdict' | 'rule' | 'sources' | 'weigh'> &
  Partial<AdviceRule>;

/** Rules of one group; what most of them share is left out of each. */
export function rulesOf(
  group: AdviceRule['group'],
  shared: Partial<AdviceRule>,
  given: readonly Given[],
): AdviceRule[] {
  return given.map((rule) => ({
    group,
    stated: true,
    recorded: RECORDED.has(rule.change),
    scope: 'edition',
    concerns: ALL,
    beside: null,
    ...shared,
    ...rule,
  }));
}
