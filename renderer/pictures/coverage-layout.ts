import type { Coverage } from '../../src/contract/pictures.ts';

export interface CoverageLayout {
  width: number;
  height: number;
  /** Left edge and size of the fields, and where the names of the channels begin. */
  left: number;
  cell: number;
  headTop: number;
  /** Names stand over or beside the fields. */
  beside: boolean;
  columns: { x: number; name: string }[];
  rows: { top: number; cellTop: number; index: number }[];
}

const NARROW = 620;
const LABELS = 350;

/** Height kept for the slanting names of the channels. */
export const HEAD = 108;

/** Places a field for every format and channel; on a narrow sheet the format's name stands above its fields. */
export function coverageLayout(coverage: Coverage, width: number): CoverageLayout {
  const count = Math.max(1, coverage.channels.length);
  const beside = width >= NARROW;
  const left = beside ? LABELS : 4;
  const cell = Math.min(beside ? 96 : 72, Math.max(22, (width - left - 40) / count));
  const headTop = HEAD;
  const row = beside ? 30 : 50;
  const rows = coverage.rows.map((_, index) => {
    const top = headTop + 10 + index * row;
    return { top, cellTop: beside ? top : top + 20, index };
  });
  return {
    width,
    height: headTop + 16 + coverage.rows.length * row,
    left,
    cell,
    headTop,
    beside,
    columns: coverage.channels.map(({ name }, index) => ({ x: left + index * cell, name })),
    rows,
  };
}
