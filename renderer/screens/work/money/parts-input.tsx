import { useState } from 'react';
import { formatScaled, parseScaled } from '../../../lib/decimal.ts';
import { minorDigits } from '../../../lib/money.ts';
import { Field, type FieldCommon } from '../../../ui/index.ts';

export interface PartsInputProps extends FieldCommon {
  /** Ten-thousandths of a minor unit. */
  value: number | undefined;
  onChange: (parts: number | undefined) => void;
  currency: string;
}

/** An amount finer than the minor unit, as printers state the cost of a page: 0.0125. */
export function PartsInput(props: PartsInputProps) {
  const { value, onChange, currency } = props;
  const digits = minorDigits(currency) + 4;
  const [text, setText] = useState(() =>
    value === undefined ? '' : formatScaled(value, digits, undefined, true),
  );
  const wrong = text.trim() !== '' && parseScaled(text, digits) === undefined;
  const problem = wrong
    ? `Write an amount such as ${formatScaled(12_500, digits, undefined, true)}.`
    : undefined;
  return (
    <Field {...props} error={problem ?? props.error}>
      {(ids) => (
        <span className="input-group">
          <span className="input-unit">{currency}</span>
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
              onChange(parseScaled(event.target.value, digits));
            }}
          />
        </span>
      )}
    </Field>
  );
}
