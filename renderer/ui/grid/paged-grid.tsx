import { type ReactNode, useState } from 'react';
import { announce } from '../../status.ts';
import { Button, copyText, Refused } from '../index.ts';
import type { Sort } from '../table-sort.ts';
import { ColumnsDialog } from './columns-dialog.tsx';
import { Grid, GridHint } from './grid.tsx';
import { tsvHead, tsvLine } from './tsv.ts';
import { type ColumnSet, useKeptColumns } from './use-kept-columns.ts';
import { type PagedList, readPlaces, usePages } from './use-pages.ts';

/** More is no matter for the clipboard. */
const MOST_COPIED = 100_000;
const NONE: ReadonlySet<number> = new Set();

export interface PagedGridProps<Row> {
  label: string;
  /** What a row is: one of them, several of them. */
  noun: readonly [string, string];
  list: PagedList<Row>;
  columns: ColumnSet<Row>;
  /** Under which name the columns are remembered. */
  memory: string;
  sort: Sort;
  onSort: (sort: Sort) => void;
  nameOf: (row: Row) => string;
  onOpen: (row: Row) => void;
  /** Shown instead of the grid where there is no row. */
  empty: ReactNode;
}

/** Rows are known by their places, so what is chosen belongs to one list in one order. */
function useChosen(question: readonly unknown[]) {
  const list = JSON.stringify(question);
  const [{ of, chosen }, setChosen] = useState({ of: list, chosen: NONE });
  return {
    chosen: of === list ? chosen : NONE,
    choose: (next: ReadonlySet<number>) => setChosen({ of: list, chosen: next }),
  };
}

/** A long list that is read as it comes into sight: sorted, columns chosen and resized, rows chosen and copied. */
export function PagedGrid<Row>(props: PagedGridProps<Row>) {
  const { label, noun, list, sort, empty } = props;
  const columns = useKeptColumns(props.memory, props.columns);
  const { total, rowAt, onSight, error } = usePages(list);
  const { chosen, choose } = useChosen(list.question);
  const [choosing, setChoosing] = useState(false);
  const [copying, setCopying] = useState(false);
  const counted = (count: number) => `${count.toLocaleString()} ${noun[count === 1 ? 0 : 1]}`;
  const copy = async (places: readonly number[]) => {
    if (places.length > MOST_COPIED)
      return announce(
        `${counted(places.length)} are too many to copy; choose up to ${MOST_COPIED.toLocaleString()}, or export a file.`,
        'refused',
      );
    setCopying(true);
    try {
      const rows = await readPlaces(list, places);
      const lines = rows.map((row) => tsvLine(columns.columns, row));
      await copyText([tsvHead(columns.columns), ...lines].join('\n'), `The text of ${counted(lines.length)}`);
    } catch (thrown) {
      announce(thrown instanceof Error ? thrown.message : String(thrown), 'refused');
    } finally {
      setCopying(false);
    }
  };
  const all = () => Array.from({ length: total ?? 0 }, (_, place) => place);
  if (error) return <Refused refusal={error} />;
  return (
    <div className="grid-part">
      <div className="grid-line">
        <p role="status">
          {total === undefined ? 'Reading the catalogue…' : counted(total)}
          {chosen.size > 0 ? `, ${chosen.size.toLocaleString()} chosen` : ''}
        </p>
        <div className="row">
          <Button onClick={() => setChoosing(true)}>Columns…</Button>
          <Button
            pending={copying}
            disabled={!total}
            reason="There is nothing to copy."
            onClick={() => void copy(chosen.size > 0 ? [...chosen] : all())}
          >
            {chosen.size > 0 ? 'Copy chosen rows' : 'Copy all rows'}
          </Button>
        </div>
      </div>
      {total === 0 ? (
        empty
      ) : (
        <Grid
          label={label}
          count={total ?? 0}
          idAt={(index) => index}
          rowAt={rowAt}
          nameOf={props.nameOf}
          columns={columns.columns}
          widths={columns.widths}
          onWidth={columns.setWidth}
          sort={sort}
          onSort={props.onSort}
          chosen={chosen}
          onChoose={choose}
          onOpen={props.onOpen}
          onSight={onSight}
          onCopy={(places) => void copy(places)}
        />
      )}
      <GridHint />
      {choosing ? <ColumnsDialog columns={columns} onClose={() => setChoosing(false)} /> : null}
    </div>
  );
}
