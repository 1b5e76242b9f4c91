import { type PointerEvent, useEffect, useState } from 'react';

/** A row that is being dragged: where it was, and the place it would take. */
export interface Drag {
  from: number;
  to: number;
}

/**
 * The place a dragged row takes when the pointer stands at `y`: `middles` are the heights of the rows' middles, all
 * in one unit. A row is passed when the pointer is beyond its middle.
 */
export function placeAt(middles: readonly number[], from: number, y: number): number {
  return middles.filter((middle, index) => index !== from && middle < y).length;
}

/** The rows with one of them at another place. */
export function moved<T>(rows: readonly T[], from: number, to: number): T[] {
  const next = [...rows];
  const [row] = next.splice(from, 1);
  if (row === undefined) return next;
  next.splice(to, 0, row);
  return next;
}

function middlesOf(handle: Element): number[] {
  const rows = handle.closest('ol')?.children ?? [];
  return Array.from(rows, (row) => {
    const { top, height } = row.getBoundingClientRect();
    return top + height / 2;
  });
}

interface Handle {
  onPointerDown: (event: PointerEvent<HTMLElement>) => void;
  onPointerMove: (event: PointerEvent<HTMLElement>) => void;
  onPointerUp: () => void;
  onPointerCancel: () => void;
}

/** Drags rows of a list by a handle with mouse, pen or finger; Escape lets the row go where it was. */
export function useDrag(onMove: (from: number, to: number) => void): {
  drag: Drag | undefined;
  handleOf: (index: number) => Handle;
} {
  const [drag, setDrag] = useState<Drag>();
  const dragging = drag !== undefined;
  useEffect(() => {
    if (!dragging) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      event.stopPropagation();
      setDrag(undefined);
    };
    window.addEventListener('keydown', onKey, true);
    return () => window.removeEventListener('keydown', onKey, true);
  }, [dragging]);
  const handleOf = (index: number): Handle => ({
    onPointerDown: (event) => {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      setDrag({ from: index, to: index });
    },
    onPointerMove: (event) => {
      if (drag) setDrag({ ...drag, to: placeAt(middlesOf(event.currentTarget), drag.from, event.clientY) });
    },
    onPointerUp: () => {
      if (drag && drag.to !== drag.from) onMove(drag.from, drag.to);
      setDrag(undefined);
    },
    onPointerCancel: () => setDrag(undefined),
  });
  return { drag, handleOf };
}
