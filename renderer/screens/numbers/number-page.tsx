import { useMemo, useState } from 'react';
import type { Block } from '../../../src/contract/blocks.ts';
import type { NumberRow } from '../../../src/contract/numbers.ts';
import { NUMBER_STANDINGS } from '../../../src/contract/terms.ts';
import { useQueryOf } from '../../api.ts';
import { formatDay } from '../../lib/dates.ts';
import { classNames } from '../../ui/class-names.ts';
import { Isbn, Refused, Standing } from '../../ui/index.ts';
import { SHAPES } from '../../ui/standing-shapes.tsx';
import { type Meaning, SaveBlockSheet } from './block-sheet.tsx';
import { type Cell, CellGrid, CellHint } from './cell-grid.tsx';
import { useColumns } from './use-columns.ts';
import { numberInWords, PAGE, publicationElement } from './words.ts';

/** The number under the pointer or the focus, told in words. */
function NumberLine({ row, next }: { row: NumberRow | undefined; next: boolean }) {
  if (!row) return <p className="cell-line">Reading the numbers…</p>;
  return (
    <div className="cell-line">
      <Isbn value={row.hyphenated} />
      <Standing
        of="number"
        value={row.standing}
        detail={row.since ? `since ${formatDay(row.since)}` : undefined}
      />
      <span>
        {row.usedFor}
        {row.spentReason ? `${row.usedFor ? ' · ' : ''}${row.spentReason}` : ''}
        {next ? 'the next one a format takes' : ''}
      </span>
    </div>
  );
}

/** What the shapes mean, with how many of each are shown. */
function Legend({ rows }: { rows: readonly NumberRow[] }) {
  return (
    <ul className="legend" aria-label="What the shapes mean">
      {NUMBER_STANDINGS.map((standing) => {
        return (
          <li key={standing}>
            <Standing of="number" value={standing} detail={countOf(rows, standing)} />
          </li>
        );
      })}
    </ul>
  );
}

function useCells(rows: readonly NumberRow[] | undefined, nextFree: string | null): Cell[] {
  return useMemo(
    () =>
      (rows ?? []).map((row) => {
        const next = row.hyphenated === nextFree;
        return {
          name: next ? `${numberInWords(row)}, next to be taken` : numberInWords(row),
          shape: SHAPES.number[row.standing],
          tone: classNames(`cell-${row.standing}`, next && 'cell-next'),
        };
      }),
    [rows, nextFree],
  );
}

const countOf = (rows: readonly NumberRow[], standing: NumberRow['standing']) =>
  rows.filter((row) => row.standing === standing).length.toLocaleString();

/** What the shapes mean, for a map that is saved. */
function meaningsOf(rows: readonly NumberRow[]): Meaning[] {
  return NUMBER_STANDINGS.map((standing) => ({
    shape: SHAPES.number[standing],
    tone: `cell-${standing}`,
    means: `${standing} ${countOf(rows, standing)}`,
  }));
}

/** The thousand of a large block that is drawn. */
function partOf(block: Block, from: number) {
  const [first, last] = [from, from + PAGE - 1].map((place) => publicationElement(place, block.capacity));
  return { words: `Numbers ${first} to ${last}`, name: `${first}-to-${last}` };
}

export interface NumberPageProps {
  block: Block;
  asOf: string | undefined;
  /** Place of the first number shown; a thousand are shown, or the whole block where it is smaller. */
  from: number;
  onOpen: (row: NumberRow) => void;
  /** The page was opened from the overview, which had the focus. */
  takeFocus: boolean;
}

/** A block, or a thousand numbers of it, each a cell by its standing. */
export function NumberPage({ block, asOf, from, onOpen, takeFocus }: NumberPageProps) {
  const count = Math.min(PAGE, block.capacity);
  const list = useQueryOf('numbers.list', { blockId: block.id, from, count, asOf });
  const { box, columns } = useColumns(count);
  const [looked, setLooked] = useState(0);
  const rows = list.data?.rows;
  const cells = useCells(rows, block.nextFree);
  const row = rows?.[looked];
  const large = count <= 100;
  return (
    <div className={classNames('picture', large ? 'picture-beside' : 'picture-wide')} ref={box}>
      <Refused refusal={list.error} />
      <NumberLine row={row} next={row?.hyphenated === block.nextFree} />
      {rows ? (
        <div className="picture-frame">
          <CellGrid
            key={from}
            label={`Numbers of block ${block.hyphenatedPrefix}`}
            cells={cells}
            columns={columns}
            rowName={(first) => publicationElement(from + first, block.capacity)}
            onLook={setLooked}
            onOpen={(place) => {
              const opened = rows[place];
              if (opened) onOpen(opened);
            }}
            takeFocus={takeFocus}
            large={large}
          />
        </div>
      ) : null}
      <Legend rows={rows ?? []} />
      <CellHint opens="the number" />
      {rows ? (
        <SaveBlockSheet
          block={block}
          asOf={asOf}
          cells={cells}
          rowName={(first) => publicationElement(from + first, block.capacity)}
          meanings={meaningsOf(rows)}
          part={block.capacity > PAGE ? partOf(block, from) : undefined}
        />
      ) : null}
    </div>
  );
}
