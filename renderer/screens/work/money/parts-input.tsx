import { formatScaled, parseScaled } from '../../../lib/decimal.ts';
import { minorDigits } from '../../../lib/money.ts';
import type { FieldCommon } from '../../../ui/index.ts';
import { ScaledInput } from '../../../ui/scaled-input.tsx';

export interface PartsInputProps extends FieldCommon {
  /** Ten-thousandths of a minor unit. */
  value: number | undefined;
  onChange: (parts: number | undefined) => void;
  currency: string;
}

/** An amount finer than the minor unit, as printers state the cost of a page: 0.0125. */
export function PartsInput({ value, onChange, currency, ...field }: PartsInputProps) {
  const digits = minorDigits(currency) + 4;
  const written = (parts: number) => formatScaled(parts, digits, undefined, true);
  return (
    <ScaledInput
      {...field}
      written={value === undefined ? '' : written(value)}
      read={(text) => parseScaled(text, digits)}
      hint={`Write an amount such as ${written(12_500)}.`}
      onChange={onChange}
      before={currency}
    />
  );
}
