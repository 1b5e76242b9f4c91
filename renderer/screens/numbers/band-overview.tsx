import { useMemo, useState } from 'react';
import type { Block } from '../../../src/contract/blocks.ts';
import { Refused } from '../../ui/index.ts';
import { SHAPES, Shape } from '../../ui/standing-shapes.tsx';
import { type Band, useBands } from './bands.ts';
import { type Meaning, SaveBlockSheet } from './block-sheet.tsx';
import { type Cell, CellGrid, CellHint } from './cell-grid.tsx';
import { useColumns } from './use-columns.ts';
import { leftInWords, PAGE, publicationElement } from './words.ts';

const FIELD = 'M3.25 3.25h9.5v9.5h-9.5z';
const HEIGHT = 9.5;

/** A vessel that fills from its foot by the share taken; the least share is still seen. */
function vessel(taken: number) {
  if (taken === 0) return SHAPES.number.free;
  if (taken === PAGE) return SHAPES.number.assigned;
  const height = Math.min(Math.max((HEIGHT * taken) / PAGE, 1.5), HEIGHT - 1.5);
  return (
    <>
      <path d={FIELD} />
      <path d={`M3.25 ${12.75 - height}h9.5v${height}h-9.5z`} className="shape-filled" />
    </>
  );
}

function bandName(band: Band, capacity: number): string {
  const first = publicationElement(band.from, capacity);
  const last = publicationElement(band.from + PAGE - 1, capacity);
  return `${first} to ${last}: ${leftInWords(PAGE - band.taken, PAGE)}`;
}

const MEANINGS: readonly Meaning[] = [
  { shape: vessel(0), tone: 'cell-free', means: 'all of 1,000 free' },
  { shape: vessel(PAGE / 2), tone: 'cell-assigned', means: 'filled by the share taken' },
  { shape: vessel(PAGE), tone: 'cell-assigned', means: 'none of 1,000 free' },
];

function BandLegend() {
  return (
    <ul className="legend" aria-label="What the shapes mean">
      {MEANINGS.map(({ shape, means }) => (
        <li key={means} className="standing">
          <Shape>{shape}</Shape>
          <span>{means}</span>
        </li>
      ))}
    </ul>
  );
}

export interface BandOverviewProps {
  block: Block;
  asOf: string | undefined;
  onOpen: (from: number) => void;
  /** The band that was open before, so that the focus comes back to it. */
  cameFrom: number | undefined;
}

/** The whole of a large block: each cell stands for a thousand numbers and opens them. */
export function BandOverview({ block, asOf, onOpen, cameFrom }: BandOverviewProps) {
  const { bands, refusal } = useBands(block, asOf);
  const count = block.capacity / PAGE;
  const { box, columns } = useColumns(count);
  const start = cameFrom === undefined ? 0 : cameFrom / PAGE;
  const [looked, setLooked] = useState(start);
  const cells = useMemo<Cell[]>(
    () =>
      (bands ?? []).map((band) => ({
        name: bandName(band, block.capacity),
        shape: vessel(band.taken),
        tone: band.taken === 0 ? 'cell-free' : 'cell-assigned',
      })),
    [bands, block.capacity],
  );
  const band = bands?.[looked];
  return (
    <div className="picture picture-wide" ref={box}>
      <Refused refusal={refusal} />
      <p className="cell-line">{band ? `Numbers ${bandName(band, block.capacity)}` : 'Reading the block…'}</p>
      {bands ? (
        <div className="picture-frame">
          <CellGrid
            label={`Block ${block.hyphenatedPrefix} by the thousand`}
            cells={cells}
            columns={columns}
            rowName={(first) => publicationElement(first * PAGE, block.capacity)}
            onLook={setLooked}
            onOpen={(place) => onOpen(place * PAGE)}
            start={start}
            takeFocus={cameFrom !== undefined}
            large={count <= 100}
          />
        </div>
      ) : null}
      <BandLegend />
      <CellHint opens="the thousand" />
      {bands ? (
        <SaveBlockSheet
          block={block}
          asOf={asOf}
          cells={cells}
          rowName={(first) => publicationElement(first * PAGE, block.capacity)}
          meanings={MEANINGS}
        />
      ) : null}
    </div>
  );
}
