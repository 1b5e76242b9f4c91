// A grid is no <table>: only the rows in sight are there, so its roles are written out.
// biome-ignore-all lint/a11y/useSemanticElements: see above.
// biome-ignore-all lint/a11y/useAriaPropsSupportedByRole: the role of a cell comes with its other attributes.
import { type CSSProperties, memo, type PointerEvent } from 'react';
import { classNames } from '../class-names.ts';
import { type GridColumn, type GridProps, NARROWEST, type Place, WIDEST } from './types.ts';
import { ROW_HEIGHT, useGrid } from './use-grid.ts';
import './grid.css';

interface CellShared {
  at: Place;
  cellId: (row: number, column: number) => string;
  setPlace: (place: Place) => void;
}

/** Drags the edge of a column; its width can be typed in the dialog of the columns too. */
function dragWidth(event: PointerEvent<HTMLElement>, width: number, onWidth: (width: number) => void): void {
  event.preventDefault();
  const start = event.clientX;
  const edge = event.currentTarget;
  edge.setPointerCapture(event.pointerId);
  edge.onpointermove = (move) =>
    onWidth(Math.max(NARROWEST, Math.min(WIDEST, Math.round(width + move.clientX - start))));
  edge.onpointerup = () => {
    edge.onpointermove = null;
    edge.onpointerup = null;
  };
}

function Head<Row>({ props, at, cellId, setPlace }: { props: GridProps<Row> } & CellShared) {
  const { columns, sort, onSort, widths, chosen, count } = props;
  const all = count > 0 && chosen.size === count;
  const cell = (column: number) => ({
    id: cellId(-1, column),
    role: 'columnheader',
    tabIndex: at.row === -1 && at.column === column ? 0 : -1,
    'aria-colindex': column + 1,
    onFocus: () => setPlace({ row: -1, column }),
  });
  return (
    <div role="rowgroup" className="grid-head">
      {/* biome-ignore lint/a11y/useFocusableInteractive: the cells take the focus, as the grid pattern has it. */}
      <div role="row" className="grid-row" aria-rowindex={1}>
        <div {...cell(0)} className="grid-cell grid-check">
          <input
            type="checkbox"
            tabIndex={-1}
            aria-label="Choose every row of this list"
            checked={all}
            onChange={() =>
              props.onChoose(
                all ? new Set() : new Set(Array.from({ length: count }, (_, index) => props.idAt(index))),
              )
            }
          />
        </div>
        {columns.map((column, index) => {
          const sorted = sort.key === column.key ? (sort.down ? 'descending' : 'ascending') : undefined;
          return (
            <div
              key={column.key}
              {...cell(index + 1)}
              aria-sort={sorted}
              className={classNames('grid-cell', column.align === 'end' && 'align-end')}
            >
              {column.sortable ? (
                <button
                  type="button"
                  tabIndex={-1}
                  className="grid-sort"
                  onClick={() => onSort({ key: column.key, down: sorted === 'ascending' })}
                >
                  {column.header}
                  <span aria-hidden="true">{sorted === undefined ? '' : sort.down ? ' ▾' : ' ▴'}</span>
                </button>
              ) : (
                column.header
              )}
              <span
                className="grid-edge"
                aria-hidden="true"
                onPointerDown={(event) =>
                  dragWidth(event, widths[column.key] ?? column.width, (width) =>
                    props.onWidth(column.key, width),
                  )
                }
              />
            </div>
          );
        })}
      </div>
    </div>
  );
}

interface LineProps<Row> {
  row: Row | undefined;
  index: number;
  start: number;
  chosen: boolean;
  /** The column that the keys are at, where they are in this row. */
  column: number | undefined;
  columns: readonly GridColumn<Row>[];
  nameOf: (row: Row) => string;
  cellId: CellShared['cellId'];
  setPlace: CellShared['setPlace'];
  onToggle: (index: number) => void;
}

function OneLine<Row>(props: LineProps<Row>) {
  const { row, index, chosen, column: at, cellId, setPlace } = props;
  const cell = (column: number) => ({
    id: cellId(index, column),
    role: 'gridcell',
    tabIndex: at === column ? 0 : -1,
    'aria-colindex': column + 1,
    onFocus: () => setPlace({ row: index, column }),
  });
  return (
    // biome-ignore lint/a11y/useFocusableInteractive: the cells take the focus, as the grid pattern has it.
    <div
      role="row"
      className={classNames('grid-row', chosen && 'row-chosen')}
      aria-rowindex={index + 2}
      aria-selected={chosen}
      style={{ position: 'absolute', top: props.start, height: ROW_HEIGHT }}
    >
      <div {...cell(0)} className="grid-cell grid-check">
        <input
          type="checkbox"
          tabIndex={-1}
          aria-label={row === undefined ? 'Choose this row' : `Choose ${props.nameOf(row)}`}
          checked={chosen}
          onChange={() => props.onToggle(index)}
        />
      </div>
      {props.columns.map((column, place) => (
        <div
          key={column.key}
          {...cell(place + 1)}
          className={classNames('grid-cell', column.align === 'end' && 'align-end')}
        >
          {row === undefined ? '…' : column.cell(row)}
        </div>
      ))}
    </div>
  );
}

/** Drawn anew only where the row itself, its choice or the place of the keys changed: scrolling moves the rest. */
const Line = memo(OneLine) as typeof OneLine;

/**
 * A table of any length by the grid pattern of the WAI-ARIA Authoring Practices: one stop of the Tab key, arrows within,
 * Space chooses, Enter opens, Ctrl C copies. Only the rows in sight are drawn.
 */
export function Grid<Row>(props: GridProps<Row>) {
  const { frame, items, height, at, cellId, setPlace, onKeyDown, onToggle } = useGrid(props);
  const tracks = [
    '2.5rem',
    ...props.columns.map((column) => `${props.widths[column.key] ?? column.width}px`),
  ];
  const shared = { at, cellId, setPlace };
  return (
    <div
      ref={frame}
      role="grid"
      className="grid"
      aria-label={props.label}
      aria-rowcount={props.count + 1}
      aria-colcount={props.columns.length + 1}
      aria-multiselectable="true"
      // The cells take the focus; a browser that scrolls by key would make the frame a stop of its own.
      tabIndex={-1}
      style={{ '--tracks': tracks.join(' ') } as CSSProperties}
      onKeyDown={onKeyDown}
    >
      <Head props={props} {...shared} />
      <div role="rowgroup" className="grid-body" style={{ height }}>
        {items.map((item) => (
          <Line
            key={item.key}
            row={props.rowAt(item.index)}
            index={item.index}
            start={item.start}
            chosen={props.chosen.has(props.idAt(item.index))}
            column={at.row === item.index ? at.column : undefined}
            columns={props.columns}
            nameOf={props.nameOf}
            cellId={cellId}
            setPlace={setPlace}
            onToggle={onToggle}
          />
        ))}
      </div>
    </div>
  );
}

/** How a grid is used by keys, under it. */
export function GridHint() {
  return (
    <p className="soft grid-hint">
      Arrows move, Space chooses, Shift with arrows chooses on, Ctrl A all, Enter opens, Ctrl C copies for a
      spreadsheet; in the heads Enter sorts and Shift with arrows sets the width.
    </p>
  );
}
