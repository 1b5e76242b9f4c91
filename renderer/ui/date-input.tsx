import { formatDay } from '../lib/dates.ts';
import { readDate } from '../lib/paste/dates.ts';
import { Field, type FieldCommon } from './field.tsx';
import { useUnderstanding } from './understood.tsx';

export interface DateInputProps extends FieldCommon {
  /** `YYYY-MM-DD`, or empty for no day. */
  value: string;
  onChange: (value: string) => void;
  min?: string | undefined;
  max?: string | undefined;
}

/** Why a day does not fit; a year that is still being typed is let be. */
function outside({ value, min, max }: DateInputProps): string | undefined {
  if (value < '1000') return undefined;
  if (min !== undefined && value < min) return `Choose ${formatDay(min)} or a later day.`;
  return max !== undefined && value > max ? `Choose ${formatDay(max)} or an earlier day.` : undefined;
}

/** A calendar day without time zone, in the system's own date input; a day in any writing can be pasted. */
export function DateInput(props: DateInputProps) {
  const { hear, note, forget } = useUnderstanding(formatDay, props.onChange);
  const paste = (pasted: string) => {
    const text = pasted.trim().slice(0, 60);
    const reading = readDate(text);
    if (reading.kind === 'unread') hear({ text, values: [], why: reading.why });
    else hear({ text, values: reading.kind === 'sure' ? [reading.day] : reading.days });
  };
  return (
    <Field {...props} error={props.error ?? outside(props)}>
      {(ids) => (
        <>
          <input
            {...ids}
            className="input input-date"
            type="date"
            name={props.name}
            value={props.value}
            min={props.min}
            max={props.max ?? '9999-12-31'}
            disabled={props.disabled}
            onChange={(event) => {
              forget();
              props.onChange(event.target.value);
            }}
            onPaste={(event) => {
              event.preventDefault();
              paste(event.clipboardData.getData('text/plain'));
            }}
          />
          {note}
        </>
      )}
    </Field>
  );
}
