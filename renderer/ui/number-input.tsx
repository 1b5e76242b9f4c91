import { readWholeNumber } from '../lib/paste/whole-number.ts';
import { holdBack, isWhole, useDraft } from './draft.ts';
import { Field, type FieldCommon } from './field.tsx';
import { useUnderstanding } from './understood.tsx';

export interface NumberInputProps extends FieldCommon {
  value: number | undefined;
  onChange: (value: number | undefined) => void;
  min?: number | undefined;
  max?: number | undefined;
  /** Word or sign behind the input, such as `pages` or `%`. */
  unit?: string | undefined;
}

function reader(min: number | undefined, max: number | undefined) {
  return (text: string): number | undefined => {
    if (!/^\s*-?\d{1,15}\s*$/.test(text)) return undefined;
    const value = Number(text);
    return (min !== undefined && value < min) || (max !== undefined && value > max) ? undefined : value;
  };
}

function range(min: number | undefined, max: number | undefined): string {
  if (min !== undefined && max !== undefined) return ` from ${min} to ${max}`;
  if (min !== undefined) return ` of ${min} or more`;
  return max === undefined ? '' : ` of ${max} or less`;
}

/** A whole number; undefined while empty or unreadable, and an unreadable text keeps the form from being sent. */
export function NumberInput(props: NumberInputProps) {
  const { min, max, unit } = props;
  const draft = useDraft(props.value, props.onChange, String, reader(min, max));
  const { hear, note, forget } = useUnderstanding<number>(String, (value) => draft.type(String(value)));
  const problem = draft.wrong ? `Write a whole number${range(min, max)}.` : undefined;
  return (
    <Field {...props} error={problem ?? props.error}>
      {(ids) => (
        <>
          <span className="input-group">
            <input
              {...ids}
              ref={holdBack(problem)}
              className="input input-number"
              type="text"
              inputMode="numeric"
              autoComplete="off"
              name={props.name}
              value={draft.text}
              disabled={props.disabled}
              onChange={(event) => {
                forget();
                draft.type(event.target.value);
              }}
              onBlur={draft.settle}
              onPaste={(event) => {
                const text = event.clipboardData.getData('text/plain').trim();
                const value = readWholeNumber(text);
                if (!isWhole(event.currentTarget) || value === undefined || text === String(value)) return;
                event.preventDefault();
                hear({ text, values: [value] });
              }}
            />
            {unit ? <span className="input-unit">{unit}</span> : null}
          </span>
          {note}
        </>
      )}
    </Field>
  );
}
