import type { ReactNode } from 'react';

export interface Column<Row> {
  key: string;
  header: string;
  cell: (row: Row) => ReactNode;
  /** Makes the header a sort button; answers what the row is sorted by. Missing values come last. */
  sortBy?: ((row: Row) => string | number | null | undefined) | undefined;
  /** `end` for figures. */
  align?: 'start' | 'end' | undefined;
  /** The header is read out but not seen: for columns of buttons. */
  headerHidden?: boolean | undefined;
  /** Keeps the column's text on one line. */
  nowrap?: boolean | undefined;
}

export interface Sort {
  key: string;
  down: boolean;
}

const collator = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

type Key = string | number | null | undefined;

function compare(a: Key, b: Key, down: boolean): number {
  if (a === null || a === undefined || a === '') return b === null || b === undefined || b === '' ? 0 : 1;
  if (b === null || b === undefined || b === '') return -1;
  const order =
    typeof a === 'number' && typeof b === 'number' ? a - b : collator.compare(String(a), String(b));
  return down ? -order : order;
}

/** The rows in the order asked for; rows that are equal keep their order. */
export function sortRows<Row>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
  sort: Sort | undefined,
): readonly Row[] {
  const by = columns.find((column) => column.key === sort?.key)?.sortBy;
  return by && sort ? [...rows].sort((a, b) => compare(by(a), by(b), sort.down)) : rows;
}
