import { CharacterCount } from './character-count.tsx';
import { classNames } from './class-names.ts';
import { Field, type FieldCommon } from './field.tsx';

export interface TextAreaProps extends FieldCommon {
  value: string;
  onChange: (value: string) => void;
  rows?: number | undefined;
  /** Shows a count against this advised length; typing beyond it is never cut off. */
  countTo?: number | undefined;
  /** Who sets that length, such as a channel. */
  countedFor?: string | undefined;
  mono?: boolean | undefined;
  language?: string | undefined;
  readOnly?: boolean | undefined;
}

/** Several lines of text, with a character count on request. */
export function TextArea(props: TextAreaProps) {
  const { value, onChange, rows = 5, countTo, mono } = props;
  const aside =
    countTo === undefined ? null : <CharacterCount text={value} limit={countTo} setBy={props.countedFor} />;
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
