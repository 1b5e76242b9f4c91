// What a copy earns (STANDARDS E7, common practice): list price × (1 − discount) − print cost. Amounts are whole
// minor units of one currency, discounts basis points (4000 is 40 %); nothing is rounded before the last step.

const WHOLE = 10_000n;

export interface CopySold {
  /** The list price from which the channel takes its discount. */
  listMinor: number;
  discountBp: number;
  /** What making one copy costs; 0 where nothing is printed. */
  printCostMinor: number;
}

export interface Compensation {
  /** Not rounded: ten-thousandths of a minor unit. */
  exact: bigint;
  /** To the nearest minor unit, a half away from zero; a loss is never shown as nothing. */
  keptMinor: number;
  /** What the channel keeps, so that kept + channel's share + print cost is the list price. */
  channelMinor: number;
}

/** To the nearest whole minor unit, a half away from zero. */
function nearest(exact: bigint): number {
  const half = exact < 0n ? -WHOLE / 2n : WHOLE / 2n;
  return Number((exact + half) / WHOLE);
}

/** What one copy earns at a list price, discount and print cost. */
export function compensation({ listMinor, discountBp, printCostMinor }: CopySold): Compensation {
  const exact = BigInt(listMinor) * (WHOLE - BigInt(discountBp)) - BigInt(printCostMinor) * WHOLE;
  const keptMinor = exact < 0n ? Math.min(nearest(exact), -1) : nearest(exact);
  return { exact, keptMinor, channelMinor: listMinor - printCostMinor - keptMinor };
}

/** The lowest list price at which a copy loses nothing, rounded up; null at a discount of 100 %. */
export function lowestList(discountBp: number, printCostMinor: number): number | null {
  const share = WHOLE - BigInt(discountBp);
  return share > 0n ? Number((BigInt(printCostMinor) * WHOLE + share - 1n) / share) : null;
}

/** The first price at or above `fromMinor` that ends in `ending` minor units: from 12.10 with ending 99 to 12.99. */
export function withEnding(fromMinor: number, ending: number, minorPerMajor: number): number {
  const major = Math.ceil((fromMinor - ending) / minorPerMajor);
  return Math.max(major, 0) * minorPerMajor + ending;
}

export interface ReturnsOutcome {
  receiptsMinor: number;
  printMinor: number;
  /** Receipts less printing, before freight and whatever handling a return costs. */
  marginMinor: number;
}

/** What a run earns when part of it comes back unsold: copies kept are paid for, all copies were printed. */
export function afterReturns(copy: CopySold, shipped: number, returned: number): ReturnsOutcome {
  const perCopy = BigInt(copy.listMinor) * (WHOLE - BigInt(copy.discountBp));
  const receiptsMinor = nearest(perCopy * BigInt(Math.max(shipped - returned, 0)));
  const printMinor = copy.printCostMinor * shipped;
  return { receiptsMinor, printMinor, marginMinor: receiptsMinor - printMinor };
}
