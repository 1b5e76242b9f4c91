import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  blockSizes,
  firstAdjacent,
  freeRuns,
  nextFree,
  runsOf,
  runway,
  sizeToBuy,
} from '../../../src/rules/isbn/index.ts';

const CAPACITY = 60;
const taken = fc.uniqueArray(fc.nat({ max: CAPACITY - 1 })).map((indexes) => indexes.sort((a, b) => a - b));

describe('runs of taken numbers', () => {
  it('answer the next free index as a search through all would', () => {
    fc.assert(
      fc.property(taken, fc.nat({ max: CAPACITY }), (indexes, from) => {
        const all = Array.from({ length: CAPACITY }, (_, i) => i);
        const expected = all.find((index) => index >= from && !indexes.includes(index)) ?? null;
        expect(nextFree(runsOf(indexes), CAPACITY, from)).toBe(expected);
      }),
    );
  });

  it('leave exactly the free runs', () => {
    fc.assert(
      fc.property(taken, fc.nat({ max: CAPACITY }), (indexes, from) => {
        const free = [...freeRuns(runsOf(indexes), CAPACITY, from)];
        const listed = free.flatMap(({ first, last }) =>
          Array.from({ length: last - first + 1 }, (_, i) => first + i),
        );
        const all = Array.from({ length: CAPACITY }, (_, i) => i);
        expect(listed).toEqual(all.filter((index) => index >= from && !indexes.includes(index)));
        expect(free).toEqual(runsOf(listed));
      }),
    );
  });

  it('find the first gap wide enough for neighbours', () => {
    fc.assert(
      fc.property(taken, fc.integer({ min: 1, max: 8 }), (indexes, count) => {
        const fits = (start: number): boolean =>
          start + count <= CAPACITY &&
          Array.from({ length: count }, (_, i) => start + i).every((i) => !indexes.includes(i));
        const expected = Array.from({ length: CAPACITY }, (_, i) => i).find(fits) ?? null;
        expect(firstAdjacent(runsOf(indexes), CAPACITY, count)).toBe(expected);
      }),
    );
  });

  it('know a full and an empty block', () => {
    expect(nextFree([{ first: 0, last: 9 }], 10)).toBeNull();
    expect(nextFree([], 10)).toBe(0);
    expect(nextFree([], 10, 10)).toBeNull();
    expect(firstAdjacent([], 10, 11)).toBeNull();
  });
});

describe('runway', () => {
  it('measures the pace over the window and projects the day the numbers run out', () => {
    // Eight in the 400 days up to 2026-11-25, one before them.
    const days = ['2020-01-01', ...Array.from({ length: 8 }, (_, i) => `2026-0${i + 1}-01`)];
    const found = runway(days, 10, '2026-11-25', 400);
    expect(found).toMatchObject({ from: '2025-10-22', to: '2026-11-25', assigned: 8 });
    expect(found.perYear).toBeCloseTo(7.305, 5);
    // Ten numbers at one in 50 days: 500 days.
    expect(found.runsOutOn).toBe('2028-04-08');
  });

  it('does not overstate the pace of a press that has just begun', () => {
    const found = runway(['2026-11-20', '2026-11-25'], 8, '2026-11-25');
    expect(found).toMatchObject({ from: '2026-08-28', assigned: 2 });
    expect(found.runsOutOn).toBe('2027-11-20');
  });

  it('projects nothing when nothing was assigned, or only after today', () => {
    expect(runway([], 5, '2026-11-25')).toMatchObject({ assigned: 0, perYear: 0, runsOutOn: null });
    expect(runway(['2027-01-01'], 5, '2026-11-25').runsOutOn).toBeNull();
    expect(runway(['2026-01-01'], 1_000_000, '2026-11-25').runsOutOn).toBeNull();
  });

  it('runs out today when none is left', () => {
    expect(runway(['2026-10-01'], 0, '2026-11-25').runsOutOn).toBe('2026-11-25');
  });

  it('refuses days that are none', () => {
    expect(() => runway(['yesterday'], 1, '2026-11-25')).toThrow(RangeError);
  });
});

describe('the size to buy', () => {
  const sizes = blockSizes('979', '8');

  it.each([
    [3, 3, 10],
    [3.4, 3, 100],
    [40, 5, 1_000],
    [90_000, 10, 100_000],
  ])('for %f a year over %f years is %i', (perYear, years, capacity) => {
    expect(sizeToBuy(sizes, perYear, years)?.capacity).toBe(capacity);
  });

  it('is none without a pace or without sizes', () => {
    expect(sizeToBuy(sizes, 0, 3)).toBeNull();
    expect(sizeToBuy([], 5, 3)).toBeNull();
  });
});
