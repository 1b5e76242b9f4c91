import { defaultRangeExtractor, useVirtualizer } from '@tanstack/react-virtual';
import { type KeyboardEvent, useCallback, useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import { placeAfter, withRows } from './move.ts';
import type { GridProps, Place } from './types.ts';
import { NARROWEST, WIDEST } from './types.ts';

export const ROW_HEIGHT = 36;
const STEP = 16;

/** The rows in sight and the one the keys are at, of however many there are. */
function useRowsInSight<Row>({ count, onSight }: GridProps<Row>, at: number) {
  const frame = useRef<HTMLDivElement>(null);
  const rows = useVirtualizer({
    count,
    getScrollElement: () => frame.current,
    estimateSize: () => ROW_HEIGHT,
    overscan: 10,
    scrollPaddingStart: ROW_HEIGHT,
    rangeExtractor: (range) => {
      const shown = defaultRangeExtractor(range);
      if (at < 0 || at >= count || shown.includes(at)) return shown;
      return [...shown, at].sort((a, b) => a - b);
    },
  });
  const items = rows.getVirtualItems();
  // Not the items: the row the keys are at may be far out of sight.
  const first = rows.range?.startIndex ?? 0;
  const last = rows.range?.endIndex ?? 0;
  useEffect(() => onSight(first, last), [onSight, first, last]);
  return { frame, rows, items };
}

/** Choosing rows by key: Space, Shift with arrows, Ctrl A. Answers whether the key was one of these. */
function chooseByKey<Row>(event: KeyboardEvent, props: GridProps<Row>, { row }: Place): boolean {
  const { chosen, onChoose, idAt, count } = props;
  if (event.key === ' ' && row >= 0) onChoose(withRows(chosen, [row, row], idAt, !chosen.has(idAt(row))));
  else if (event.key.toLowerCase() === 'a' && (event.ctrlKey || event.metaKey)) {
    const all = chosen.size === count;
    onChoose(all ? new Set() : withRows(new Set(), [0, count - 1], idAt, true));
  } else if (event.key === 'Escape' && chosen.size > 0) onChoose(new Set());
  else return false;
  return true;
}

/** What the other keys do at a place: widths and order in the head, opening and copying in the rows. */
function actByKey<Row>(event: KeyboardEvent, props: GridProps<Row>, { row, column }: Place): boolean {
  const header = row < 0 ? props.columns[column - 1] : undefined;
  if (header && event.shiftKey && (event.key === 'ArrowLeft' || event.key === 'ArrowRight')) {
    const width = props.widths[header.key] ?? header.width;
    const next = width + (event.key === 'ArrowLeft' ? -STEP : STEP);
    props.onWidth(header.key, Math.max(NARROWEST, Math.min(WIDEST, next)));
    return true;
  }
  if (event.key === 'Enter' && header?.sortable) {
    props.onSort({ key: header.key, down: props.sort.key === header.key && !props.sort.down });
    return true;
  }
  const opened = event.key === 'Enter' && row >= 0 ? props.rowAt(row) : undefined;
  if (opened) props.onOpen(opened);
  if (opened) return true;
  if (event.key.toLowerCase() !== 'c' || !(event.ctrlKey || event.metaKey)) return false;
  if (window.getSelection()?.isCollapsed === false) return false;
  const picked = Array.from({ length: props.count }, (_, at) => at).filter((at) =>
    props.chosen.has(props.idAt(at)),
  );
  props.onCopy(picked.length > 0 || row < 0 ? picked : [row]);
  return true;
}

/** Chooses a row or not; the same function for as long as the grid is there. */
function useToggle<Row>(props: GridProps<Row>) {
  const latest = useRef(props);
  useLayoutEffect(() => {
    latest.current = props;
  });
  return useCallback((index: number) => {
    const { chosen, idAt, onChoose } = latest.current;
    onChoose(withRows(chosen, [index, index], idAt, !chosen.has(idAt(index))));
  }, []);
}

/** The state of a grid: where the keys are, which rows are in sight, and what each key does. */
export function useGrid<Row>(props: GridProps<Row>) {
  const id = useId();
  const [place, setPlace] = useState<Place>({ row: 0, column: 1 });
  const at = {
    row: Math.min(place.row, props.count - 1),
    column: Math.min(place.column, props.columns.length),
  };
  const { frame, rows, items } = useRowsInSight(props, at.row);
  const moved = useRef(false);
  const cellId = useCallback((row: number, column: number) => `${id}-${row}-${column}`, [id]);
  const onToggle = useToggle(props);
  // Before the next key arrives: it must find the focus where this one put it.
  useLayoutEffect(() => {
    if (!moved.current) return;
    moved.current = false;
    const cell = document.getElementById(cellId(at.row, at.column));
    cell?.focus({ preventScroll: true });
    // After the list has scrolled to the row, which it does with the next frame.
    requestAnimationFrame(() => {
      if (cell === document.activeElement) cell?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    });
  });
  const goTo = (next: Place) => {
    moved.current = true;
    setPlace(next);
    if (next.row >= 0) rows.scrollToIndex(next.row, { align: 'auto' });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (
      event.altKey ||
      (event.target instanceof HTMLElement && event.target.matches('input:not([type=checkbox])'))
    )
      return;
    const done = actByKey(event, props, at) || chooseByKey(event, props, at);
    const page = Math.max(1, Math.floor((frame.current?.clientHeight ?? 0) / ROW_HEIGHT) - 2);
    const extent = { rows: props.count, columns: props.columns.length + 1, page };
    const next = done
      ? undefined
      : placeAfter({ key: event.key, ctrl: event.ctrlKey || event.metaKey }, at, extent);
    if (next) {
      if (event.shiftKey && at.row >= 0 && next.row >= 0 && next.row !== at.row)
        props.onChoose(withRows(props.chosen, [at.row, next.row], props.idAt, true));
      goTo(next);
    }
    if (done || next) event.preventDefault();
  };
  return { frame, items, height: rows.getTotalSize(), at, cellId, setPlace, onKeyDown, onToggle };
}
