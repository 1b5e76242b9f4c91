import type { Place } from './types.ts';

/** How much a grid holds and shows. */
export interface Extent {
  rows: number;
  columns: number;
  /** Rows that fit at once. */
  page: number;
}

export interface Pressed {
  key: string;
  ctrl: boolean;
}

/** Where a key leads from a place (WAI-ARIA Authoring Practices, grid pattern); undefined where it leads nowhere. */
export function placeAfter({ key, ctrl }: Pressed, from: Place, extent: Extent): Place | undefined {
  const { row, column } = from;
  const to: Record<string, Place> = {
    ArrowDown: { row: row + 1, column },
    ArrowUp: { row: row - 1, column },
    ArrowRight: { row, column: column + 1 },
    ArrowLeft: { row, column: column - 1 },
    Home: ctrl ? { row: 0, column: 0 } : { row, column: 0 },
    End: ctrl ? { row: extent.rows - 1, column: extent.columns - 1 } : { row, column: extent.columns - 1 },
    PageDown: { row: row + extent.page, column },
    PageUp: { row: Math.max(row < 0 ? -1 : 0, row - extent.page), column },
  };
  const next = to[key];
  if (!next) return undefined;
  const within = (value: number, least: number, most: number) => Math.max(least, Math.min(most, value));
  return { row: within(next.row, -1, extent.rows - 1), column: within(next.column, 0, extent.columns - 1) };
}

/** A set of ids with those of some rows put in or taken out. */
export function withRows(
  chosen: ReadonlySet<number>,
  [from, to]: readonly [number, number],
  idAt: (index: number) => number,
  put: boolean,
): Set<number> {
  const next = new Set(chosen);
  for (let at = Math.min(from, to); at <= Math.max(from, to); at += 1) {
    if (put) next.add(idAt(at));
    else next.delete(idAt(at));
  }
  return next;
}
