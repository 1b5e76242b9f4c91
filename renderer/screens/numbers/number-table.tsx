import { Link } from 'wouter';
import type { NumberRow } from '../../../src/contract/numbers.ts';
import { NUMBER_STANDINGS, type NumberStanding } from '../../../src/contract/terms.ts';
import { useQueryOf } from '../../api.ts';
import { useQueryParam } from '../../location.ts';
import {
  Button,
  type Column,
  EmptyState,
  Refused,
  Select,
  Standing,
  Table,
  Toolbar,
} from '../../ui/index.ts';
import { ExportButton } from './export-button.tsx';

const COUNT = 100;

type Shown = NumberStanding | 'all';

const COLUMNS: Column<NumberRow>[] = [
  {
    key: 'isbn',
    header: 'Number',
    nowrap: true,
    cell: (row) => <span className="mono">{row.hyphenated}</span>,
  },
  { key: 'standing', header: 'Standing', cell: (row) => <Standing of="number" value={row.standing} /> },
  {
    key: 'usedFor',
    header: 'Used for',
    cell: (row) =>
      row.workId === null ? row.usedFor : <Link href={`/work/${row.workId}`}>{row.usedFor}</Link>,
  },
  { key: 'since', header: 'Since', nowrap: true, cell: (row) => row.since },
  { key: 'reason', header: 'Why spent', cell: (row) => row.spentReason },
];

interface PagerProps {
  from: number;
  shown: number;
  total: number;
  go: (from: number) => void;
}

function Pager({ from, shown, total, go }: PagerProps) {
  return (
    <>
      <span>
        {total === 0
          ? 'No number'
          : `Numbers ${(from + 1).toLocaleString()} to ${(from + shown).toLocaleString()} of ${total.toLocaleString()}`}
      </span>
      {total > COUNT ? (
        <span className="row">
          <Button disabled={from === 0} reason="This is the first page." onClick={() => go(from - COUNT)}>
            Previous page
          </Button>
          <Button
            disabled={from + COUNT >= total}
            reason="This is the last page."
            onClick={() => go(from + COUNT)}
          >
            Next page
          </Button>
        </span>
      ) : null}
    </>
  );
}

export interface NumberTableProps {
  /** Left out: every number that is taken, in every block and outside them. */
  blockId?: number | undefined;
  caption: string;
  fileName: string;
  asOf: string | undefined;
  onOpen: (row: NumberRow) => void;
}

function useFilter(blockId: number | undefined) {
  const [standing, setStanding] = useQueryParam('standing', 'all');
  const [fromText, setFrom] = useQueryParam('from', '0');
  const offered = NUMBER_STANDINGS.filter((one) => blockId !== undefined || one !== 'free');
  const chosen = offered.find((one) => one === standing);
  return {
    offered,
    chosen,
    from: /^\d{1,7}$/.test(fromText) ? Number(fromText) : 0,
    choose: (next: Shown) => {
      setFrom('0');
      setStanding(next);
    },
    go: (from: number) => setFrom(String(Math.max(from, 0))),
  };
}

/** The numbers as a table, by standing and a page at a time: the picture's equivalent in text. */
export function NumberTable({ blockId, caption, fileName, asOf, onOpen }: NumberTableProps) {
  const { offered, chosen, from, choose, go } = useFilter(blockId);
  const filter = { blockId, standing: chosen, asOf };
  const list = useQueryOf('numbers.list', { ...filter, from, count: COUNT }, { keep: true });
  const rows = list.data?.rows ?? [];
  const total = list.data?.total ?? 0;
  return (
    <div className="number-table">
      <Toolbar
        label="Numbers shown"
        end={
          <ExportButton
            filter={filter}
            fileName={chosen ? `${fileName}-${chosen}` : fileName}
            disabled={total === 0}
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
      <Refused refusal={list.error} />
      <Table
        caption={caption}
        columns={COLUMNS}
        rows={rows}
        rowKey={(row) => row.isbn13}
        onOpen={onOpen}
        rowTone={(row) => (row.standing === 'free' ? 'quiet' : undefined)}
        loading={list.isLoading}
        foot={<Pager from={from} shown={rows.length} total={total} go={go} />}
        empty={
          <EmptyState title={chosen ? `No ${chosen} number here` : 'No number here'}>
            Choose another standing to see the others.
          </EmptyState>
        }
      />
    </div>
  );
}
