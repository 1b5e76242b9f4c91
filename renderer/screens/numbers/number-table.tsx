import { Link } from 'wouter';
import { NUMBER_SORTS, type NumberRow } from '../../../src/contract/numbers.ts';
import { NUMBER_STANDINGS, type NumberStanding } from '../../../src/contract/terms.ts';
import { call, useQueryOf } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { useQueryParam } from '../../location.ts';
import { PagedGrid } from '../../ui/grid/paged-grid.tsx';
import type { GridColumn } from '../../ui/grid/types.ts';
import { useSortParam } from '../../ui/grid/use-sort-param.ts';
import { EmptyState, Isbn, Select, Standing, Toolbar } from '../../ui/index.ts';
import { ExportButton } from './export-button.tsx';

type Shown = NumberStanding | 'all';

const day = (value: string | null) => (value === null ? '' : formatDay(value));

const ALL: readonly GridColumn<NumberRow>[] = [
  {
    key: 'number',
    header: 'Number',
    width: 220,
    sortable: true,
    text: (row) => row.hyphenated,
    cell: (row) => <Isbn value={row.hyphenated} />,
  },
  {
    key: 'standing',
    header: 'Standing',
    width: 130,
    sortable: true,
    text: (row) => row.standing,
    cell: (row) => <Standing of="number" value={row.standing} />,
  },
  {
    key: 'used for',
    header: 'Used for',
    width: 340,
    sortable: true,
    text: (row) => row.usedFor,
    cell: (row) =>
      row.workId === null ? (
        row.usedFor
      ) : (
        <Link href={`/work/${row.workId}`} tabIndex={-1}>
          {row.usedFor}
        </Link>
      ),
  },
  {
    key: 'since',
    header: 'Since',
    width: 130,
    sortable: true,
    text: (row) => row.since ?? '',
    cell: (row) => day(row.since),
  },
  {
    key: 'reason',
    header: 'Why spent',
    width: 200,
    text: (row) => row.spentReason ?? '',
    cell: (row) => row.spentReason,
  },
  {
    key: 'digits',
    header: 'Without hyphens',
    width: 150,
    text: (row) => row.isbn13,
    cell: (row) => <span className="mono">{row.isbn13}</span>,
  },
];
const COLUMNS = { all: ALL, first: ['number', 'standing', 'used for', 'since', 'reason'] };

export interface NumberTableProps {
  /** Left out: every number that is taken, in every block and outside them. */
  blockId?: number | undefined;
  caption: string;
  fileName: string;
  asOf: string | undefined;
  onOpen: (row: NumberRow) => void;
}

/** Which standing is shown, kept in the address. */
function useFilter(blockId: number | undefined) {
  const [standing, choose] = useQueryParam('standing', 'all');
  const offered = NUMBER_STANDINGS.filter((one) => blockId !== undefined || one !== 'free');
  return { offered, chosen: offered.find((one) => one === standing), choose };
}

/** The numbers as a table: the picture's equivalent in text. */
export function NumberTable({ blockId, caption, fileName, asOf, onOpen }: NumberTableProps) {
  const { offered, chosen, choose } = useFilter(blockId);
  const { by, sort, setSort } = useSortParam(NUMBER_SORTS);
  const filter = { blockId, standing: chosen, asOf };
  const terms = { ...filter, sort: { by, down: sort.down } };
  const { total } = useQueryOf('numbers.list', { ...filter, count: 1 }).data ?? {};
  return (
    <div className="number-table">
      <Toolbar
        label="Numbers shown"
        end={
          <ExportButton
            filter={filter}
            fileName={chosen ? `${fileName}-${chosen}` : fileName}
            disabled={!total}
          />
        }
      >
        <Select<Shown>
          label="Standing"
          width="medium"
          value={chosen ?? 'all'}
          onChange={choose}
          choices={[
            { value: 'all', label: 'Every standing' },
            ...offered.map((one) => ({ value: one, label: one })),
          ]}
        />
      </Toolbar>
      <PagedGrid
        label={caption}
        noun={['number', 'numbers']}
        list={{
          question: ['numbers.list', terms],
          read: (from, count) => call('numbers.list', { ...terms, from, count }),
        }}
        columns={COLUMNS}
        memory="number columns"
        sort={sort}
        onSort={setSort}
        nameOf={(row) => row.hyphenated}
        onOpen={onOpen}
        empty={
          <EmptyState title={chosen ? `No ${chosen} number here` : 'No number here'}>
            Choose another standing to see the others.
          </EmptyState>
        }
      />
    </div>
  );
}
