import { useState } from 'react';
import type { Cost, Earning } from '../../../../src/contract/costs.ts';
import type { Edition } from '../../../../src/contract/editions.ts';
import type { OutputOf } from '../../../../src/contract/index.ts';
import { useQueryOf } from '../../../api.ts';
import { formatDay } from '../../../lib/dates.ts';
import { formatMoney } from '../../../lib/money.ts';
import { useAsOf } from '../../../location.ts';
import { Button, type Column, PageHeader, Refused, Section, Table } from '../../../ui/index.ts';
import { fullName } from '../parts/edition-names.ts';
import { counted, percent } from '../parts/names.ts';
import { PartPage, useCrumbs } from '../parts/page-of.tsx';
import { useWork } from '../parts/work-context.tsx';
import { CostDialog, RemoveCost } from './cost-dialogs.tsx';
import { COST_WORDS } from './words.ts';

const TITLE = 'Costs and earnings';

/** What an edition has cost so far, beside what a copy earns. */
export function CostsPage({ workId, editionId }: { workId: number; editionId: number }) {
  return (
    <PartPage workId={workId} title={TITLE}>
      <CostsBody editionId={editionId} />
    </PartPage>
  );
}

type Costs = OutputOf<'costs.ofEdition'>;

function CostsBody({ editionId }: { editionId: number }) {
  const { work, editable } = useWork();
  const { asOf } = useAsOf();
  const crumbs = useCrumbs(TITLE);
  const answer = useQueryOf('costs.ofEdition', { editionId, ...(asOf === undefined ? {} : { asOf }) });
  const edition = work.editions.find((one) => one.id === editionId);
  const [adding, setAdding] = useState(false);
  return (
    <>
      <PageHeader
        title={TITLE}
        crumbs={crumbs}
        lede={edition ? <p className="italic">{fullName(edition)}</p> : null}
        actions={
          editable && edition && edition.formats.length > 0 ? (
            <Button kind="primary" onClick={() => setAdding(true)}>
              Record a cost
            </Button>
          ) : null
        }
      />
      <Refused refusal={answer.error} />
      {answer.data && edition ? <CostParts costs={answer.data} edition={edition} /> : null}
      {adding && edition ? <CostDialog edition={edition} onClose={() => setAdding(false)} /> : null}
    </>
  );
}

function totalText({ totals, vouchers }: Costs): string {
  if (totals.length === 0) return 'Nothing is recorded yet.';
  const sums = totals.map(({ amountMinor, currency }) => formatMoney(amountMinor, currency)).join(' and ');
  return vouchers === 0 ? `${sums} so far.` : `${sums} so far; ${counted(vouchers, 'voucher')} used.`;
}

function CostParts({ costs, edition }: { costs: Costs; edition: Edition }) {
  return (
    <div className="stack">
      <Section title="What it has cost">
        <p className="costs-total">{totalText(costs)}</p>
        {costs.costs.length > 0 ? <CostTable rows={costs.costs} edition={edition} /> : null}
      </Section>
      <Section title="What a copy earns">
        {costs.earnings.length > 0 ? (
          <EarningTable rows={costs.earnings} />
        ) : (
          <p className="soft">No format with a price is listed on a channel yet.</p>
        )}
      </Section>
    </div>
  );
}

function placeOf(edition: Edition, cost: Cost): string {
  const format = edition.formats.find((one) => one.id === cost.formatId);
  const listing = format?.listings.find((one) => one.id === cost.listingId);
  return [format?.name ?? '', listing?.channelName ?? ''].filter((part) => part !== '').join(' · ');
}

function CostTable({ rows, edition }: { rows: readonly Cost[]; edition: Edition }) {
  const { editable } = useWork();
  const [doing, setDoing] = useState<{ what: 'edit' | 'remove'; cost: Cost }>();
  const close = () => setDoing(undefined);
  const columns: Column<Cost>[] = [
    { key: 'kind', header: 'Paid for', cell: (cost) => COST_WORDS[cost.kind] },
    { key: 'on', header: 'Day', nowrap: true, cell: (cost) => cost.on },
    { key: 'place', header: 'For', cell: (cost) => placeOf(edition, cost) },
    {
      key: 'amount',
      header: 'Amount',
      align: 'end',
      nowrap: true,
      cell: ({ amount }) => formatMoney(amount.amountMinor, amount.currency),
    },
    { key: 'voucher', header: 'Voucher', cell: (cost) => cost.voucher },
    { key: 'note', header: 'Note', cell: (cost) => cost.note },
    {
      key: 'do',
      header: 'Change',
      headerHidden: true,
      cell: (cost) =>
        cost.locked ? (
          <span className="soft">history</span>
        ) : editable ? (
          <CostButtons cost={cost} onDo={(what) => setDoing({ what, cost })} />
        ) : null,
    },
  ];
  return (
    <>
      <Table caption="Costs" columns={columns} rows={rows} rowKey={(cost) => cost.id} />
      {doing?.what === 'edit' ? <CostDialog edition={edition} cost={doing.cost} onClose={close} /> : null}
      {doing?.what === 'remove' ? <RemoveCost cost={doing.cost} onClose={close} /> : null}
    </>
  );
}

function CostButtons({ cost, onDo }: { cost: Cost; onDo: (what: 'edit' | 'remove') => void }) {
  const name = `${COST_WORDS[cost.kind]}, ${formatDay(cost.on)}`;
  return (
    <span className="row">
      <Button kind="quiet" label={`Edit: ${name}`} onClick={() => onDo('edit')}>
        Edit
      </Button>
      <Button kind="quiet" label={`Remove: ${name}`} onClick={() => onDo('remove')}>
        Remove
      </Button>
    </span>
  );
}

const money = (minor: number | null, row: Earning) =>
  minor === null ? <span className="soft">not recorded</span> : formatMoney(minor, row.currency);

/** Copies that earn the costs back, or why no number can be told. */
function Cover({ row }: { row: Earning }) {
  if (row.copiesToCover !== null) return row.copiesToCover.toLocaleString();
  return <span className="soft">{row.keptMinor === null ? 'not known' : 'never'}</span>;
}

const EARNINGS: readonly Column<Earning>[] = [
  { key: 'listing', header: 'Sold as', cell: (row) => `${row.formatName} · ${row.channelName}` },
  { key: 'list', header: 'Price', align: 'end', nowrap: true, cell: (row) => money(row.listMinor, row) },
  { key: 'discount', header: 'Discount', align: 'end', cell: (row) => percent(row.discountBp) },
  {
    key: 'cost',
    header: 'Print cost',
    align: 'end',
    nowrap: true,
    cell: (row) => money(row.printCostMinor, row),
  },
  {
    key: 'kept',
    header: 'A copy earns',
    align: 'end',
    nowrap: true,
    cell: (row) => money(row.keptMinor, row),
  },
  {
    key: 'cover',
    header: 'Copies to earn the costs back',
    align: 'end',
    cell: (row) => <Cover row={row} />,
  },
];

function EarningTable({ rows }: { rows: readonly Earning[] }) {
  return (
    <Table
      caption="What a copy earns on each channel"
      columns={EARNINGS}
      rows={rows}
      rowKey={(row) => `${row.listingId} ${row.currency}`}
      foot={
        <span>
          A copy earns price × (1 − discount) − print cost, before tax and whatever else the channel keeps;
          what the channel pays is what its terms say.
        </span>
      }
    />
  );
}
