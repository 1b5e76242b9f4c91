import type { BlockRow, NumberFacts } from './facts.ts';

/** How many numbers a block holds. */
export function capacity(block: BlockRow): number {
  return 10 ** (12 - block.digits.length);
}

/** How many numbers stand where, and how many of which block are taken; kept up as numbers come and go. */
export class Stock {
  readonly blocks: readonly BlockRow[];
  readonly #taken = new Map<BlockRow, number>();
  readonly #standings = { reserved: 0, assigned: 0, spent: 0 };

  constructor(blocks: readonly BlockRow[], numbers: Iterable<NumberFacts> = []) {
    this.blocks = blocks;
    for (const number of numbers) this.count(number, 1);
  }

  /** Counts a number in (1) or out (-1). */
  count({ block, standing }: NumberFacts, by: 1 | -1): void {
    this.#standings[standing] += by;
    if (block) this.#taken.set(block, (this.#taken.get(block) ?? 0) + by);
  }

  /** Numbers of a block that no row takes. */
  left(block: BlockRow): number {
    return capacity(block) - (this.#taken.get(block) ?? 0);
  }

  /** Numbers of all recorded blocks that no row takes. */
  get free(): number {
    return this.blocks.reduce((sum, block) => sum + Math.max(0, this.left(block)), 0);
  }

  /** How many numbers stand where; free are those of the recorded blocks that no row takes. */
  get standings(): { free: number; reserved: number; assigned: number; spent: number } {
    return { free: this.free, ...this.#standings };
  }
}
