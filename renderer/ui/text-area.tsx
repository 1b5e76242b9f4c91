import { classNames } from './class-names.ts';
import { Field, type FieldCommon } from './field.tsx';

export interface TextAreaProps extends FieldCommon {
  value: string;
  onChange: (value: string) => void;
  rows?: number | undefined;
  /** Shows a count against this advised length; typing beyond it is never cut off. */
  countTo?: number | undefined;
  mono?: boolean | undefined;
  language?: string | undefined;
  readOnly?: boolean | undefined;
}

/** Several lines of text, with a character count on request. */
export function TextArea(props: TextAreaProps) {
  const { value, onChange, rows = 5, countTo, mono } = props;
  const count = [...value].length;
  const aside =
    countTo === undefined ? null : (
      <p className={classNames('field-count', count > countTo && 'field-count-over')}>
        {count.toLocaleString()} of {countTo.toLocaleString()} characters
        {count > countTo ? `, ${(count - countTo).toLocaleString()} too many` : ''}
      </p>
    );
  return (
    <Field {...props} aside={aside}>
      {(ids) => (
        <textarea
          {...ids}
          className={classNames('input', 'input-full', mono && 'mono')}
          name={props.name}
          rows={rows}
          value={value}
          disabled={props.disabled}
          readOnly={props.readOnly}
          lang={props.language}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}
