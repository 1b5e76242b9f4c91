import type { Format } from '../../../../src/contract/formats.ts';
import { CASE_KINDS, FORM_DETAILS, madeOf, PRODUCT_FORMS } from '../../../../src/contract/terms.ts';
import { Checkbox, Select } from '../../../ui/index.ts';
import { CodeInput } from '../parts/code-input.tsx';
import { fieldHelp } from '../parts/field-help.tsx';
import type { ErrorOf } from '../parts/refusals.ts';
import { changeForm, type FormatForm } from './draft.ts';
import { lockReason, UnlessLocked } from './locks.tsx';

export interface FormatInputsProps {
  form: FormatForm;
  errorOf: ErrorOf;
  /** The format that is edited, for its locks; left out for a new one. */
  format?: Format | undefined;
}

const NO_CASE = 'not decided';
const CASES = [NO_CASE, ...CASE_KINDS].map((value) => ({ value, label: value }));

function DetailInput({ form, errorOf, format }: FormatInputsProps) {
  const { draft, set } = form;
  const made = madeOf(draft.form);
  if (draft.formDetail === null && lockReason(format, 'formDetail') !== undefined) return null;
  return (
    <UnlessLocked
      format={format}
      field="formDetail"
      value={FORM_DETAILS.find(({ code }) => code === draft.formDetail)?.name ?? draft.formDetail}
    >
      <CodeInput
        label={made === 'print' ? 'Detail of the binding' : 'File format'}
        value={draft.formDetail ?? ''}
        onChange={(code) => set('formDetail', code === '' ? null : code)}
        choices={FORM_DETAILS.filter((detail) => detail.made === made)}
        other="Another code (ONIX List 175)"
        none={made === 'print' ? 'none' : 'not decided'}
        upperCase
        error={errorOf('formDetail')}
        name="formDetail"
      />
    </UnlessLocked>
  );
}

/** What a format is: its product form and what tells it apart. These lock when it is first sent. */
export function FormInputs({ form, errorOf, format }: FormatInputsProps) {
  const { draft, set } = form;
  const name = PRODUCT_FORMS.find(({ code }) => code === draft.form)?.name ?? draft.form;
  return (
    <>
      <div className="columns">
        <UnlessLocked format={format} field="form" value={name}>
          <CodeInput
            label="Product form"
            value={draft.form}
            onChange={(code) => changeForm(form, code)}
            choices={PRODUCT_FORMS}
            other="Another code (ONIX List 150)"
            placeholder="Choose a form"
            help={fieldHelp('form')}
            upperCase
            required
            error={errorOf('form')}
            name="form"
          />
        </UnlessLocked>
        {draft.form === 'BB' ? (
          <UnlessLocked format={format} field="caseKind" value={draft.caseKind}>
            <Select
              label="Kind of case"
              value={draft.caseKind ?? NO_CASE}
              onChange={(kind) => set('caseKind', CASE_KINDS.find((one) => one === kind) ?? null)}
              choices={CASES}
              error={errorOf('caseKind')}
              name="caseKind"
            />
          </UnlessLocked>
        ) : null}
        {draft.form === '' ? null : <DetailInput form={form} errorOf={errorOf} format={format} />}
      </div>
      {madeOf(draft.form) === 'print' && draft.form !== '' ? (
        <UnlessLocked format={format} field="largePrint" value={draft.largePrint ? 'yes' : 'no'}>
          <Checkbox
            label="Large print"
            checked={draft.largePrint}
            onChange={(largePrint) => set('largePrint', largePrint)}
            help="A large-print format takes a number of its own."
            error={errorOf('largePrint')}
            name="largePrint"
          />
        </UnlessLocked>
      ) : null}
    </>
  );
}
