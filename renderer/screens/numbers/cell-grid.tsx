import { type KeyboardEvent, memo, type ReactNode, useEffect, useRef, useState } from 'react';
import { classNames } from '../../ui/class-names.ts';
import { Shape } from '../../ui/standing-shapes.tsx';
import { targetCell } from './cell-keys.ts';

/** One small cell: what it is called, how it is drawn on the 16 × 16 field of the shapes, its class. */
export interface Cell {
  name: string;
  shape: ReactNode;
  tone: string;
}

export interface CellGridProps {
  label: string;
  /** Keep the array between renderings: only cells that changed are drawn anew. */
  cells: readonly Cell[];
  columns: number;
  /** Stands before a row: names it by the place of its first cell. */
  rowName: (first: number) => string;
  /** The cell under the pointer or the focus, which is told beside the grid. */
  onLook: (place: number) => void;
  onOpen: (place: number) => void;
  /** The place the Tab key leads to at first. */
  start?: number | undefined;
  /** Takes the focus as soon as it is shown. */
  takeFocus?: boolean | undefined;
  large?: boolean | undefined;
}

const CellBox = memo(function CellBox({ cell, place, stop }: { cell: Cell; place: number; stop: boolean }) {
  return (
    <td
      data-place={place}
      tabIndex={stop ? 0 : -1}
      aria-label={cell.name}
      className={classNames('cell', cell.tone)}
    >
      <Shape>{cell.shape}</Shape>
    </td>
  );
});

function placeOf(target: EventTarget): number | undefined {
  const box = target instanceof Element ? target.closest<HTMLElement>('[data-place]') : null;
  return box ? Number(box.dataset.place) : undefined;
}

/** Small cells in rows, one stop of the Tab key, walked with the arrow keys, Home, End, Page up and down. */
export function CellGrid(props: CellGridProps) {
  const { label, cells, columns, rowName, onLook, onOpen, takeFocus } = props;
  const [at, setAt] = useState(props.start ?? 0);
  const table = useRef<HTMLTableElement>(null);
  const here = Math.min(at, cells.length - 1);
  const focus = (place: number) =>
    table.current?.querySelector<HTMLElement>(`[data-place="${place}"]`)?.focus();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the focus is taken once, when the grid appears.
  useEffect(() => {
    if (takeFocus) focus(here);
  }, []);
  const onKeyDown = (event: KeyboardEvent) => {
    const place = placeOf(event.target);
    if (place === undefined) return;
    const next = targetCell(event, place, columns, cells.length);
    if (next !== undefined) focus(next);
    else if (event.key === 'Enter' || event.key === ' ') onOpen(place);
    else return;
    event.preventDefault();
  };
  const look = (target: EventTarget) => {
    const place = placeOf(target);
    if (place !== undefined) onLook(place);
  };
  const rows = Array.from({ length: Math.ceil(cells.length / columns) }, (_, row) => row * columns);
  return (
    <table
      ref={table}
      // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: ARIA in HTML allows a table to be a grid, and its rows and cells follow.
      role="grid"
      aria-label={label}
      aria-readonly="true"
      className={classNames('cells', props.large && 'cells-large')}
      onKeyDown={onKeyDown}
      onMouseOver={(event) => look(event.target)}
      onMouseLeave={() => onLook(here)}
      onFocus={(event) => {
        const place = placeOf(event.target);
        if (place === undefined) return;
        setAt(place);
        onLook(place);
      }}
      onClick={(event) => {
        const place = placeOf(event.target);
        if (place !== undefined) onOpen(place);
      }}
    >
      <tbody>
        {rows.map((first) => (
          <tr key={first}>
            <th scope="row">{rowName(first)}</th>
            {cells.slice(first, first + columns).map((cell, offset) => (
              <CellBox
                key={String(first + offset)}
                cell={cell}
                place={first + offset}
                stop={first + offset === here}
              />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** How the grid is walked. */
export function CellHint({ opens }: { opens: string }) {
  return (
    <p className="soft cell-hint">
      Point at a shape, or walk with the arrow keys; press it, or <kbd>Enter</kbd>, to open {opens}.
    </p>
  );
}
