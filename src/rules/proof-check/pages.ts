import { align } from './align.ts';

/** A page as far as two files are compared by it: fingerprints of its text and of its look (null where not looked at). */
export interface PagePrint {
  textPrint: string;
  lookPrint: string | null;
}

export const PAGE_STATES = ['same', 'changed', 'put in', 'taken out', 'moved'] as const;

/** How a page of one file stands to one of the other. Pages count from 1; null where a file has none. */
export interface PagePair {
  state: (typeof PAGE_STATES)[number];
  before: number | null;
  after: number | null;
  /** Of a changed page: whether its text is another, or its look alone. */
  what: 'text' | 'look' | null;
}

/** Pages of the same text whose look was compared and differs. */
function looksOther(before: PagePrint | undefined, after: PagePrint | undefined): boolean {
  const [one, other] = [before?.lookPrint ?? null, after?.lookPrint ?? null];
  return one !== null && other !== null && one !== other;
}

function together(before: number, after: number, other: boolean): PagePair {
  return {
    state: other ? 'changed' : 'same',
    before: before + 1,
    after: after + 1,
    what: other ? 'look' : null,
  };
}

const range = (from: number, to: number) =>
  Array.from({ length: Math.max(0, to - from) }, (_, k) => from + k);

/** Pages whose text stands once in each file and was found in another place: before by after. */
function movedPages(
  before: readonly PagePrint[],
  after: readonly PagePrint[],
  matched: ReadonlySet<number>,
  taken: ReadonlySet<number>,
): Map<number, number> {
  const places = (pages: readonly PagePrint[]) => {
    const map = new Map<string, number[]>();
    for (const [index, { textPrint }] of pages.entries()) {
      const list = map.get(textPrint);
      if (list) list.push(index);
      else map.set(textPrint, [index]);
    }
    return map;
  };
  const there = places(after);
  const moved = new Map<number, number>();
  for (const [print, [index = -1, ...more]] of places(before)) {
    const [other = -1, ...others] = there.get(print) ?? [];
    const single = print !== '' && more.length === 0 && others.length === 0 && other >= 0;
    if (single && !matched.has(index) && !taken.has(other)) moved.set(other, index);
  }
  return moved;
}

/** Pages between two that belong together: as many as both have are paired in order as changed, the rest put in or taken out. */
function stretch(before: readonly number[], after: readonly number[]): PagePair[] {
  const both = Math.min(before.length, after.length);
  return [
    ...range(0, both).map(
      (k): PagePair => ({
        state: 'changed',
        before: (before[k] ?? 0) + 1,
        after: (after[k] ?? 0) + 1,
        what: 'text',
      }),
    ),
    ...before
      .slice(both)
      .map((page): PagePair => ({ state: 'taken out', before: page + 1, after: null, what: null })),
    ...after
      .slice(both)
      .map((page): PagePair => ({ state: 'put in', before: null, after: page + 1, what: null })),
  ];
}

/**
 * Two interiors page by page, in the order of the later one: what is the same, changed, put in, taken out or moved. Pages
 * are held together by their text; where a stretch changed throughout, its pages are paired in order, since nothing tells
 * which became which. Every page of both files stands in the answer once.
 */
export function comparePages(before: readonly PagePrint[], after: readonly PagePrint[]): PagePair[] {
  const key = ({ textPrint }: PagePrint) => textPrint;
  const matches = align(before.map(key), after.map(key));
  const moved = movedPages(
    before,
    after,
    new Set(matches.map(([one]) => one)),
    new Set(matches.map(([, other]) => other)),
  );
  const gone = new Set(moved.values());
  const pairs: PagePair[] = [];
  let [from, to] = [0, 0];
  for (const [one, other] of [...matches, [before.length, after.length] as const]) {
    const added = range(to, other);
    for (const page of added) {
      const origin = moved.get(page);
      if (origin !== undefined)
        pairs.push({ state: 'moved', before: origin + 1, after: page + 1, what: null });
    }
    pairs.push(
      ...stretch(
        range(from, one).filter((page) => !gone.has(page)),
        added.filter((page) => !moved.has(page)),
      ),
    );
    if (one < before.length && other < after.length)
      pairs.push(together(one, other, looksOther(before[one], after[other])));
    [from, to] = [one + 1, other + 1];
  }
  return pairs;
}
