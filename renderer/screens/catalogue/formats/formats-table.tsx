import { useMemo, useState } from 'react';
import { useLocation } from 'wouter';
import type { FormatRow } from '../../../../src/contract/format-list.ts';
import { useQueryOf } from '../../../api.ts';
import { useAsOf } from '../../../location.ts';
import { ColumnsDialog } from '../../../ui/grid/columns-dialog.tsx';
import { Grid, GridHint } from '../../../ui/grid/grid.tsx';
import { useKeptColumns } from '../../../ui/grid/use-kept-columns.ts';
import { Button, copyText, EmptyState, Refused } from '../../../ui/index.ts';
import { counted } from '../words.ts';
import { BulkBar } from './bulk-bar.tsx';
import { COLUMNS, FIRST_COLUMNS, routeOfRow } from './columns.tsx';
import { FilterBar } from './filter-bar.tsx';
import { asTsv, useRows } from './use-rows.ts';
import { NO_TERMS, useFormatTerms } from './use-terms.ts';
import './formats.css';

const NONE: readonly number[] = [];
const COLUMN_SET = { all: COLUMNS, first: FIRST_COLUMNS };
const nameOf = (row: FormatRow) => `${row.edition}, ${row.name}`;

/** Every format in one table: filtered, put in order, chosen and changed many at a time. */
export default function FormatsTable() {
  const { asOf } = useAsOf();
  const [, navigate] = useLocation();
  const asked = useFormatTerms();
  const columns = useKeptColumns('format columns', COLUMN_SET);
  const [choosing, setChoosing] = useState(false);
  const [chosen, setChosen] = useState<ReadonlySet<number>>(new Set());
  const found = useQueryOf(
    'formats.find',
    { terms: asked.terms, sort: { by: asked.by, down: asked.sort.down }, asOf },
    { keep: true },
  );
  const ids = found.data?.ids ?? NONE;
  const { rowAt, onSight } = useRows(ids);
  const shown = useMemo(() => new Set(ids), [ids]);
  const picked = useMemo(() => new Set([...chosen].filter((id) => shown.has(id))), [chosen, shown]);
  const copy = async (wanted: readonly number[]) => {
    const text = await asTsv(wanted, columns.columns, asOf);
    await copyText(text, `The text of ${counted(wanted.length, 'row')}`);
  };
  return (
    <div className="formats">
      <FilterBar asked={asked} />
      <Refused refusal={found.error} />
      <div className="grid-line">
        <p role="status">
          {found.data
            ? `${counted(ids.length, 'format')} of ${found.data.all.toLocaleString()}`
            : 'Reading the catalogue…'}
        </p>
        <div className="row">
          <Button onClick={() => setChoosing(true)}>Columns…</Button>
          <Button onClick={() => void copy(picked.size > 0 ? ids.filter((id) => picked.has(id)) : ids)}>
            {picked.size > 0 ? 'Copy chosen rows' : 'Copy all rows'}
          </Button>
        </div>
      </div>
      <BulkBar chosen={picked} onDone={() => setChosen(new Set())} />
      {found.data && ids.length === 0 ? (
        <EmptyState
          title="No format passes this filter"
          action={<Button onClick={() => asked.setTerms(NO_TERMS)}>Show all formats</Button>}
        />
      ) : (
        <Grid
          label="Formats"
          count={ids.length}
          idAt={(index) => ids[index] ?? -1}
          rowAt={rowAt}
          nameOf={nameOf}
          columns={columns.columns}
          widths={columns.widths}
          onWidth={columns.setWidth}
          sort={asked.sort}
          onSort={asked.setSort}
          chosen={picked}
          onChoose={setChosen}
          onOpen={(row) => navigate(routeOfRow(row))}
          onSight={onSight}
          onCopy={(indexes) => void copy(indexes.map((index) => ids[index] ?? -1))}
        />
      )}
      <GridHint />
      {choosing ? <ColumnsDialog columns={columns} onClose={() => setChoosing(false)} /> : null}
    </div>
  );
}
