import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterReturns, compensation, lowestList, withEnding } from '../../src/rules/compensation.ts';

const money = fc.integer({ min: 0, max: 10_000_000 });
const discount = fc.integer({ min: 0, max: 10_000 });
const copy = fc.record({ listMinor: money, discountBp: discount, printCostMinor: money });

describe('what a copy earns', () => {
  // STANDARDS E7; the last two are common practice, no source.
  it.each([
    { listMinor: 1995, discountBp: 5500, printCostMinor: 425, keptMinor: 473 },
    { listMinor: 1995, discountBp: 4000, printCostMinor: 425, keptMinor: 772 },
    { listMinor: 2999, discountBp: 5300, printCostMinor: 710, keptMinor: 700 },
    { listMinor: 1699, discountBp: 4000, printCostMinor: 467, keptMinor: 552 },
    { listMinor: 1699, discountBp: 4000, printCostMinor: 390, keptMinor: 629 },
  ])('$listMinor less $discountBp bp and $printCostMinor leaves $keptMinor', ({ keptMinor, ...sold }) => {
    expect(compensation(sold).keptMinor).toBe(keptMinor);
  });

  it('has nothing left over and shows no loss as nothing', () => {
    expect(compensation({ listMinor: 1699, discountBp: 4000, printCostMinor: 467 }).exact).toBe(5_524_000n);
    expect(compensation({ listMinor: 1, discountBp: 5001, printCostMinor: 1 })).toMatchObject({
      keptMinor: -1,
    });
    fc.assert(
      fc.property(copy, (sold) => {
        const { exact, keptMinor, channelMinor } = compensation(sold);
        expect(keptMinor + channelMinor + sold.printCostMinor).toBe(sold.listMinor);
        expect(Math.sign(keptMinor)).toBe(exact < 0n ? -1 : Math.sign(keptMinor));
        if (exact >= 0n) expect(Math.abs(keptMinor * 10_000 - Number(exact))).toBeLessThanOrEqual(5_000);
      }),
    );
  });
});

describe('the lowest list price', () => {
  it('is rounded up to a whole minor unit (STANDARDS E7)', () => {
    expect(lowestList(5500, 425)).toBe(945);
    expect(lowestList(4000, 425)).toBe(709);
    expect(lowestList(10_000, 425)).toBeNull();
  });

  it('loses nothing, and one minor unit less would', () => {
    fc.assert(
      fc.property(discount, money, (discountBp, printCostMinor) => {
        const lowest = lowestList(discountBp, printCostMinor);
        if (lowest === null) return;
        const earns = (listMinor: number) => compensation({ listMinor, discountBp, printCostMinor }).exact;
        expect(earns(lowest) >= 0n).toBe(true);
        if (lowest > 0) expect(earns(lowest - 1) < 0n).toBe(true);
      }),
    );
  });

  it('goes up to the next ending', () => {
    expect(withEnding(1210, 99, 100)).toBe(1299);
    expect(withEnding(1299, 99, 100)).toBe(1299);
    expect(withEnding(1300, 99, 100)).toBe(1399);
    expect(withEnding(50, 99, 100)).toBe(99);
    expect(withEnding(1_201, 0, 100)).toBe(1300);
  });
});

it('pays for the copies that stay sold (STANDARDS E7)', () => {
  const sold = { listMinor: 1995, discountBp: 5500, printCostMinor: 425 };
  expect(afterReturns(sold, 100, 25)).toEqual({
    receiptsMinor: 67_331,
    printMinor: 42_500,
    marginMinor: 24_831,
  });
});
