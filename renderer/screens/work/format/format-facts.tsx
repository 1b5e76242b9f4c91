import type { Format } from '../../../../src/contract/formats.ts';
import { madeOf } from '../../../../src/contract/terms.ts';
import { formatLength, type LengthUnit } from '../../../lib/length.ts';
import { formatMoney } from '../../../lib/money.ts';
import { KeyValue, type KeyValueItem } from '../../../ui/index.ts';
import { useWork } from '../parts/work-context.tsx';

/** '129 × 198 mm' in the unit of the settings. */
export function trimText(format: Pick<Format, 'trimWidthUm' | 'trimHeightUm'>, unit: LengthUnit): string {
  const { trimWidthUm, trimHeightUm } = format;
  if (trimWidthUm === null || trimHeightUm === null) return '';
  return `${formatLength(trimWidthUm, unit)} × ${formatLength(trimHeightUm, unit)}`;
}

/** '5 h 20 min' */
function durationText(minutes: number | null): string {
  if (minutes === null) return '';
  const hours = Math.floor(minutes / 60);
  return [hours > 0 ? `${hours} h` : '', minutes % 60 > 0 ? `${minutes % 60} min` : '']
    .filter(Boolean)
    .join(' ');
}

/** 'GBP 9.99, EUR 12.00 without tax' */
function pricesText(prices: Format['prices']): string {
  return prices
    .map(
      ({ amountMinor, currency, tax }) =>
        `${formatMoney(amountMinor, currency)}${tax === 'excluding' ? ' without tax' : ''}`,
    )
    .join(', ');
}

function printItems(format: Format, unit: LengthUnit): KeyValueItem[] {
  const made = [format.interiorColour, format.paper].filter(Boolean).join(', ');
  const cover = [format.finish, format.insideCoverPrint ? 'printed inside' : ''].filter(Boolean).join(', ');
  return [
    { label: 'Trim size', value: trimText(format, unit) },
    { label: 'Pages', value: format.pages?.toLocaleString() },
    { label: 'Interior', value: made },
    { label: 'Cover', value: cover },
  ];
}

/** How a format is made, what it costs and when it comes out. */
export function FormatFacts({ format }: { format: Format }) {
  const { settings } = useWork();
  const made = madeOf(format.form);
  return (
    <KeyValue
      items={[
        ...(made === 'print' ? printItems(format, settings.lengthUnit) : []),
        ...(made === 'audio' ? [{ label: 'Running time', value: durationText(format.durationMinutes) }] : []),
        { label: 'Prices', value: pricesText(format.prices) },
        { label: 'Published', value: format.publicationDate },
        { label: 'On sale', value: format.onSaleDate },
        ...(format.rightToLeft ? [{ label: 'Direction', value: 'reads right to left' }] : []),
        ...(format.note === ''
          ? []
          : [{ label: 'Note', value: <span className="prose">{format.note}</span> }]),
      ]}
    />
  );
}
