import { useState } from 'react';
import { formatScaled, parseScaled } from '../../../lib/decimal.ts';
import { Field, type FieldCommon } from '../../../ui/index.ts';

export interface PercentInputProps extends FieldCommon {
  /** Basis points: 4000 is 40 %. */
  value: number | null;
  onChange: (basisPoints: number | null) => void;
}

const FULL = 10_000;

function read(text: string): number | undefined {
  const basisPoints = parseScaled(text, 2);
  return basisPoints === undefined || basisPoints > FULL ? undefined : basisPoints;
}

/** A percentage typed with up to two decimals and kept in basis points. */
export function PercentInput(props: PercentInputProps) {
  const { value, onChange } = props;
  const [text, setText] = useState(() => (value === null ? '' : formatScaled(value, 2, undefined, true)));
  const wrong = text.trim() !== '' && read(text) === undefined;
  const problem = wrong ? 'Write a percentage from 0 to 100, such as 40 or 37.5.' : undefined;
  return (
    <Field {...props} error={problem ?? props.error}>
      {(ids) => (
        <span className="input-group">
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
              onChange(read(event.target.value) ?? null);
            }}
          />
          <span className="input-unit">%</span>
        </span>
      )}
    </Field>
  );
}
