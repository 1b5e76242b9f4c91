import { formatScaled, parseScaled } from '../../../lib/decimal.ts';
import type { FieldCommon } from '../../../ui/index.ts';
import { ScaledInput } from '../../../ui/scaled-input.tsx';

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
export function PercentInput({ value, onChange, ...field }: PercentInputProps) {
  return (
    <ScaledInput
      {...field}
      written={value === null ? '' : formatScaled(value, 2, undefined, true)}
      read={read}
      hint="Write a percentage from 0 to 100, such as 40 or 37.5."
      onChange={(basisPoints) => onChange(basisPoints ?? null)}
      after="%"
    />
  );
}
