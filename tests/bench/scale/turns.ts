import type { Sides, Work } from './line.ts';

/** Processor time of some work in milliseconds: waiting for other programs or for the disk is not in it. */
export function processorTime(work: () => void): number {
  const begun = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1000;
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
}

/** Our side of a comparison and the bare one, in milliseconds of processor time. */
export interface Measured {
  ours: number;
  bare: number;
  /** How many times the bare side's time ours takes. */
  ratio: number;
}

const FEWEST = 3;
const MOST = 15;
/** Milliseconds of processor time after which no further turn is begun. */
const ENOUGH = 800;
/** A first turn of both sides that is longer than this is not repeated. */
const LONG = 5_000;
/** A turn shorter than this is repeated within itself: the clock of processor time is coarse. */
const SHORTEST = 4;

/** How often a piece of work fits into the shortest turn. */
function repeats(once: number): number {
  return Math.max(1, Math.min(200, Math.ceil(SHORTEST / Math.max(once, 0.01))));
}

/** Milliseconds of processor time of one of so many times that some work is done. */
function turn(work: Work, times = 1): number {
  let told = 0;
  const taken = processorTime(() => {
    for (let done = 0; done < times; done += 1) {
      const answer = work();
      if (typeof answer === 'number') told += answer;
    }
  });
  return (told || taken) / times;
}

/**
 * Both sides in turn, so that other work on the machine bends both alike; medians of all turns. Where the first turn
 * takes long it is the only one: it warms up within itself.
 */
export function compare({ ours, bare, prepare, once = false }: Sides): Measured {
  prepare?.();
  const first = { ours: turn(ours), bare: turn(bare) };
  if (first.ours + first.bare > LONG) return { ...first, ratio: first.ours / Math.max(first.bare, 0.001) };
  const [again, bareAgain] = once ? [1, 1] : [repeats(first.ours), repeats(first.bare)];
  const turns: Measured[] = [];
  for (let spent = 0; turns.length < FEWEST || (turns.length < MOST && spent < ENOUGH); ) {
    prepare?.();
    const own = turn(ours, again);
    const other = turn(bare, bareAgain);
    turns.push({ ours: own, bare: other, ratio: own / Math.max(other, 0.001) });
    spent += own * again + other * bareAgain;
  }
  return {
    ours: median(turns.map((one) => one.ours)),
    bare: median(turns.map((one) => one.bare)),
    ratio: median(turns.map((one) => one.ratio)),
  };
}

/** The exponent b of cost = a × size^b that fits best (least squares of the logarithms). */
export function growth(sizes: readonly number[], costs: readonly number[]): number {
  const points = sizes.map(
    (size, at) => [Math.log(size), Math.log(Math.max(costs[at] ?? 0, 0.001))] as const,
  );
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const x = mean(points.map(([size]) => size));
  const y = mean(points.map(([, cost]) => cost));
  const rise = points.reduce((sum, [size, cost]) => sum + (size - x) * (cost - y), 0);
  const run = points.reduce((sum, [size]) => sum + (size - x) ** 2, 0);
  return run === 0 ? 0 : rise / run;
}
