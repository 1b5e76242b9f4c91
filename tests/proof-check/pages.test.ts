import fc from 'fast-check';
import { expect, test } from 'vitest';
import { align } from '../../src/rules/proof-check/align.ts';
import { comparePages, type PagePair, type PagePrint } from '../../src/rules/proof-check/pages.ts';

const pages = (text: string): PagePrint[] =>
  [...text].map((print) => ({ textPrint: print, lookPrint: null }));
/** 'a=a' for a pair, '+n' put in, '-n' taken out, '~' changed, '>' moved. */
const told = (pairs: readonly PagePair[]) =>
  pairs
    .map(({ state, before, after }) => {
      if (state === 'put in') return `+${after}`;
      if (state === 'taken out') return `-${before}`;
      return `${before}${{ same: '=', changed: '~', moved: '>' }[state]}${after}`;
    })
    .join(' ');
const compared = (before: string, after: string) => told(comparePages(pages(before), pages(after)));

test('tells the same, changed, put in, taken out and moved pages', () => {
  expect(compared('abc', 'abc')).toBe('1=1 2=2 3=3');
  expect(compared('abc', 'axc')).toBe('1=1 2~2 3=3');
  expect(compared('abc', 'axbc')).toBe('1=1 +2 2=3 3=4');
  expect(compared('abc', 'ac')).toBe('1=1 -2 3=2');
  expect(compared('abcd', 'bcda')).toBe('2=1 3=2 4=3 1>4');
  expect(compared('', 'ab')).toBe('+1 +2');
  expect(compared('ab', '')).toBe('-1 -2');
  // Blank pages, alike as they are, do not count as moved.
  expect(compared('a.b.', 'a.b.c.')).toBe('1=1 2=2 3=3 4=4 +5 +6');
});

test('a page of the same text and another look is changed in its look', () => {
  const [before, after] = ['one', 'two'].map((lookPrint) => [{ textPrint: 'a', lookPrint }]);
  expect(comparePages(before ?? [], after ?? [])).toEqual([
    { state: 'changed', before: 1, after: 1, what: 'look' },
  ]);
  const unseen = [{ textPrint: 'a', lookPrint: null }];
  expect(comparePages(before ?? [], unseen)[0]?.state).toBe('same');
});

/** Length of a longest common subsequence by plain recursion, as the definition has it. */
function longest(a: string, b: string): number {
  if (a === '' || b === '') return 0;
  if (a[0] === b[0]) return 1 + longest(a.slice(1), b.slice(1));
  return Math.max(longest(a.slice(1), b), longest(a, b.slice(1)));
}

const letters = (most: number) => fc.string({ unit: fc.constantFrom('a', 'b', 'c', '.'), maxLength: most });

test('matches as many pages as can be matched, rising in both files', () => {
  fc.assert(
    fc.property(letters(8), letters(8), (a, b) => {
      const matches = align([...a], [...b]);
      expect(matches.length).toBe(longest(a, b));
      for (const [k, [i, j]] of matches.entries()) {
        expect(a[i]).toBe(b[j]);
        const next = matches[k + 1];
        if (next) expect(next[0] > i && next[1] > j).toBe(true);
      }
    }),
  );
});

test('every page of both files stands in the answer once', () => {
  fc.assert(
    fc.property(letters(30), letters(30), (a, b) => {
      const pairs = comparePages(pages(a), pages(b));
      const count = (text: string) => Array.from(text, (_, index) => index + 1);
      const sorted = (list: (number | null)[]) => list.filter((n) => n !== null).sort((x, y) => x - y);
      expect(sorted(pairs.map(({ before }) => before))).toEqual(count(a));
      expect(sorted(pairs.map(({ after }) => after))).toEqual(count(b));
    }),
  );
});

test('two files of 2,000 pages, and of 20,000, are compared in bounded time', () => {
  const numbered = (count: number, every: number) =>
    Array.from({ length: count }, (_, n) => ({
      textPrint: n % 10 === 9 ? '' : `${n}${n % every === 0 ? '!' : ''}`,
      lookPrint: null,
    }));
  for (const count of [2_000, 20_000]) {
    const before = numbered(count, count + 1);
    const after = numbered(count, 7);
    after.splice(100, 0, { textPrint: 'new', lookPrint: null });
    const start = performance.now();
    const pairs = comparePages(before.slice(1), after);
    const taken = performance.now() - start;
    console.log(`${count} pages compared in ${Math.round(taken)} ms`);
    expect(pairs.filter(({ state }) => state === 'put in').length).toBeGreaterThan(0);
    expect(pairs.filter(({ state }) => state === 'same').length).toBeGreaterThan(count * 0.8);
    expect(taken).toBeLessThan(20_000);
  }
});

test('two long files with nothing in common cost no table', () => {
  const file = (name: string) =>
    Array.from({ length: 20_000 }, (_, n) => ({ textPrint: `${name}${n}`, lookPrint: null }));
  const start = performance.now();
  const pairs = comparePages(file('a'), file('b'));
  expect(performance.now() - start).toBeLessThan(10_000);
  expect(new Set(pairs.map(({ state }) => state))).toEqual(new Set(['changed']));
});
