/** A place in two lists that belongs together: indices from 0. */
export type Match = readonly [before: number, after: number];

/** Cells of the table that is filled to compare two stretches exactly; two lists of 3,000 need nine million. */
const MOST_CELLS = 16_000_000;

/** A longest common subsequence of two stretches by the classical table (Wagner and Fischer), in two bytes a cell. */
function exact(before: readonly string[], after: readonly string[]): Match[] {
  const width = after.length + 1;
  const table = new Uint16Array((before.length + 1) * width);
  for (let i = before.length - 1; i >= 0; i -= 1)
    for (let j = after.length - 1; j >= 0; j -= 1) {
      const at = i * width + j;
      table[at] =
        before[i] === after[j]
          ? (table[at + width + 1] ?? 0) + 1
          : Math.max(table[at + width] ?? 0, table[at + 1] ?? 0);
    }
  const matches: Match[] = [];
  for (let i = 0, j = 0; i < before.length && j < after.length; ) {
    const at = i * width + j;
    if (before[i] === after[j]) matches.push([i++, j++]);
    else if ((table[at + width] ?? 0) >= (table[at + 1] ?? 0)) i += 1;
    else j += 1;
  }
  return matches;
}

/** Indices of keys that stand in a list once. */
function once(list: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const [index, key] of list.entries()) counts.set(key, counts.has(key) ? -1 : index);
  return new Map([...counts].filter(([, index]) => index >= 0));
}

/** The longest run of matches that rises in both lists, out of ones that rise in the first (patience sorting). */
function rising(matches: readonly Match[]): Match[] {
  const piles: number[] = [];
  const behind: number[] = [];
  for (const [index, [, after]] of matches.entries()) {
    let [low, high] = [0, piles.length];
    while (low < high) {
      const middle = (low + high) >>> 1;
      if ((matches[piles[middle] ?? 0]?.[1] ?? 0) < after) low = middle + 1;
      else high = middle;
    }
    behind[index] = low > 0 ? (piles[low - 1] ?? -1) : -1;
    piles[low] = index;
  }
  const run: Match[] = [];
  for (let at = piles.at(-1) ?? -1; at >= 0; at = behind[at] ?? -1) {
    const match = matches[at];
    if (match) run.push(match);
  }
  return run.reverse();
}

/** Keys that stand once in both lists, in an order that rises in both. */
function anchors(before: readonly string[], after: readonly string[]): Match[] {
  const there = once(after);
  const both = [...once(before)].flatMap(([key, index]): Match[] => {
    const other = there.get(key);
    return other === undefined ? [] : [[index, other]];
  });
  return rising(both.sort(([a], [b]) => a - b));
}

/**
 * What belongs together in two lists, rising in both. Exact (a longest common subsequence) for lists of a few thousand; in
 * longer ones keys that stand once are matched first and the stretches between them exactly, a stretch that is still too
 * long not at all, so that cost is bounded.
 */
export function align(before: readonly string[], after: readonly string[]): Match[] {
  let head = 0;
  while (head < before.length && head < after.length && before[head] === after[head]) head += 1;
  let tail = 0;
  const most = Math.min(before.length, after.length) - head;
  while (tail < most && before.at(-1 - tail) === after.at(-1 - tail)) tail += 1;
  const inside = between(
    before.slice(head, before.length - tail),
    after.slice(head, after.length - tail),
  ).map(([i, j]): Match => [i + head, j + head]);
  const ends = (count: number, from: number, to: number) =>
    Array.from({ length: count }, (_, k): Match => [from + k, to + k]);
  return [...ends(head, 0, 0), ...inside, ...ends(tail, before.length - tail, after.length - tail)];
}

const fits = (before: readonly string[], after: readonly string[]) =>
  (before.length + 1) * (after.length + 1) <= MOST_CELLS;

function between(before: readonly string[], after: readonly string[]): Match[] {
  if (fits(before, after)) return exact(before, after);
  const matches: Match[] = [];
  let from: Match = [0, 0];
  for (const anchor of [...anchors(before, after), [before.length, after.length] as const]) {
    const [a, b] = [before.slice(from[0], anchor[0]), after.slice(from[1], anchor[1])];
    const start = from;
    if (fits(a, b)) for (const [i, j] of exact(a, b)) matches.push([start[0] + i, start[1] + j]);
    if (anchor[0] < before.length && anchor[1] < after.length) matches.push(anchor);
    from = [anchor[0] + 1, anchor[1] + 1];
  }
  return matches;
}
