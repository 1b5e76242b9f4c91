import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { Block } from '../../../src/contract/blocks.ts';
import type { NumberRow } from '../../../src/contract/numbers.ts';
import { type CallRefused, call } from '../../api.ts';
import { PAGE } from './words.ts';

/** A run of `PAGE` numbers of a block with how many of them are taken. */
export interface Band {
  /** Place of its first number in the block. */
  from: number;
  taken: number;
}

const TAKEN = ['reserved', 'assigned', 'spent'] as const;

/** Every page of the numbers of one standing, handed over as it is read. */
async function eachPage(
  block: Block,
  standing: NumberRow['standing'],
  asOf: string | undefined,
  onRows: (rows: readonly NumberRow[]) => void,
): Promise<void> {
  for (let from = 0; ; from += PAGE) {
    const page = await call('numbers.list', { blockId: block.id, standing, from, count: PAGE, asOf });
    onRows(page.rows);
    if (page.rows.length < PAGE || from + PAGE >= page.total) return;
  }
}

/**
 * How many numbers of each band are taken. Reads the taken numbers or the free ones, whichever are fewer, so that a
 * large block that is nearly untouched or nearly used up is known after a few questions. `onRead` is told how many
 * numbers are read.
 */
export async function readBands(
  block: Block,
  asOf: string | undefined,
  onRead: (read: number) => void,
): Promise<Band[]> {
  const { free } = block.counts;
  const byFree = free < block.capacity - free;
  const seen = new Array<number>(Math.ceil(block.capacity / PAGE)).fill(0);
  let read = 0;
  const note = (rows: readonly NumberRow[]) => {
    for (const row of rows) {
      const band = Math.floor((row.index ?? 0) / PAGE);
      seen[band] = (seen[band] ?? 0) + 1;
    }
    read += rows.length;
    onRead(read);
  };
  for (const standing of byFree ? (['free'] as const) : TAKEN)
    if (block.counts[standing] > 0) await eachPage(block, standing, asOf, note);
  return seen.map((count, band) => ({ from: band * PAGE, taken: byFree ? PAGE - count : count }));
}

/** The bands of a block of more than `PAGE` numbers, read anew when the catalogue changes; `read` tells how far it is. */
export function useBands(block: Block, asOf: string | undefined) {
  const [read, setRead] = useState(0);
  const query = useQuery<Band[], CallRefused>({
    queryKey: ['numbers.list', 'bands', block.id, asOf],
    queryFn: () => readBands(block, asOf, setRead),
  });
  return { bands: query.data, refusal: query.error, read };
}
