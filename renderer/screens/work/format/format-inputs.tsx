import { madeOf } from '../../../../src/contract/terms.ts';
import { Checkbox, DateInput, NumberInput, TextArea } from '../../../ui/index.ts';
import { fieldHelp } from '../parts/field-help.tsx';
import { useWork } from '../parts/work-context.tsx';
import { type FormatInputsProps, FormInputs } from './form-inputs.tsx';
import { UnlessLocked } from './locks.tsx';
import { PriceInputs } from './price-inputs.tsx';
import { PrintInputs } from './print-inputs.tsx';

function DateInputs({ form, errorOf, format }: FormatInputsProps) {
  const { draft, set } = form;
  return (
    <div className="columns">
      {(['publicationDate', 'onSaleDate'] as const).map((field) => (
        <UnlessLocked key={field} format={format} field={field} value={draft[field]}>
          <DateInput
            label={field === 'publicationDate' ? 'Publication date' : 'On-sale date'}
            value={draft[field] ?? ''}
            onChange={(day) => set(field, day === '' ? null : day)}
            help={fieldHelp(field)}
            error={errorOf(field)}
            name={field}
          />
        </UnlessLocked>
      ))}
    </div>
  );
}

function DurationInput({ form, errorOf }: FormatInputsProps) {
  return (
    <NumberInput
      label="Running time"
      unit="minutes"
      min={1}
      max={100_000}
      value={form.draft.durationMinutes ?? undefined}
      onChange={(minutes) => form.set('durationMinutes', minutes ?? null)}
      error={errorOf('durationMinutes')}
      name="durationMinutes"
    />
  );
}

/** All fields of a format that make sense for the way it is made. */
export function FormatInputs(props: FormatInputsProps) {
  const { settings } = useWork();
  const { form, errorOf } = props;
  const { draft, set } = form;
  const made = madeOf(draft.form);
  return (
    <>
      <FormInputs {...props} />
      {made === 'print' && draft.form !== '' ? <PrintInputs {...props} unit={settings.lengthUnit} /> : null}
      {made === 'audio' ? <DurationInput {...props} /> : null}
      {made === 'audio' ? null : (
        <Checkbox
          label="Reads from right to left"
          checked={draft.rightToLeft}
          onChange={(rightToLeft) => set('rightToLeft', rightToLeft)}
          error={errorOf('rightToLeft')}
          name="rightToLeft"
        />
      )}
      <PriceInputs
        value={draft.prices}
        onChange={(prices) => set('prices', prices)}
        usual={settings.currency}
        errorOf={errorOf}
      />
      <DateInputs {...props} />
      <TextArea
        label="Note"
        rows={2}
        value={draft.note}
        onChange={(note) => set('note', note)}
        help="For yourselves; it is never sent anywhere."
        error={errorOf('note')}
        name="note"
      />
    </>
  );
}
