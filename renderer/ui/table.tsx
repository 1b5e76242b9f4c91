import { type KeyboardEvent, type MouseEvent, type ReactNode, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { classNames } from './class-names.ts';
import { TableFrame } from './table-frame.tsx';
import { type Column, type Sort, sortRows } from './table-sort.ts';

export type { Column, Sort };

export interface TableProps<Row> {
  /** Names the table for everybody who cannot see what stands around it. */
  caption: string;
  captionShown?: boolean | undefined;
  columns: readonly Column<Row>[];
  rows: readonly Row[];
  rowKey: (row: Row) => string | number;
  /** The route a row leads to; the first column becomes its link. */
  rowTo?: ((row: Row) => string) | undefined;
  /** What opening a row does, where it is no route; the first column becomes its button. */
  onOpen?: ((row: Row) => void) | undefined;
  /** First order; a header press changes it. */
  initialSort?: Sort | undefined;
  /** Give both where the host sorts instead of the table. */
  sort?: Sort | undefined;
  onSort?: ((sort: Sort) => void) | undefined;
  /** Shown instead of the table where there is no row. */
  empty?: ReactNode;
  loading?: boolean | undefined;
  /** Marks rows, such as retired ones: `quiet`. */
  rowTone?: ((row: Row) => 'quiet' | 'chosen' | undefined) | undefined;
  /** A line under the table: totals, paging. */
  foot?: ReactNode;
}

const PRESSABLE = 'a, button, input, select, textarea, label, summary';

/** Up and down move between the openers of the rows. */
function onRowKey(event: KeyboardEvent<HTMLTableSectionElement>): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
  const openers = [...event.currentTarget.querySelectorAll<HTMLElement>('.row-opener')];
  const { target } = event;
  const index = openers.findIndex((opener) => target instanceof Node && opener.contains(target));
  if (index < 0) return;
  event.preventDefault();
  openers[index + (event.key === 'ArrowDown' ? 1 : -1)]?.focus();
}

function HeaderCell<Row>({
  column,
  sort,
  onSort,
}: {
  column: Column<Row>;
  sort: Sort | undefined;
  onSort: (sort: Sort) => void;
}) {
  const sorted = sort?.key === column.key ? sort : undefined;
  const text = <span className={classNames(column.headerHidden && 'visually-hidden')}>{column.header}</span>;
  return (
    <th
      scope="col"
      className={classNames(column.align === 'end' && 'align-end')}
      aria-sort={sorted ? (sorted.down ? 'descending' : 'ascending') : undefined}
    >
      {column.sortBy ? (
        <button
          type="button"
          className="sort-button"
          onClick={() => onSort({ key: column.key, down: sorted ? !sorted.down : false })}
        >
          {text}
          <svg viewBox="0 0 8 14" width="8" height="14" aria-hidden="true" focusable="false">
            <path d="M1 5.5l3-4 3 4z" className={classNames(sorted && !sorted.down && 'shape-filled')} />
            <path d="M1 8.5l3 4 3-4z" className={classNames(sorted?.down && 'shape-filled')} />
          </svg>
        </button>
      ) : (
        text
      )}
    </th>
  );
}

function BodyRow<Row>({ row, props }: { row: Row; props: TableProps<Row> }) {
  const { columns, rowTo, onOpen, rowTone } = props;
  const [, navigate] = useLocation();
  const opens = Boolean(rowTo || onOpen);
  const onClick = (event: MouseEvent<HTMLTableRowElement>) => {
    const pressed = event.target instanceof Element && event.target.closest(PRESSABLE);
    if (pressed || window.getSelection()?.isCollapsed === false) return;
    if (rowTo) navigate(rowTo(row));
    else onOpen?.(row);
  };
  const opener = (content: ReactNode) => {
    if (rowTo)
      return (
        <Link className="row-opener" href={rowTo(row)}>
          {content}
        </Link>
      );
    if (!onOpen) return content;
    return (
      <button type="button" className="row-opener" onClick={() => onOpen(row)}>
        {content}
      </button>
    );
  };
  const tone = rowTone?.(row);
  return (
    // The press on a row is a shortcut for the mouse; its link or button serves keyboard and screen reader.
    <tr
      className={classNames(opens && 'row-opens', tone && `row-${tone}`)}
      onClick={opens ? onClick : undefined}
    >
      {columns.map((column, index) => {
        const className = classNames(column.align === 'end' && 'align-end', column.nowrap && 'nowrap');
        return index === 0 ? (
          <th key={column.key} scope="row" className={className}>
            {opener(column.cell(row))}
          </th>
        ) : (
          <td key={column.key} className={className}>
            {column.cell(row)}
          </td>
        );
      })}
    </tr>
  );
}

/** A table ruled like a printed one; scrolls sideways inside its own frame, never the page. */
export function Table<Row>(props: TableProps<Row>) {
  const { caption, captionShown, columns, rows, rowKey, empty, loading, foot } = props;
  const [ownSort, setOwnSort] = useState(props.initialSort);
  const sort = props.onSort ? props.sort : ownSort;
  const shown = props.onSort ? rows : sortRows(rows, columns, ownSort);
  if (rows.length === 0 && !loading && empty !== undefined) return empty;
  return (
    <TableFrame label={caption} foot={foot}>
      <table aria-busy={loading || undefined}>
        <caption className={classNames(!captionShown && 'visually-hidden')}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <HeaderCell key={column.key} column={column} sort={sort} onSort={props.onSort ?? setOwnSort} />
            ))}
          </tr>
        </thead>
        <tbody onKeyDown={onRowKey}>
          {shown.map((row) => (
            <BodyRow key={rowKey(row)} row={row} props={props} />
          ))}
          {loading && rows.length === 0 ? (
            <tr>
              <td colSpan={columns.length} className="table-waiting">
                Reading the catalogue…
              </td>
            </tr>
          ) : null}
        </tbody>
      </table>
    </TableFrame>
  );
}
