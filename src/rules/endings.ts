import { withEnding } from './compensation.ts';

/** How the prices of one currency end: the last digits in minor units, '99' for 12.99, '999' for 9.99 and 19.99. */
export interface CurrencyEndings {
  currency: string;
  endings: readonly string[];
}

/** The first price at or above one with each ending that is used in its currency, the lowest first. */
export function endingPrices(
  fromMinor: number,
  currency: string,
  all: readonly CurrencyEndings[],
): { ending: string; minor: number }[] {
  const endings = all.find((one) => one.currency === currency)?.endings ?? [];
  return endings
    .map((ending) => ({ ending, minor: withEnding(fromMinor, Number(ending), 10 ** ending.length) }))
    .sort((a, b) => a.minor - b.minor);
}
