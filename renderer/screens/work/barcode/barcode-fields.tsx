import type { Price } from '../../../../src/contract/formats.ts';
import { NumberInput, Select } from '../../../ui/index.ts';
import { addOnChoices, type BarcodeDraft } from './draft.ts';

interface BarcodeFieldsProps {
  draft: BarcodeDraft;
  set: (part: Partial<BarcodeDraft>) => void;
  prices: readonly Price[];
  errorOf: (field: string) => string | undefined;
}

/** How the bar code is to be drawn. */
export function BarcodeFields({ draft, set, prices, errorOf }: BarcodeFieldsProps) {
  return (
    <div className="columns">
      <NumberInput
        label="Size"
        name="magnification"
        min={80}
        max={200}
        unit="%"
        value={draft.magnification}
        onChange={(magnification) => set({ magnification })}
        error={errorOf('magnification')}
        help="80 to 200 per cent of the nominal size."
      />
      <NumberInput
        label="Bar width reduction"
        name="barWidthReductionUm"
        min={0}
        unit="µm"
        value={draft.reduction}
        onChange={(reduction) => set({ reduction })}
        error={errorOf('barWidthReductionUm')}
        help="Thins each bar against the spread of ink. Leave it at 0 unless your printer names a value."
      />
      <Select
        label="Add-on"
        name="addOn"
        value={draft.addOn}
        onChange={(addOn) => set({ addOn })}
        choices={addOnChoices(prices)}
        error={errorOf('addOn')}
        help="A second, smaller code with a price, used by booksellers of the United States and Canada."
      />
      <NumberInput
        label="Resolution of a PNG"
        name="dpi"
        min={150}
        max={2540}
        unit="dots per inch"
        value={draft.dpi}
        onChange={(dpi) => set({ dpi })}
        error={errorOf('dpi')}
        help="SVG and PDF need none: they are sharp at any size."
      />
    </div>
  );
}
