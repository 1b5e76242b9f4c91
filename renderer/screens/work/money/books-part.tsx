import { CASE_KINDS, INTERIOR_COLOURS, PRODUCT_FORMS } from '../../../../src/contract/terms.ts';
import { DateInput, LengthInput, NumberInput, Select } from '../../../ui/index.ts';
import type { ErrorOf } from '../parts/refusals.ts';
import type { RecordForm } from '../parts/use-record.ts';
import { useWork } from '../parts/work-context.tsx';
import type { CardDraft } from './card-draft.ts';

const ANY = 'any';
const anyOr = <T extends string>(value: T, any: T | null): T | null => (value === ANY ? any : value);

const FORMS = [
  { value: ANY, label: 'Any printed form' },
  ...PRODUCT_FORMS.filter(({ made }) => made === 'print').map(({ code, name }) => ({
    value: code as string,
    label: name,
  })),
];
const CASES = [ANY, ...CASE_KINDS].map((value) => ({ value, label: value === ANY ? 'Any kind' : value }));
const INKS = [ANY, ...INTERIOR_COLOURS].map((value) => ({ value, label: value === ANY ? 'Any' : value }));

/** What each part of the form of a card takes. */
export interface CardPart {
  form: RecordForm<CardDraft>;
  errorOf: ErrorOf;
}

/** Which books a card is for: what they are made as, and how large and how thick they may be. */
export function BooksPart({ form, errorOf }: CardPart) {
  const { draft, set } = form;
  return (
    <fieldset className="field">
      <legend className="field-label">Which books it is for</legend>
      <p className="field-help">Of several cards that fit a book, the closest is taken.</p>
      <div className="columns">
        <Select
          label="Form"
          value={draft.form ?? ANY}
          onChange={(form) => set('form', anyOr(form, null))}
          choices={FORMS}
          name="form"
        />
        {draft.form === 'BB' ? (
          <Select
            label="Kind of case"
            value={draft.caseKind ?? ANY}
            onChange={(kind) => set('caseKind', CASE_KINDS.find((one) => one === kind) ?? null)}
            choices={CASES}
            error={errorOf('caseKind')}
            name="caseKind"
          />
        ) : null}
        <Select
          label="Interior colour"
          value={draft.interiorColour ?? ANY}
          onChange={(ink) => set('interiorColour', INTERIOR_COLOURS.find((one) => one === ink) ?? null)}
          choices={INKS}
          name="interiorColour"
        />
        <ReachInputs form={form} errorOf={errorOf} />
      </div>
    </fieldset>
  );
}

function ReachInputs({ form, errorOf }: CardPart) {
  const { draft, set } = form;
  const { settings } = useWork();
  return (
    <>
      <LengthInput
        label="Widest trim"
        unit={settings.lengthUnit}
        value={draft.trimWidthUm ?? undefined}
        onChange={(um) => set('trimWidthUm', um ?? null)}
        error={errorOf('trimWidthUm')}
        name="trimWidthUm"
      />
      <LengthInput
        label="Highest trim"
        unit={settings.lengthUnit}
        value={draft.trimHeightUm ?? undefined}
        onChange={(um) => set('trimHeightUm', um ?? null)}
        help="Left empty, it holds for every trim."
        error={errorOf('trimHeightUm')}
        name="trimHeightUm"
      />
      <NumberInput
        label="From pages"
        min={1}
        max={20_000}
        value={draft.pagesFrom}
        onChange={(pages) => set('pagesFrom', pages)}
        error={errorOf('pagesFrom')}
        name="pagesFrom"
      />
      <NumberInput
        label="Up to pages"
        min={1}
        max={20_000}
        value={draft.pagesTo}
        onChange={(pages) => set('pagesTo', pages)}
        error={errorOf('pagesTo')}
        name="pagesTo"
      />
      <DateInput
        label="Holds from"
        value={draft.validFrom ?? ''}
        onChange={(day) => set('validFrom', day === '' ? null : day)}
        help="For a new price list; the card before it holds until then."
        error={errorOf('validFrom')}
        name="validFrom"
      />
    </>
  );
}
