import { expect, it } from 'vitest';
import { placeAfter, withRows } from '../../renderer/ui/grid/move.ts';

// Keys by the grid pattern of the WAI-ARIA Authoring Practices Guide, data grids.
const extent = { rows: 100, columns: 5, page: 10 };
const after = (key: string, row: number, column: number, ctrl = false) =>
  placeAfter({ key, ctrl }, { row, column }, extent);

it('moves by cell, row, page and to the ends, never out of the grid', () => {
  expect(after('ArrowRight', 3, 4)).toEqual({ row: 3, column: 4 });
  expect(after('ArrowLeft', 3, 4)).toEqual({ row: 3, column: 3 });
  expect(after('ArrowUp', 0, 2)).toEqual({ row: -1, column: 2 });
  expect(after('ArrowUp', -1, 2)).toEqual({ row: -1, column: 2 });
  expect(after('ArrowDown', 99, 2)).toEqual({ row: 99, column: 2 });
  expect(after('PageDown', 95, 2)).toEqual({ row: 99, column: 2 });
  expect(after('PageUp', 3, 2)).toEqual({ row: 0, column: 2 });
  expect(after('Home', 7, 3)).toEqual({ row: 7, column: 0 });
  expect(after('End', 7, 3)).toEqual({ row: 7, column: 4 });
  expect(after('Home', 7, 3, true)).toEqual({ row: 0, column: 0 });
  expect(after('End', 7, 3, true)).toEqual({ row: 99, column: 4 });
  expect(after('x', 7, 3)).toBeUndefined();
});

it('puts rows in and takes them out, whichever end is first', () => {
  const idAt = (index: number) => index * 10;
  expect(withRows(new Set([10]), [4, 2], idAt, true)).toEqual(new Set([10, 20, 30, 40]));
  expect(withRows(new Set([10, 20]), [2, 2], idAt, false)).toEqual(new Set([10]));
});
