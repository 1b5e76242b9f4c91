import type { EditionChange, TextExtent } from '../../../../src/contract/edition-advice.ts';
import type { Edition } from '../../../../src/contract/editions.ts';
import type { InputOf, OutputOf } from '../../../../src/contract/index.ts';
import { FORM_DETAILS, formName, madeOf, PRODUCT_FORMS } from '../../../../src/contract/terms.ts';

export type Advice = OutputOf<'editions.advise'>;
export type AdviceRule = OutputOf<'editions.adviceRules'>['rules'][number];
type Stated = NonNullable<InputOf<'editions.advise'>['stated']>;

/** A product form that could come out beside those there are. */
export interface FurtherForm {
  name: string;
  form: string;
  formDetail: string | null;
  largePrint: boolean;
}

/** What is being said of the change. */
export interface AdviceDraft {
  text: TextExtent | null;
  /** Ticked changes, with the formats they concern. */
  changes: { change: EditionChange; formatIds: number[] }[];
  added: FurtherForm[];
  wish: 'new' | 'keep' | null;
  note: string;
}

export const FIRST_DRAFT: AdviceDraft = { text: null, changes: [], added: [], wish: null, note: '' };

/** The formats of an edition that a change can bear on. */
export function concerned(edition: Edition, rule: Pick<AdviceRule, 'concerns'>): Edition['formats'] {
  return edition.formats.filter(
    (format) => format.standing !== 'cancelled' && rule.concerns.includes(madeOf(format.form)),
  );
}

/** The draft as the operations take it; a change that concerns every format it can names none. */
export function statedOf(edition: Edition, draft: AdviceDraft, rules: readonly AdviceRule[]): Stated {
  const all = (change: EditionChange) => {
    const rule = rules.find((one) => one.change === change);
    return rule ? concerned(edition, rule).length : 0;
  };
  return {
    text: draft.text,
    changes: draft.changes
      .filter(({ formatIds }) => formatIds.length > 0)
      .map(({ change, formatIds }) => ({
        change,
        formatIds: formatIds.length === all(change) ? [] : formatIds,
      })),
    added: draft.added.map(({ form, formDetail, largePrint }) => ({ form, formDetail, largePrint })),
    wish: draft.wish,
    note: draft.note,
  };
}

/** The product forms an edition does not come out in yet. */
export function furtherForms(edition: Edition): FurtherForm[] {
  const running = edition.formats.filter((format) => format.standing !== 'cancelled');
  const plain = PRODUCT_FORMS.flatMap(({ code, made }) => {
    const details = FORM_DETAILS.filter((detail) => made === 'e-book' && detail.made === made);
    const each = details.length === 0 ? [null] : details.map((detail) => detail.code);
    return each.map((formDetail) => ({ form: code as string, formDetail, largePrint: false }));
  });
  const large = [{ form: 'BC', formDetail: null, largePrint: true }];
  return [...plain, ...large]
    .filter(
      (further) =>
        !running.some(
          (format) =>
            format.form === further.form &&
            (further.formDetail === null || format.formDetail === further.formDetail) &&
            format.largePrint === further.largePrint,
        ),
    )
    .map((further) => ({ ...further, name: formName(further) }));
}

/** What can be ticked: rules that bear on some format and are not read from the records. */
export function askedRules(
  edition: Edition,
  rules: readonly AdviceRule[],
  mode: Advice['mode'],
): AdviceRule[] {
  return rules.filter(
    (rule) => rule.stated && (mode === 'pondering' || !rule.recorded) && concerned(edition, rule).length > 0,
  );
}
