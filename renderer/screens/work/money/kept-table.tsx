import { Link } from 'wouter';
import type { MoneyRow } from '../../../../src/contract/money.ts';
import { formatMoney, formatParts } from '../../../lib/money.ts';
import { type Column, Table } from '../../../ui/index.ts';
import { placeOf } from '../parts/go-to.ts';
import { percent } from '../parts/names.ts';
import { useWork } from '../parts/work-context.tsx';
import { amount, costSource } from './words.ts';

function Discount({ row }: { row: MoneyRow }) {
  if (row.discountBp === null) return <span className="soft">none recorded: 0 % taken</span>;
  return (
    <>
      {percent(row.discountBp)}
      {row.made === 'print' ? null : <span className="soft money-aside">the channel’s share</span>}
    </>
  );
}

function PrintCost({ row }: { row: MoneyRow }) {
  const { printCost, currency } = row;
  return (
    <>
      {printCost.from === 'nothing printed' ? null : amount(printCost.minor, currency)}
      <span className="soft money-aside">{costSource(printCost)}</span>
    </>
  );
}

/** What is kept, with its exact amount where rounding changed it, and a word where a copy loses. */
function Kept({ row }: { row: MoneyRow }) {
  const { keptMinor, keptParts, currency } = row;
  if (keptMinor === null || keptParts === null) return <span className="soft">not known</span>;
  const rounded = keptMinor * 10_000 !== keptParts;
  return (
    <>
      <strong>{formatMoney(keptMinor, currency)}</strong>
      {rounded ? <span className="soft money-aside">exactly {formatParts(keptParts, currency)}</span> : null}
      {keptMinor < 0 ? <span className="money-loss">sold at a loss</span> : null}
    </>
  );
}

function Lowest({ row }: { row: MoneyRow }) {
  const { lowestMinor, lowestEnding, currency, printCost } = row;
  if (printCost.from === 'nothing printed') return <span className="soft">none</span>;
  return (
    <>
      {lowestMinor === null && row.discountBp === 10_000
        ? 'none: it keeps all'
        : amount(lowestMinor, currency)}
      {lowestEnding.length > 0 ? (
        <span className="soft money-aside">
          with your endings {lowestEnding.map(({ minor }) => formatMoney(minor, currency)).join(', ')}
        </span>
      ) : null}
    </>
  );
}

/** What a copy keeps on every listing, in each currency, and on whose figures. */
export function KeptTable({ rows }: { rows: readonly MoneyRow[] }) {
  const { work } = useWork();
  const columns: Column<MoneyRow>[] = [
    {
      key: 'listing',
      header: 'Sold as',
      cell: (row) => (
        <>
          <Link href={placeOf(work.id, 'format', row.formatId)}>{row.formatName}</Link> · {row.channelName}
        </>
      ),
      sortBy: (row) => `${row.formatName} ${row.channelName}`,
    },
    {
      key: 'list',
      header: 'List price',
      align: 'end',
      nowrap: true,
      cell: (row) => formatMoney(row.listMinor, row.currency),
    },
    { key: 'discount', header: 'Discount', align: 'end', cell: (row) => <Discount row={row} /> },
    { key: 'cost', header: 'Print cost', align: 'end', cell: (row) => <PrintCost row={row} /> },
    {
      key: 'kept',
      header: 'A copy keeps',
      align: 'end',
      cell: (row) => <Kept row={row} />,
      sortBy: (row) => row.keptMinor,
    },
    { key: 'lowest', header: 'Lowest price', align: 'end', cell: (row) => <Lowest row={row} /> },
  ];
  return (
    <Table
      caption="What a copy keeps on each listing"
      columns={columns}
      rows={rows}
      rowKey={(row) => `${row.listingId} ${row.currency}`}
      foot={
        <span>
          How your prices end, such as .99, is set in <Link href="/settings">Settings</Link>.
        </span>
      }
    />
  );
}
