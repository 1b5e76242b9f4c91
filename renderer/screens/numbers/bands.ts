import { useMemo } from 'react';
import type { Block } from '../../../src/contract/blocks.ts';
import { useQueryOf } from '../../api.ts';

/** A run of a thousand numbers of a block with how many of them are taken. */
export interface Band {
  /** Place of its first number in the block. */
  from: number;
  taken: number;
}

/** The thousands of a block; `bands` is undefined while they are read. */
export function useBands(block: Block, asOf: string | undefined) {
  const { data, error } = useQueryOf('blocks.bands', { blockId: block.id, asOf });
  const bands = useMemo(
    () =>
      data?.bands.map(
        (band): Band => ({ from: band.from, taken: band.reserved + band.assigned + band.spent }),
      ),
    [data],
  );
  return { bands, refusal: error };
}
