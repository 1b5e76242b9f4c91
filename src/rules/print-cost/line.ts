import type { CardPrice, Fitted, Quote } from '../../contract/print-costs.ts';
import { boundPages } from '../geometry/spine.ts';
import { majorUnits } from '../money.ts';

/** Ten-thousandths of a minor unit: what is fitted is shown so finely, and a page costs less than a minor unit. */
export const PARTS = 10_000n;

/** A cost in minor units as an exact fraction: (fixed + page × pages) ÷ unit, unit above 0. */
export interface Line {
  fixed: bigint;
  page: bigint;
  unit: bigint;
  /** The one page count that is known, where no other follows from it. */
  only: number | null;
}

/** A ÷ b to the nearest whole, a half away from zero; b above 0. */
function nearest(a: bigint, b: bigint): bigint {
  const twice = 2n * (a < 0n ? -a : a);
  const size = (twice + b) / (2n * b);
  return a < 0n ? -size : size;
}

/** The pages that are printed: a leaf has two (STANDARDS E5). */
const printed = (pages: number): bigint => BigInt(boundPages(pages, 2));

/**
 * The straight line nearest to some quotes by least squares, exactly: slope (n·Σxy − Σx·Σy) ÷ D and height
 * (Σx²·Σy − Σx·Σxy) ÷ D with D = n·Σx² − (Σx)², all whole numbers. Quotes of one page count give their mean there.
 */
export function lineOfQuotes(quotes: readonly Quote[]): Line {
  let [n, x, y, xx, xy] = [0n, 0n, 0n, 0n, 0n];
  for (const { pages, amountMinor } of quotes) {
    const [at, cost] = [printed(pages), BigInt(amountMinor)];
    n += 1n;
    x += at;
    y += cost;
    xx += at * at;
    xy += at * cost;
  }
  const unit = n * xx - x * x;
  if (unit === 0n) return { fixed: y, page: 0n, unit: n > 0n ? n : 1n, only: Number(n > 0n ? x / n : 0n) };
  return { fixed: xx * y - x * xy, page: n * xy - x * y, unit, only: null };
}

export function lineOf(price: CardPrice): Line {
  if (price.kind === 'quotes') return lineOfQuotes(price.quotes);
  return { fixed: BigInt(price.fixedParts), page: BigInt(price.pageParts), unit: PARTS, only: null };
}

/**
 * What a copy of so many pages costs by a line: to the nearest minor unit, a half up. Null where the line gives less
 * than nothing, or knows another page count alone.
 */
export function costAt(line: Line, pages: number): number | null {
  if (line.only !== null && BigInt(line.only) !== printed(pages)) return null;
  const exact = line.fixed + line.page * printed(pages);
  return exact < 0n ? null : Number(nearest(exact, line.unit));
}

/** A quote less what the line gives for its pages, in ten-thousandths of a minor unit. */
function offBy(line: Line, { pages, amountMinor }: Quote): number {
  const off = BigInt(amountMinor) * line.unit - line.fixed - line.page * printed(pages);
  return Number(nearest(off * PARTS, line.unit));
}

const places = (quotes: readonly Quote[]) => new Set(quotes.map(({ pages }) => printed(pages))).size;

/** Sentences on pairs of quotes that cannot both be right, and on a line that cannot be. */
function contradictions(quotes: readonly Quote[], line: Line, currency: string): string[] {
  const told = (minor: number) => `${currency} ${majorUnits(minor, currency)}`;
  const byPages = quotes.toSorted((a, b) => a.pages - b.pages || a.amountMinor - b.amountMinor);
  const warnings: string[] = [];
  for (const [at, quote] of byPages.entries()) {
    const before = byPages[at - 1];
    if (!before) continue;
    const pair = `${told(before.amountMinor)} for ${before.pages} pages and ${told(quote.amountMinor)} for ${quote.pages}`;
    if (printed(before.pages) === printed(quote.pages) && before.amountMinor !== quote.amountMinor)
      warnings.push(
        `Two quotes contradict each other: ${pair}. Is one of them for other paper, ink or trim?`,
      );
    else if (before.amountMinor > quote.amountMinor)
      warnings.push(`A thicker book costs less: ${pair}. Check both quotes.`);
  }
  if (line.fixed < 0n)
    warnings.push(
      'The fixed part comes out below nothing, so short books cost too little by this card; check the quotes, or keep a card for each range of pages.',
    );
  const worst = Math.max(0, ...quotes.map((quote) => Math.abs(offBy(line, quote))));
  if (places(quotes) > 2 && worst > Number(PARTS))
    warnings.push(
      `The quotes do not lie on one line: the farthest is ${told(Math.round(worst / Number(PARTS)))} off. Costs that jump at some page count need a card for each range of pages.`,
    );
  return warnings;
}

/** The line that a card gives, rounded for the eye, with every quote beside it. */
export function fitPrice(price: CardPrice, currency: string): Fitted {
  if (price.kind === 'stated') {
    const { fixedParts, pageParts } = price;
    return { how: 'stated', fixedParts, pageParts, quotes: [], warnings: [] };
  }
  const { quotes } = price;
  const line = lineOfQuotes(quotes);
  const off = quotes.map((quote) => ({
    ...quote,
    fittedMinor: costAt(line, quote.pages),
    offParts: offBy(line, quote),
  }));
  const onLine = off.every(({ offParts }) => offParts === 0);
  const rounded = (amount: bigint) => Number(nearest(amount * PARTS, line.unit));
  return {
    how: line.only !== null ? 'one page count' : onLine ? 'exact' : 'least squares',
    fixedParts: line.only === null ? rounded(line.fixed) : null,
    pageParts: line.only === null ? rounded(line.page) : null,
    quotes: off,
    warnings: contradictions(quotes, line, currency),
  };
}
