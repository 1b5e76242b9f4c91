import type { World } from './world.ts';

/** Something to measure. A number that it answers is its own milliseconds, where it had something to make ready first. */
export type Work = () => unknown;

export interface Sides {
  ours: Work;
  bare: Work;
  /** Done before each turn of ours, and not measured. */
  prepare?: () => void;
  /** Each turn takes the work once: what it does cannot be done again and again within a turn. */
  once?: boolean;
}

/** One line of the table. */
export interface Line {
  name: string;
  /** What the bare side does. */
  against: string;
  /** What it is to reach, and whose goal that is is told beside the table: a ratio at the largest size, or a growth. */
  most: { ratio?: number; growth?: number };
  /** The largest size it is measured at; left out for all. */
  upTo?: number;
  /** Says something beside the ratio, such as a rate. */
  rate?: (world: World, ours: number) => string;
  sides: (world: World) => Sides;
}
