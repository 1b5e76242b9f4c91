import { useState } from 'react';
import type { Edition } from '../../../../src/contract/editions.ts';
import { COMPARE_OVER, type MoneyRow } from '../../../../src/contract/money.ts';
import { useQueryOf } from '../../../api.ts';
import { useAsOf } from '../../../location.ts';
import { CurvesPicture } from '../../../pictures/curves-picture.tsx';
import { Refused, Select } from '../../../ui/index.ts';

type Over = (typeof COMPARE_OVER)[number];

const OVER: Record<Over, string> = {
  price: 'Another list price',
  pages: 'More or fewer pages',
  discount: 'Another discount',
};

/** The formats of an edition that have a listing with a price, one choice a currency. */
function choicesOf(rows: readonly MoneyRow[]) {
  const seen = new Map<string, { value: string; label: string; formatId: number; currency: string }>();
  for (const { formatId, formatName, currency } of rows) {
    const value = `${formatId} ${currency}`;
    seen.set(value, { value, label: `${formatName}, ${currency}`, formatId, currency });
  }
  return [...seen.values()];
}

/** All channels of a format on one picture, while price, pages or discount change. */
export function ComparePart({ rows, edition }: { rows: readonly MoneyRow[]; edition: Edition }) {
  const { asOf } = useAsOf();
  const choices = choicesOf(rows);
  const [chosen, setChosen] = useState('');
  const [over, setOver] = useState<Over>('price');
  const at = choices.find(({ value }) => value === chosen) ?? choices[0];
  const format = edition.formats.find(({ id }) => id === at?.formatId);
  const printed = rows.some((row) => row.formatId === at?.formatId && row.made === 'print');
  const shown = over === 'pages' && !printed ? 'price' : over;
  const { data, error } = useQueryOf(
    'money.compare',
    {
      formatId: at?.formatId ?? 1,
      currency: at?.currency ?? 'EUR',
      over: shown,
      ...(asOf === undefined ? {} : { asOf }),
    },
    { keep: true, enabled: at !== undefined },
  );
  if (!at || !format) return null;
  return (
    <div className="stack">
      <div className="columns">
        <Select label="Format and currency" value={at.value} onChange={setChosen} choices={choices} />
        <Select<Over>
          label="What changes"
          value={shown}
          onChange={setOver}
          choices={COMPARE_OVER.filter((one) => printed || one !== 'pages').map((value) => ({
            value,
            label: OVER[value],
          }))}
        />
      </div>
      <Refused refusal={error} />
      {data ? <CurvesPicture curves={data} /> : null}
      {data?.curves.some(({ note }) => note !== '') ? (
        <ul className="money-list soft">
          {data.curves
            .filter(({ note }) => note !== '')
            .map(({ listingId, channelName, note }) => (
              <li key={listingId}>
                {channelName}: {note}
              </li>
            ))}
        </ul>
      ) : null}
    </div>
  );
}
