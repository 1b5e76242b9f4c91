import { type Column, Table } from '../../../ui/index.ts';
import { type OwnedBlock, usesOf } from './list.ts';

const USES = [
  { key: 'free', header: 'Free' },
  { key: 'assigned', header: 'Assigned' },
  { key: 'spent', header: 'Spent' },
  { key: 'unsaid', header: 'Not said' },
] as const;

const COLUMNS: Column<OwnedBlock>[] = [
  {
    key: 'prefix',
    header: 'Block',
    nowrap: true,
    cell: (block) => <span className="mono">{block.hyphenatedPrefix}</span>,
  },
  { key: 'known', header: 'Here', nowrap: true, cell: ({ known }) => (known ? 'known' : 'new') },
  { key: 'agency', header: 'Agency', cell: ({ agency }) => agency },
  { key: 'capacity', header: 'Holds', align: 'end', cell: ({ capacity }) => capacity.toLocaleString() },
  {
    key: 'listed',
    header: 'In the list',
    align: 'end',
    nowrap: true,
    cell: ({ complete, numbers }) => (complete ? 'all' : numbers.length.toLocaleString()),
  },
  ...USES.map(
    ({ key, header }): Column<OwnedBlock> => ({
      key,
      header,
      align: 'end',
      cell: (block) => usesOf(block)[key].toLocaleString(),
    }),
  ),
];

/** The blocks that the numbers of a list lie in, with how many the list calls free, assigned or spent. */
export function BlockPreviewTable({ blocks }: { blocks: readonly OwnedBlock[] }) {
  return (
    <Table
      caption="Blocks of the list"
      captionShown
      columns={COLUMNS}
      rows={blocks}
      rowKey={(block) => block.hyphenatedPrefix}
    />
  );
}
