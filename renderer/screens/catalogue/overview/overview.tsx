import { useState } from 'react';
import { useQueryOf } from '../../../api.ts';
import { useAsOf, useLedgerLocation } from '../../../location.ts';
import { CoveragePicture } from '../../../pictures/coverage-picture.tsx';
import { MoneyPicture } from '../../../pictures/money-picture.tsx';
import { StockPicture } from '../../../pictures/stock-picture.tsx';
import { Button, Checkbox, EmptyState, Refused, Section } from '../../../ui/index.ts';

/** Formats drawn at once; more on demand. */
const FORMATS = 40;
const LISTINGS = 12;

function CoverageSection() {
  const { asOf } = useAsOf();
  const [ended, setEnded] = useState(false);
  const [count, setCount] = useState(FORMATS);
  const coverage = useQueryOf('pictures.coverage', { asOf, ended, count }, { keep: true });
  const { data } = coverage;
  const more = Math.min(200, count + FORMATS);
  return (
    <Section
      title="Formats and channels"
      actions={<Checkbox label="Ended formats too" checked={ended} onChange={setEnded} />}
    >
      <Refused refusal={coverage.error} />
      {data && data.rows.length === 0 ? (
        <EmptyState title="No format to show">Formats are added to the editions of a work.</EmptyState>
      ) : null}
      {data && data.rows.length > 0 ? (
        <CoveragePicture coverage={data} href={useLedgerLocation.hrefs} />
      ) : null}
      {data && data.rows.length < data.total ? (
        <p className="row">
          {data.rows.length.toLocaleString()} of {data.total.toLocaleString()} formats are drawn.
          {more > count ? <Button onClick={() => setCount(more)}>Draw more</Button> : null}
        </p>
      ) : null}
    </Section>
  );
}

function StockSection() {
  const { asOf } = useAsOf();
  const stock = useQueryOf('pictures.stock', { asOf }, { keep: true });
  if (stock.data?.points.length === 0) return null;
  return (
    <Section title="Numbers left">
      <Refused refusal={stock.error} />
      {stock.data ? <StockPicture stock={stock.data} /> : null}
    </Section>
  );
}

function MoneySection() {
  const { asOf } = useAsOf();
  const [most, setMost] = useState(LISTINGS);
  const money = useQueryOf('pictures.money', { asOf, most }, { keep: true });
  const hidden = money.data?.channels.some((channel) => channel.total > channel.bars.length);
  if (money.data?.channels.length === 0) return null;
  return (
    <Section title="What a copy brings">
      <Refused refusal={money.error} />
      {money.data ? <MoneyPicture money={money.data} href={useLedgerLocation.hrefs} /> : null}
      {hidden && most < 500 ? <Button onClick={() => setMost(500)}>Draw every listing</Button> : null}
      <p className="soft">
        As recorded here: list price, discount and print cost. Taxes, freight and returns are not in it, and a
        channel’s own terms prevail.
      </p>
    </Section>
  );
}

/** The catalogue as pictures: which format is where, how the numbers run down, what a copy brings. */
export default function Overview() {
  return (
    <>
      <CoverageSection />
      <StockSection />
      <MoneySection />
    </>
  );
}
