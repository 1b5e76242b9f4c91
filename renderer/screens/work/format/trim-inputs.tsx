import { formatLength, type LengthUnit } from '../../../lib/length.ts';
import { LengthInput, Select } from '../../../ui/index.ts';
import type { FormatInputsProps } from './form-inputs.tsx';
import { trimText } from './format-texts.ts';
import { UnlessLocked } from './locks.tsx';

const MM = 1_000;
const INCH = 25_400;

/** Trim sizes offered first: common practice, no source. */
const COMMON_TRIMS: Record<LengthUnit, readonly { width: number; height: number; name: string }[]> = {
  mm: [
    { width: 110 * MM, height: 178 * MM, name: 'small paperback' },
    { width: 129 * MM, height: 198 * MM, name: 'large paperback' },
    { width: 138 * MM, height: 216 * MM, name: 'demy' },
    { width: 148 * MM, height: 210 * MM, name: 'A5' },
    { width: 156 * MM, height: 234 * MM, name: 'royal' },
    { width: 210 * MM, height: 210 * MM, name: 'square' },
    { width: 210 * MM, height: 297 * MM, name: 'A4' },
  ],
  in: [
    { width: 5 * INCH, height: 8 * INCH, name: 'small' },
    { width: 5.25 * INCH, height: 8 * INCH, name: 'small, wide' },
    { width: 5.5 * INCH, height: 8.5 * INCH, name: 'half letter' },
    { width: 6 * INCH, height: 9 * INCH, name: 'trade' },
    { width: 7 * INCH, height: 10 * INCH, name: 'large' },
    { width: 8.5 * INCH, height: 8.5 * INCH, name: 'square' },
    { width: 8.5 * INCH, height: 11 * INCH, name: 'letter' },
  ],
};

const OWN = 'own';

/** Width and height of the trimmed page, with the common sizes to choose from. */
export function TrimInputs({ form, errorOf, format, unit }: FormatInputsProps & { unit: LengthUnit }) {
  const { draft, set, merge } = form;
  const choices = COMMON_TRIMS[unit].map(({ width, height, name }) => ({
    value: `${width}x${height}`,
    label: `${formatLength(width, unit)} × ${formatLength(height, unit)}, ${name}`,
  }));
  const now = `${draft.trimWidthUm}x${draft.trimHeightUm}`;
  const choose = (value: string) => {
    const [width, height] = value.split('x').map(Number);
    if (width && height) merge({ trimWidthUm: width, trimHeightUm: height });
  };
  return (
    <UnlessLocked format={format} field="trimWidthUm" value={trimText(draft, unit)}>
      <div className="columns">
        <Select
          label="Common trim sizes"
          value={choices.some(({ value }) => value === now) ? now : OWN}
          onChange={choose}
          choices={[{ value: OWN, label: 'none of these' }, ...choices]}
        />
        <LengthInput
          label="Trim width"
          unit={unit}
          value={draft.trimWidthUm ?? undefined}
          onChange={(um) => set('trimWidthUm', um ?? null)}
          error={errorOf('trimWidthUm')}
          name="trimWidthUm"
        />
        <LengthInput
          label="Trim height"
          unit={unit}
          value={draft.trimHeightUm ?? undefined}
          onChange={(um) => set('trimHeightUm', um ?? null)}
          error={errorOf('trimHeightUm')}
          name="trimHeightUm"
        />
      </div>
    </UnlessLocked>
  );
}
