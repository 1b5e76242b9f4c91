import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Quote } from '../../../src/contract/print-costs.ts';
import { costAt, fitPrice, lineOf, lineOfQuotes } from '../../../src/rules/print-cost/line.ts';

const quotes = (...pairs: [pages: number, amountMinor: number][]): Quote[] =>
  pairs.map(([pages, amountMinor]) => ({ pages, amountMinor }));
const fitOf = (...pairs: [number, number][]) => fitPrice({ kind: 'quotes', quotes: quotes(...pairs) }, 'USD');

const even = fc.integer({ min: 1, max: 500 }).map((n) => n * 2);
const amount = fc.integer({ min: 0, max: 50_000 });
const some = fc.array(fc.record({ pages: even, amountMinor: amount }), { minLength: 2, maxLength: 12 });

describe('two quotes', () => {
  it('are met exactly, and give what lies between them', () => {
    expect(fitOf([100, 235], [300, 480])).toMatchObject({
      how: 'exact',
      fixedParts: 1_125_000,
      pageParts: 12_250,
      warnings: [],
    });
    const line = lineOfQuotes(quotes([100, 235], [300, 480]));
    expect([100, 200, 300, 400].map((pages) => costAt(line, pages))).toEqual([235, 358, 480, 603]);
  });

  it('are met at every pair of page counts, also where a page costs no finite decimal', () => {
    fc.assert(
      fc.property(even, even, amount, amount, (a, b, one, other) => {
        fc.pre(a !== b);
        const line = lineOfQuotes(quotes([a, one], [b, other]));
        expect([costAt(line, a), costAt(line, b)]).toEqual([one, other]);
      }),
    );
  });
});

describe('more quotes', () => {
  it('give the line of the first set of Anscombe (1973; y = 3.00 + 0.500 x, from memory)', () => {
    // The set's x are doubled, since pages are even, and its y are in hundredths.
    const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
    const y = [804, 695, 758, 881, 833, 996, 724, 426, 1084, 482, 568];
    const pairs = x.map((at, i): [number, number] => [2 * at, y[i] ?? 0]);
    const { how, fixedParts, pageParts } = fitOf(...pairs);
    expect(how).toBe('least squares');
    expect((fixedParts ?? 0) / 1e6).toBeCloseTo(3.0, 2);
    expect(((pageParts ?? 0) / 1e6) * 2).toBeCloseTo(0.5, 3);
  });

  it('leave differences that add up to nothing, on the whole and by pages, and no other line is nearer', () => {
    fc.assert(
      fc.property(
        some,
        fc.integer({ min: -50, max: 50 }),
        fc.integer({ min: -5, max: 5 }),
        (all, up, turn) => {
          const line = lineOfQuotes(all);
          const off = all.map(
            (q) => BigInt(q.amountMinor) * line.unit - line.fixed - line.page * BigInt(q.pages),
          );
          const squares = (list: bigint[]) => list.reduce((sum, one) => sum + one * one, 0n);
          expect(off.reduce((sum, one) => sum + one, 0n)).toBe(0n);
          if (line.only !== null) return;
          expect(all.reduce((sum, q, i) => sum + BigInt(q.pages) * (off[i] ?? 0n), 0n)).toBe(0n);
          const other = all.map((q, i) => (off[i] ?? 0n) + BigInt(up) + BigInt(turn) * BigInt(q.pages));
          expect(squares(other) >= squares(off)).toBe(true);
        },
      ),
    );
  });

  it('say how far each is off, and that they do not lie on one line', () => {
    const { how, quotes: off, warnings } = fitOf([100, 200], [200, 300], [300, 460]);
    expect(how).toBe('least squares');
    expect(off.map(({ offParts }) => offParts)).toEqual([100_000, -200_000, 100_000]);
    expect(off.map(({ fittedMinor }) => fittedMinor)).toEqual([190, 320, 450]);
    expect(warnings.join()).toContain('The quotes do not lie on one line: the farthest is USD 0.20 off.');
  });
});

describe('quotes that cannot be right', () => {
  it.each<[string, [number, number][], string]>([
    [
      'two for one page count',
      [
        [200, 310],
        [200, 350],
        [300, 400],
      ],
      'contradict each other',
    ],
    [
      'odd and even pages of one sheet',
      [
        [199, 310],
        [200, 350],
        [300, 400],
      ],
      'contradict each other',
    ],
    [
      'a thicker book that costs less',
      [
        [200, 450],
        [300, 400],
      ],
      'A thicker book costs less',
    ],
    [
      'a fixed part below nothing',
      [
        [200, 100],
        [300, 900],
      ],
      'below nothing',
    ],
  ])('%s', (_name, pairs, sentence) => {
    expect(fitOf(...pairs).warnings.join(' ')).toContain(sentence);
  });

  it('are none where a printer only rounded', () => {
    expect(fitOf([100, 213], [200, 325], [300, 438]).warnings).toEqual([]);
  });
});

describe('what is not known', () => {
  it('one page count tells nothing of another', () => {
    expect(fitOf([200, 310])).toMatchObject({ how: 'one page count', fixedParts: null, pageParts: null });
    const line = lineOfQuotes(quotes([200, 310]));
    expect([costAt(line, 200), costAt(line, 199), costAt(line, 202)]).toEqual([310, 310, null]);
  });

  it('a line below nothing gives no cost', () => {
    expect(costAt(lineOfQuotes(quotes([200, 100], [300, 900])), 100)).toBeNull();
  });
});

it('a stated cost is taken as it is: 0.90 and 0.0125 a page, a half up, an odd page count filled up', () => {
  const line = lineOf({ kind: 'stated', fixedParts: 900_000, pageParts: 12_500 });
  expect([240, 241, 242, 2].map((pages) => costAt(line, pages))).toEqual([390, 393, 393, 93]);
});
