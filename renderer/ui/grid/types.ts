import type { ReactNode } from 'react';
import type { Sort } from '../table-sort.ts';

/** One column of a grid: how a row shows in it, and what a copy of it says. */
export interface GridColumn<Row> {
  key: string;
  header: string;
  cell: (row: Row) => ReactNode;
  /** The cell as plain text, for copying. */
  text: (row: Row) => string;
  /** Pixels wide at first. */
  width: number;
  sortable?: boolean | undefined;
  align?: 'start' | 'end' | undefined;
}

export interface GridProps<Row> {
  label: string;
  /** How many rows there are in all. */
  count: number;
  /** A row that was read already. */
  rowAt: (index: number) => Row | undefined;
  idAt: (index: number) => number;
  /** What a row is called, for its checkbox. */
  nameOf: (row: Row) => string;
  columns: readonly GridColumn<Row>[];
  /** Widths that were changed, in pixels by column. */
  widths: Readonly<Record<string, number>>;
  onWidth: (key: string, width: number) => void;
  sort: Sort;
  onSort: (sort: Sort) => void;
  chosen: ReadonlySet<number>;
  onChoose: (chosen: ReadonlySet<number>) => void;
  onOpen: (row: Row) => void;
  /** Called with the rows in sight, so that they can be read. */
  onSight: (first: number, last: number) => void;
  /** Copies rows as lines of tab-separated cells. */
  onCopy: (indexes: readonly number[]) => void;
}

/** Where the keys are: row -1 is the head, column 0 the checkbox. */
export interface Place {
  row: number;
  column: number;
}

export const NARROWEST = 48;
export const WIDEST = 900;
