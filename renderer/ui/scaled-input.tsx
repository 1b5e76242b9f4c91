import { type ReactNode, useState } from 'react';
import { Field, type FieldCommon } from './field.tsx';

interface ScaledInputProps extends FieldCommon {
  /** How the value is written at first; '' for none. */
  written: string;
  /** What a text says, and how to write it where it says nothing. */
  read: (text: string) => number | undefined;
  hint: string;
  onChange: (value: number | undefined) => void;
  before?: ReactNode;
  after?: ReactNode;
}

/** A decimal number that is kept as whole units of its last place, with what it counts written beside it. */
export function ScaledInput(props: ScaledInputProps) {
  const { written, read, hint, onChange, before, after } = props;
  const [text, setText] = useState(written);
  const problem = text.trim() !== '' && read(text) === undefined ? hint : undefined;
  return (
    <Field {...props} error={problem ?? props.error}>
      {(ids) => (
        <span className="input-group">
          {before ? <span className="input-unit">{before}</span> : null}
          <input
            {...ids}
            ref={(input) => input?.setCustomValidity(problem ?? '')}
            className="input input-number"
            type="text"
            inputMode="decimal"
            autoComplete="off"
            name={props.name}
            value={text}
            onChange={(event) => {
              setText(event.target.value);
              onChange(read(event.target.value));
            }}
          />
          {after ? <span className="input-unit">{after}</span> : null}
        </span>
      )}
    </Field>
  );
}
