/** A run of neighbouring indexes in a block, both ends included. Lists of runs are ascending and never touch. */
export interface Run {
  first: number;
  last: number;
}

/** Ascending, distinct indexes joined into runs. */
export function runsOf(indexes: Iterable<number>): Run[] {
  const runs: Run[] = [];
  for (const index of indexes) {
    const open = runs.at(-1);
    if (open !== undefined && open.last === index - 1) open.last = index;
    else runs.push({ first: index, last: index });
  }
  return runs;
}

/**
 * The first free index at or after `from`, or null when the block is full from there. From the front of the block, or
 * when only the runs around `from` are handed over, the work is the same however many numbers are taken; otherwise
 * it grows with the logarithm of the number of runs.
 */
export function nextFree(taken: readonly Run[], capacity: number, from = 0): number | null {
  const at = runBefore(taken, from);
  const run = taken[at];
  const free = run !== undefined && run.last >= from ? run.last + 1 : from;
  return free < capacity ? free : null;
}

/** Index of the last run that begins at or before `from`; -1 where none does. */
function runBefore(taken: readonly Run[], from: number): number {
  // Most searches begin at the front of the block: they need no more than its first two runs.
  const second = taken[1];
  if (second === undefined || second.first > from) return (taken[0]?.first ?? from + 1) <= from ? 0 : -1;
  let low = -1;
  let high = taken.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((taken[middle]?.first ?? 0) <= from) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The free runs of a block between its taken ones, ascending. */
export function* freeRuns(taken: readonly Run[], capacity: number, from = 0): Generator<Run> {
  let next = from;
  for (let i = Math.max(0, runBefore(taken, from)); i < taken.length; i += 1) {
    const run = taken[i];
    if (run === undefined || run.first >= capacity) break;
    if (run.first > next) yield { first: next, last: run.first - 1 };
    next = Math.max(next, run.last + 1);
  }
  if (next < capacity) yield { first: next, last: capacity - 1 };
}

/**
 * The first index of `count` free neighbours, so that the formats of one edition get numbers in a row; null when no
 * gap is wide enough.
 */
export function firstAdjacent(
  taken: readonly Run[],
  capacity: number,
  count: number,
  from = 0,
): number | null {
  for (const { first, last } of freeRuns(taken, capacity, from)) if (last - first + 1 >= count) return first;
  return null;
}
