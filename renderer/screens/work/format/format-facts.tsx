import type { Format } from '../../../../src/contract/formats.ts';
import { madeOf } from '../../../../src/contract/terms.ts';
import type { LengthUnit } from '../../../lib/length.ts';
import { KeyValue, type KeyValueItem } from '../../../ui/index.ts';
import { useWork } from '../parts/work-context.tsx';
import { durationText, pricesText, trimText } from './format-texts.ts';

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
