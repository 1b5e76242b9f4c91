import type { MoneyRow } from '../../../../src/contract/money.ts';
import { formatMoney } from '../../../lib/money.ts';
import { type Column, NumberInput, Table } from '../../../ui/index.ts';
import { PercentInput } from '../listing/percent-input.tsx';
import { percent, returnsName } from '../parts/names.ts';

export interface Returns {
  shipped: number;
  /** Share that comes back, in basis points. */
  returnedBp: number;
}

interface ReturnsPartProps {
  rows: readonly MoneyRow[];
  returns: Returns;
  onChange: (returns: Returns) => void;
}

const money = (row: MoneyRow, of: 'receiptsMinor' | 'printMinor' | 'marginMinor') =>
  row.afterReturns === null ? '' : formatMoney(row.afterReturns[of], row.currency);

function Bearable({ row }: { row: MoneyRow }) {
  const share = row.afterReturns?.bearableBp;
  if (share === undefined) return null;
  if (share === null) return 'any';
  return share === 0 ? <strong>loses from the first copy</strong> : percent(share);
}

const COLUMNS: readonly Column<MoneyRow>[] = [
  { key: 'listing', header: 'Sold as', cell: (row) => `${row.formatName} · ${row.channelName}` },
  {
    key: 'returns',
    header: 'Returns',
    cell: (row) =>
      row.returns === null ? <span className="soft">not recorded</span> : returnsName(row.returns),
  },
  {
    key: 'receipts',
    header: 'Receipts',
    align: 'end',
    nowrap: true,
    cell: (row) => money(row, 'receiptsMinor'),
  },
  { key: 'print', header: 'Printing', align: 'end', nowrap: true, cell: (row) => money(row, 'printMinor') },
  {
    key: 'margin',
    header: 'Left',
    align: 'end',
    nowrap: true,
    cell: (row) => <strong>{money(row, 'marginMinor')}</strong>,
  },
  { key: 'bearable', header: 'Bears returns up to', align: 'end', cell: (row) => <Bearable row={row} /> },
];

/** What is left of a run when a share of it comes back: copies kept are paid for, every copy was printed. */
export function ReturnsPart({ rows, returns, onChange }: ReturnsPartProps) {
  const told = rows.filter((row) => row.afterReturns !== null);
  return (
    <div className="stack">
      <div className="columns">
        <NumberInput
          label="Copies that go out"
          min={1}
          max={1_000_000}
          value={returns.shipped}
          onChange={(shipped) => shipped !== undefined && onChange({ ...returns, shipped })}
        />
        <PercentInput
          label="Share that comes back"
          value={returns.returnedBp}
          onChange={(returnedBp) => returnedBp !== null && onChange({ ...returns, returnedBp })}
        />
      </div>
      {told.length > 0 ? (
        <Table
          caption="What returns leave"
          columns={COLUMNS}
          rows={told}
          rowKey={(row) => `${row.listingId} ${row.currency}`}
          foot={
            <span>
              Receipts are for the copies that stay sold; all copies were printed. Freight, handling and what
              a channel charges for a return come on top: see its terms.
            </span>
          }
        />
      ) : (
        <p className="soft">
          No listing with a known print cost takes returns, or none says so: record its returns with its
          terms.
        </p>
      )}
    </div>
  );
}
