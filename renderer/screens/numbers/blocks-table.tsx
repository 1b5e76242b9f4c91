import type { Block } from '../../../src/contract/blocks.ts';
import { formatMoney } from '../../lib/money.ts';
import { type Column, Isbn, Table } from '../../ui/index.ts';
import { costPerNumber, leftInWords } from './words.ts';

const COLUMNS: Column<Block>[] = [
  {
    key: 'prefix',
    header: 'Block',
    nowrap: true,
    cell: (block) => <span className="mono">{block.hyphenatedPrefix}</span>,
    sortBy: (block) => block.digits,
  },
  {
    key: 'label',
    header: 'Label and agency',
    cell: (block) => (
      <div>
        {block.label === '' ? null : <p>{block.label}</p>}
        <p className="soft">{block.agency}</p>
      </div>
    ),
  },
  {
    key: 'left',
    header: 'Left',
    nowrap: true,
    cell: (block) => leftInWords(block.counts.free, block.capacity),
  },
  ...(['reserved', 'assigned', 'spent'] as const).map(
    (standing): Column<Block> => ({
      key: standing,
      header: standing.replace(/^./, (letter) => letter.toUpperCase()),
      align: 'end',
      cell: (block) => block.counts[standing].toLocaleString(),
    }),
  ),
  {
    key: 'next',
    header: 'Next free',
    cell: (block) => (block.nextFree === null ? 'none' : <Isbn value={block.nextFree} copy />),
  },
  {
    key: 'bought',
    header: 'Bought',
    nowrap: true,
    cell: (block) => block.boughtOn ?? '—',
    sortBy: (block) => block.boughtOn,
  },
  {
    key: 'cost',
    header: 'Cost',
    align: 'end',
    nowrap: true,
    cell: ({ cost, capacity }) =>
      cost === null ? (
        '—'
      ) : (
        <div>
          <p className="nowrap">{formatMoney(cost.amountMinor, cost.currency)}</p>
          <p className="soft nowrap">{costPerNumber(cost, capacity)} each</p>
        </div>
      ),
  },
];

export interface BlocksTableProps {
  blocks: readonly Block[];
  chosen: number | undefined;
  onChoose: (block: Block) => void;
}

/** The blocks the press owns; choosing one shows its numbers below. */
export function BlocksTable({ blocks, chosen, onChoose }: BlocksTableProps) {
  return (
    <div className="block-table">
      <Table
        caption="Number blocks"
        columns={COLUMNS}
        rows={blocks}
        rowKey={(block) => block.id}
        onOpen={onChoose}
        rowTone={(block) => (block.id === chosen && blocks.length > 1 ? 'chosen' : undefined)}
      />
    </div>
  );
}
