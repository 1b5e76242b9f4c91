import type { Edition } from '../../../../src/contract/editions.ts';
import { CASE_KINDS, FORM_DETAILS, madeOf, PRODUCT_FORMS } from '../../../../src/contract/terms.ts';
import { Button, Checkbox, Field, Select } from '../../../ui/index.ts';
import { CodeInput } from '../parts/code-input.tsx';
import type { RecordForm } from '../parts/use-record.ts';
import { type AddedFormat, carryable, type NextDraft } from './next-edition-draft.ts';

const NO_CASE = 'not decided';

/** Formats of the old edition, each to be carried over or left. */
export function CarriedFormats({
  edition,
  form,
  error,
}: {
  edition: Edition;
  form: RecordForm<NextDraft>;
  error: string | undefined;
}) {
  const { carry } = form.draft;
  return (
    <Field label="Formats that come along" as="group" error={error}>
      {() => (
        <div className="radios">
          {carryable(edition).map((format) => (
            <Checkbox
              key={format.id}
              label={
                <>
                  {format.name} <span className="soft">· {format.standing}</span>
                </>
              }
              checked={carry.includes(format.id)}
              onChange={(on) =>
                form.set('carry', on ? [...carry, format.id] : carry.filter((id) => id !== format.id))
              }
            />
          ))}
        </div>
      )}
    </Field>
  );
}

function AddedRow({
  row,
  index,
  change,
  remove,
}: {
  row: AddedFormat;
  index: number;
  change: (part: Partial<AddedFormat>) => void;
  remove: () => void;
}) {
  const made = madeOf(row.form);
  const details = FORM_DETAILS.filter((detail) => detail.made === made && made !== 'print');
  return (
    <div className="added-format">
      <CodeInput
        label={`Added format ${index + 1}`}
        value={row.form}
        onChange={(form) => change({ form, formDetail: null, caseKind: null, largePrint: false })}
        choices={PRODUCT_FORMS}
        other="Another code (ONIX List 150)"
        placeholder="Choose a form"
        upperCase
      />
      {row.form === 'BB' ? (
        <Select
          label={`Kind of case of added format ${index + 1}`}
          value={row.caseKind ?? NO_CASE}
          onChange={(kind) => change({ caseKind: CASE_KINDS.find((one) => one === kind) ?? null })}
          choices={[NO_CASE, ...CASE_KINDS].map((value) => ({ value, label: value }))}
        />
      ) : null}
      {details.length > 0 ? (
        <CodeInput
          label={`File format of added format ${index + 1}`}
          value={row.formDetail ?? ''}
          onChange={(code) => change({ formDetail: code === '' ? null : code })}
          choices={details}
          other="Another code (ONIX List 175)"
          none="not decided"
          upperCase
        />
      ) : null}
      {row.form !== '' && made === 'print' ? (
        <Checkbox
          label="Large print"
          checked={row.largePrint}
          onChange={(largePrint) => change({ largePrint })}
        />
      ) : null}
      <Button kind="quiet" label={`Remove added format ${index + 1}`} onClick={remove}>
        Remove
      </Button>
    </div>
  );
}

/** Formats that the old edition did not have. */
export function AddedFormats({ form, error }: { form: RecordForm<NextDraft>; error: string | undefined }) {
  const { add } = form.draft;
  const key = Math.max(-1, ...add.map((row) => row.key)) + 1;
  return (
    <fieldset className="field prices">
      <legend className="field-label">Formats that are added</legend>
      {add.length === 0 ? <p className="soft">None.</p> : null}
      {add.map((row, index) => (
        <AddedRow
          key={row.key}
          row={row}
          index={index}
          change={(part) =>
            form.set(
              'add',
              add.map((other) => (other.key === row.key ? { ...other, ...part } : other)),
            )
          }
          remove={() =>
            form.set(
              'add',
              add.filter((other) => other.key !== row.key),
            )
          }
        />
      ))}
      <Button
        onClick={() =>
          form.set('add', [...add, { key, form: '', formDetail: null, caseKind: null, largePrint: false }])
        }
      >
        Add a further format
      </Button>
      {error ? <p className="field-error">{error}</p> : null}
    </fieldset>
  );
}
