import { Field, type FieldCommon } from './field.tsx';

export interface DateInputProps extends FieldCommon {
  /** `YYYY-MM-DD`, or empty for no day. */
  value: string;
  onChange: (value: string) => void;
  min?: string | undefined;
  max?: string | undefined;
}

/** A calendar day without time zone, in the system's own date input. */
export function DateInput(props: DateInputProps) {
  return (
    <Field {...props}>
      {(ids) => (
        <input
          {...ids}
          className="input input-date"
          type="date"
          name={props.name}
          value={props.value}
          min={props.min}
          max={props.max ?? '9999-12-31'}
          disabled={props.disabled}
          onChange={(event) => props.onChange(event.target.value)}
        />
      )}
    </Field>
  );
}
