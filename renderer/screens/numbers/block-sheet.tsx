import type { ReactNode } from 'react';
import type { Block } from '../../../src/contract/blocks.ts';
import { useQueryOf } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { offstage } from '../../pictures/offstage.ts';
import { SaveButtons } from '../../pictures/save-buttons.tsx';
import type { Cell } from './cell-grid.tsx';
import { blockName, countsInWords } from './words.ts';

/** One line of the legend: a shape, its colour, what it means. */
export interface Meaning {
  shape: ReactNode;
  tone: string;
  means: string;
}

/** The map of a block as a drawing of its own, for files and paper. */
interface BlockSheetProps {
  title: string;
  /** Lines under the title. */
  facts: readonly string[];
  cells: readonly Cell[];
  columns: number;
  rowName: (first: number) => string;
  meanings: readonly Meaning[];
}

/** Side of the field that shapes are drawn on, and pixels of the sheet around and between what stands on it. */
const FIELD = 16;
const EDGE = 16;
const NAMES = 62;
const LINE = 19;
/** Room of one meaning in the legend. */
const MEANING = 200;

/** A small block in tens, a larger one in rows of forty. */
const sheetColumns = (count: number): number => (count <= 100 ? 10 : 40);

function Mark({ x, y, side, cell }: { x: number; y: number; side: number; cell: Omit<Cell, 'name'> }) {
  const scale = (side * 0.74) / FIELD;
  const inset = (side - FIELD * scale) / 2;
  return (
    <g transform={`translate(${x + inset} ${y + inset}) scale(${scale})`} className={`sheet-${cell.tone}`}>
      <g className="field-shape">{cell.shape}</g>
    </g>
  );
}

function Legend({ meanings, y, perRow }: { meanings: readonly Meaning[]; y: number; perRow: number }) {
  return meanings.map(({ shape, tone, means }, index) => {
    const x = EDGE + (index % perRow) * MEANING;
    const top = y + Math.floor(index / perRow) * LINE;
    return (
      <g key={means}>
        <Mark x={x} y={top} side={LINE} cell={{ shape, tone }} />
        <text x={x + 24} y={top + 14}>
          {means}
        </text>
      </g>
    );
  });
}

/** The whole sheet: title, facts, every cell in its row, and what the shapes mean. */
function BlockSheet({ title, facts, cells, columns, rowName, meanings }: BlockSheetProps) {
  const side = columns <= 10 ? 34 : 20;
  const width = Math.max(EDGE * 2 + NAMES + columns * side, 480);
  const top = EDGE + 24 + facts.length * LINE + 10;
  const rows = Math.ceil(cells.length / columns);
  const foot = top + rows * side + 16;
  const perRow = Math.max(1, Math.floor((width - EDGE) / MEANING));
  const height = foot + Math.ceil(meanings.length / perRow) * LINE + EDGE;
  return (
    <svg
      role="img"
      aria-label={title}
      className="drawing-svg"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
    >
      <text x={EDGE} y={EDGE + 12} className="say-head">
        {title}
      </text>
      {facts.map((fact, index) => (
        <text key={fact} x={EDGE} y={EDGE + 24 + (index + 1) * LINE - 6} className="say-soft">
          {fact}
        </text>
      ))}
      {Array.from({ length: rows }, (_, row) => {
        const y = top + row * side;
        return (
          <g key={rowName(row * columns)}>
            <text x={EDGE + NAMES - 12} y={y + side / 2 + 4} textAnchor="end" className="say-soft say-number">
              {rowName(row * columns)}
            </text>
            {cells.slice(row * columns, (row + 1) * columns).map((cell, offset) => (
              <Mark key={cell.name} x={EDGE + NAMES + offset * side} y={y} side={side} cell={cell} />
            ))}
          </g>
        );
      })}
      <Legend meanings={meanings} y={foot} perRow={perRow} />
    </svg>
  );
}

interface SaveBlockSheetProps extends Pick<BlockSheetProps, 'cells' | 'rowName' | 'meanings'> {
  block: Block;
  asOf: string | undefined;
  /** Which part of a large block is drawn, such as `Numbers 2000 to 2999`, and the same for a file name. */
  part?: { words: string; name: string } | undefined;
}

/** Saves or prints the map of a block, with its name, the day, and what it says in words. */
export function SaveBlockSheet({ block, asOf, part, ...sheet }: SaveBlockSheetProps) {
  const info = useQueryOf('catalogue.info', {}).data;
  const day = asOf ?? info?.today ?? '';
  const title = `Block ${blockName(block)}`;
  const facts = [
    `On ${formatDay(day)}: ${countsInWords(block.counts, block.capacity)}.`,
    ...(part ? [part.words] : []),
    ...(block.nextFree === null || asOf !== undefined
      ? []
      : [`The next one a format takes: ${block.nextFree}.`]),
    ...(info?.demo ? ['Demo catalogue: its numbers are invented and must never be printed.'] : []),
  ];
  return (
    <SaveButtons
      title={part ? `${title}, ${part.words}` : title}
      fileName={[`block-${block.hyphenatedPrefix}`, ...(part ? [part.name] : []), day].join('-')}
      withDrawing={(use) =>
        offstage(
          <BlockSheet {...sheet} title={title} facts={facts} columns={sheetColumns(sheet.cells.length)} />,
          use,
        )
      }
    />
  );
}
