import type { Price } from '../../../../src/contract/formats.ts';
import type { InputOf } from '../../../../src/contract/index.ts';
import { formatMoney } from '../../../lib/money.ts';

/** Stands for no add-on; `90000` for one without a price; anything else is the currency of a price. */
export const NO_ADD_ON = 'no add-on';
export const NO_PRICE = '90000';

/** What is chosen in the dialog; a number is undefined while its field is empty or unreadable. */
export interface BarcodeDraft {
  /** Per cent. */
  magnification: number | undefined;
  /** Micrometres. */
  reduction: number | undefined;
  addOn: string;
  /** Dots per inch. */
  dpi: number | undefined;
}

export const FIRST_DRAFT: BarcodeDraft = { magnification: 100, reduction: 0, addOn: NO_ADD_ON, dpi: 600 };

type As = InputOf<'barcodes.draw'>['as'];

function addOnInput(addOn: string): InputOf<'barcodes.draw'>['addOn'] {
  if (addOn === NO_ADD_ON) return null;
  return addOn === NO_PRICE ? 'none' : { price: addOn };
}

/** What to ask the host for, or undefined while a number it needs is missing; only a PNG has a resolution. */
export function drawInput(
  formatId: number,
  draft: BarcodeDraft,
  as: As,
): InputOf<'barcodes.draw'> | undefined {
  const { magnification, reduction, dpi } = draft;
  if (magnification === undefined || reduction === undefined) return undefined;
  if (as === 'png' && dpi === undefined) return undefined;
  return {
    formatId,
    as,
    magnification,
    barWidthReductionUm: reduction,
    addOn: addOnInput(draft.addOn),
    ...(as === 'png' ? { dpi } : {}),
  };
}

/** The add-ons to choose from: none, each price of the format, and the one that states no price. */
export function addOnChoices(prices: readonly Price[]): { value: string; label: string }[] {
  return [
    { value: NO_ADD_ON, label: 'None' },
    ...prices.map(({ currency, amountMinor }) => ({
      value: currency,
      label: `The price, ${formatMoney(amountMinor, currency)}`,
    })),
    { value: NO_PRICE, label: '90000, which states no price' },
  ];
}

/** '37.3 mm wide and 27.5 mm high', to a tenth of a millimetre. */
export function sizeInWords(widthMm: number, heightMm: number, locale?: string): string {
  const tenths = (mm: number) =>
    mm.toLocaleString(locale, { minimumFractionDigits: 1, maximumFractionDigits: 1 });
  return `${tenths(widthMm)} mm wide and ${tenths(heightMm)} mm high`;
}
