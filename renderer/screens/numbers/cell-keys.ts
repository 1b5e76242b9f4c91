/** Rows that Page up and Page down move by. */
const ROWS = 5;

/** The part of a key press that says where to go. */
export interface CellKey {
  key: string;
  ctrlKey: boolean;
  metaKey: boolean;
  altKey: boolean;
}

/**
 * The place a key leads to from a place of a grid of `count` cells in rows of `columns`; undefined for a key that
 * does not move. Up, down, Page up and down stay in their column; at an edge the place stays.
 */
export function targetCell(
  pressed: CellKey,
  place: number,
  columns: number,
  count: number,
): number | undefined {
  if (pressed.altKey) return undefined;
  const whole = pressed.ctrlKey || pressed.metaKey;
  const rowStart = place - (place % columns);
  if (pressed.key === 'Home') return whole ? 0 : rowStart;
  if (pressed.key === 'End') return whole ? count - 1 : Math.min(rowStart + columns, count) - 1;
  if (whole) return undefined;
  const inColumn = (rows: number) => {
    const lastRow = Math.floor((count - 1 - (place % columns)) / columns);
    const row = Math.min(Math.max(Math.floor(place / columns) + rows, 0), lastRow);
    return row * columns + (place % columns);
  };
  switch (pressed.key) {
    case 'ArrowRight':
      return Math.min(place + 1, count - 1);
    case 'ArrowLeft':
      return Math.max(place - 1, 0);
    case 'ArrowDown':
      return inColumn(1);
    case 'ArrowUp':
      return inColumn(-1);
    case 'PageDown':
      return inColumn(ROWS);
    case 'PageUp':
      return inColumn(-ROWS);
    default:
      return undefined;
  }
}
