import type { Coverage } from '../../src/contract/pictures.ts';
import type { ListingStanding } from '../../src/contract/terms.ts';
import { formatDay } from '../lib/dates.ts';
import { Standing } from '../ui/index.ts';
import { SHAPES } from '../ui/standing-shapes.tsx';
import { type CoverageLayout, coverageLayout } from './coverage-layout.ts';
import { Picture, Spot } from './picture.tsx';
import { fitted } from './text-fit.ts';

type Row = Coverage['rows'][number];

const ORDER: readonly ListingStanding[] = [
  'unsent',
  'sent',
  'proof',
  'cleared',
  'selling',
  'leaving',
  'gone',
];

function cellInWords(row: Row, channel: string, cell: Row['cells'][number]): string {
  const format = `${row.editionLabel} · ${row.name}`;
  if (!cell) return `${format} is not listed on ${channel}.`;
  const since = cell.since === null ? '' : ` since ${formatDay(cell.since)}`;
  return `${format} on ${channel}: ${cell.standing}${since}.`;
}

function rowInWords(row: Row, coverage: Coverage): string {
  const listed = row.cells.flatMap((cell, index) =>
    cell ? [`${coverage.channels[index]?.name ?? ''} ${cell.standing}`] : [],
  );
  return `${row.editionLabel} · ${row.name} (${row.standing}): ${listed.length > 0 ? listed.join(', ') : 'on no channel'}.`;
}

interface GridRowProps {
  row: Row;
  layout: CoverageLayout;
  box: CoverageLayout['rows'][number];
  coverage: Coverage;
  to: string;
  onLook: (text: string) => void;
}

/** Half of a shape's own field of 16, and the side of a drawn field. */
const HALF = 8;
const SIDE = 24;

function GridRow({ row, layout, box, coverage, to, onLook }: GridRowProps) {
  const label = `${row.editionLabel} · ${row.name}`;
  const room = layout.beside ? layout.left - 12 : layout.width - 8;
  const middle = box.cellTop + SIDE / 2 + 2;
  return (
    <Spot
      to={to}
      text={rowInWords(row, coverage)}
      onLook={onLook}
      caption={
        <>
          {' '}
          <text x={4} y={layout.beside ? middle + 4 : box.top + 13}>
            {fitted(label, room, 12.5)}
          </text>
        </>
      }
    >
      <rect
        x={0}
        y={box.top - 1}
        width={layout.width}
        height={layout.beside ? 28 : 46}
        className="spot-ground"
      />
      {row.cells.map((cell, index) => {
        const column = layout.columns[index];
        if (!column) return null;
        const x = column.x + layout.cell / 2;
        return (
          <g
            key={coverage.channels[index]?.id}
            onPointerEnter={() => onLook(cellInWords(row, column.name, cell))}
          >
            <rect
              x={column.x + 1}
              y={box.cellTop + 2}
              width={layout.cell - 2}
              height={SIDE}
              className="field"
            />
            {cell ? (
              <g
                transform={`translate(${x - HALF} ${middle - HALF})`}
                className={`field-shape listing-${cell.standing}`}
              >
                {SHAPES.listing[cell.standing]}
              </g>
            ) : (
              <circle cx={x} cy={middle} r="1.2" className="tile-ink" />
            )}
          </g>
        );
      })}
    </Spot>
  );
}

function draw(
  coverage: Coverage,
  width: number,
  href: (to: string) => string,
  onLook: (text: string) => void,
) {
  const layout = coverageLayout(coverage, width);
  const content = (
    <>
      {layout.columns.map(({ x, name }) => (
        <text
          key={name}
          transform={`translate(${x + Math.min(layout.cell / 2, 30)} ${layout.headTop}) rotate(-38)`}
        >
          {fitted(name, 156, 12.5)}
        </text>
      ))}
      {layout.rows.map((box) => {
        const row = coverage.rows[box.index];
        return row ? (
          <GridRow
            key={row.formatId}
            row={row}
            layout={layout}
            box={box}
            coverage={coverage}
            to={href(`/work/${row.workId}?format=${row.formatId}`)}
            onLook={onLook}
          />
        ) : null;
      })}
    </>
  );
  return { height: layout.height, content };
}

function Legend({ coverage }: { coverage: Coverage }) {
  const used = new Set(coverage.rows.flatMap((row) => row.cells.map((cell) => cell?.standing)));
  return (
    <ul className="drawing-legend" aria-label="What the shapes mean">
      {ORDER.filter((standing) => used.has(standing)).map((standing) => (
        <li key={standing}>
          <Standing of="listing" value={standing} />
        </li>
      ))}
    </ul>
  );
}

/** Formats by channels, each field with the shape of where the listing stands. */
export function CoveragePicture({ coverage, href }: { coverage: Coverage; href: (to: string) => string }) {
  return (
    <Picture
      title="Which format is on which channel"
      fileName={`coverage-${coverage.day}`}
      draw={(width, onLook) => draw(coverage, width, href, onLook)}
      legend={<Legend coverage={coverage} />}
      hint="Point at a field, or move to a row with the Tab key, to read where a listing stands. A dot means that the format is not listed there."
      words={
        <ul>
          {coverage.rows.map((row) => (
            <li key={row.formatId}>{rowInWords(row, coverage)}</li>
          ))}
        </ul>
      }
    />
  );
}
