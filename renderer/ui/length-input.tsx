import { useState } from 'react';
import { formatLength, type LengthUnit, parseLength, typedLength } from '../lib/length.ts';
import { holdBack, useDraft } from './draft.ts';
import { Field, type FieldCommon } from './field.tsx';

export interface LengthInputProps extends FieldCommon {
  /** Micrometres. */
  value: number | undefined;
  onChange: (um: number | undefined) => void;
  /** The unit shown first. */
  unit?: LengthUnit | undefined;
  locale?: string | undefined;
}

const EXAMPLES: Record<LengthUnit, string> = {
  mm: 'Write a length in millimetres, such as 129.',
  in: 'Write a length in inches, such as 5 1/2.',
};

/** A length typed in millimetres or inches and kept in micrometres; the other unit is shown beside it. */
export function LengthInput(props: LengthInputProps) {
  const { value, onChange, locale } = props;
  const [unit, setUnit] = useState<LengthUnit>(props.unit ?? 'mm');
  return (
    <LengthIn
      key={unit}
      {...props}
      value={value}
      onChange={onChange}
      unit={unit}
      locale={locale}
      changeUnit={setUnit}
    />
  );
}

interface LengthInProps extends LengthInputProps {
  unit: LengthUnit;
  changeUnit: (unit: LengthUnit) => void;
}

function LengthIn({ unit, changeUnit, ...props }: LengthInProps) {
  const { value, locale } = props;
  const draft = useDraft(
    value,
    props.onChange,
    (um) => typedLength(um, unit, locale),
    (text) => parseLength(text, unit, locale),
  );
  const problem = draft.wrong ? EXAMPLES[unit] : undefined;
  const other = unit === 'mm' ? 'in' : 'mm';
  return (
    <Field
      {...props}
      error={problem ?? props.error}
      aside={
        value === undefined ? null : <p className="field-count">= {formatLength(value, other, locale)}</p>
      }
    >
      {(ids) => (
        <span className="input-group">
          <input
            {...ids}
            ref={holdBack(problem)}
            className="input input-number"
            type="text"
            inputMode="decimal"
            autoComplete="off"
            name={props.name}
            value={draft.text}
            disabled={props.disabled}
            onChange={(event) => draft.type(event.target.value)}
            onBlur={draft.settle}
          />
          <select
            className="input select input-unit-choice"
            aria-label={`Unit of ${props.label}`}
            value={unit}
            disabled={props.disabled}
            onChange={(event) => changeUnit(event.target.value === 'in' ? 'in' : 'mm')}
          >
            <option value="mm">mm</option>
            <option value="in">in</option>
          </select>
        </span>
      )}
    </Field>
  );
}
