import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BLANK_CARD } from '../../src/contract/print-costs.ts';
import { endingPrices } from '../../src/rules/endings.ts';
import { type MoneyListing, moneyRowOf } from '../../src/rules/listing-money.ts';
import { curveOf, spanOf } from '../../src/rules/money-curves.ts';

const LISTING: MoneyListing = {
  listingId: 1,
  formatId: 1,
  form: 'BC',
  formDetail: null,
  caseKind: null,
  largePrint: false,
  interiorColour: 'black',
  trimWidthUm: 129_000,
  trimHeightUm: 198_000,
  pages: 240,
  channelId: 1,
  channelName: 'Printworks Direct',
  standing: 'selling',
  discountBp: 4_000,
  returns: 'Y',
  printCostMinor: 467,
  printCostCurrency: 'USD',
  currency: 'USD',
  listMinor: 1_699,
  tax: 'excluding',
};
// 0.90 and 0.0125 a page: 3.90 for 240 pages.
const CARD = {
  ...BLANK_CARD,
  id: 5,
  channelId: 1,
  currency: 'USD',
  price: { kind: 'stated' as const, fixedParts: 900_000, pageParts: 12_500 },
};
const TERMS = {
  cards: [CARD],
  endings: [{ currency: 'USD', endings: ['99', '95', '00'] }],
  day: '2026-03-02',
  lengthUnit: 'mm' as const,
  shipped: 100,
  returnedBp: 2_500,
};
const rowOf = (more: Partial<MoneyListing> = {}) => moneyRowOf({ ...LISTING, ...more }, TERMS);

describe('a listing in money', () => {
  // Common practice, no source: 16.99 at 40 %, printed for 4.67 and for 3.90.
  it('keeps 5.52 (5.524) at its own figure of 4.67', () => {
    expect(rowOf()).toMatchObject({
      keptMinor: 552,
      keptParts: 5_524_000,
      printCost: { minor: 467, from: 'own figure', cardName: '' },
    });
  });

  it('keeps 6.29 at the 3.90 that the card of the channel gives', () => {
    expect(rowOf({ printCostMinor: null, printCostCurrency: null })).toMatchObject({
      keptMinor: 629,
      printCost: { minor: 390, from: 'card', cardId: 5, cardName: 'Any printed form' },
    });
  });

  it('has a lowest price of 9.45, and one with each ending (STANDARDS E7: 55 %, 4.25)', () => {
    expect(rowOf({ listMinor: 1_995, discountBp: 5_500, printCostMinor: 425 })).toMatchObject({
      keptMinor: 473,
      lowestMinor: 945,
      lowestEnding: [
        { ending: '95', minor: 995 },
        { ending: '99', minor: 999 },
        { ending: '00', minor: 1_000 },
      ],
    });
  });

  it('leaves 248.31 of a hundred copies of which 25 come back (STANDARDS E7)', () => {
    const { afterReturns } = rowOf({ listMinor: 1_995, discountBp: 5_500, printCostMinor: 425 });
    expect(afterReturns).toMatchObject({ receiptsMinor: 67_331, printMinor: 42_500, marginMinor: 24_831 });
    // 1 − 4.25 ÷ 8.9775
    expect(afterReturns?.bearableBp).toBe(5_265);
  });

  it('has nothing come back where it is not returnable, and of an e-book', () => {
    expect(rowOf({ returns: 'N' }).afterReturns).toBeNull();
    expect(rowOf({ form: 'ED', discountBp: 3_000 })).toMatchObject({
      afterReturns: null,
      keptMinor: 1_189,
      printCost: { from: 'nothing printed' },
    });
  });

  it('tells nothing where the print cost is not known, and takes 0 % where no discount is', () => {
    expect(rowOf({ currency: 'GBP' })).toMatchObject({
      keptMinor: null,
      lowestMinor: null,
      lowestEnding: [],
    });
    expect(rowOf({ discountBp: null })).toMatchObject({ discountBp: null, keptMinor: 1_232 });
  });

  it('loses nothing at the largest share of returns that it says, and something one copy beyond', () => {
    const amount = fc.integer({ min: 1, max: 100_000 });
    fc.assert(
      fc.property(
        amount,
        amount,
        fc.integer({ min: 0, max: 9_999 }),
        (listMinor, printCostMinor, discountBp) => {
          const row = moneyRowOf(
            { ...LISTING, listMinor, printCostMinor, discountBp },
            { ...TERMS, shipped: 10_000, returnedBp: 0 },
          );
          const bearableBp = row.afterReturns?.bearableBp ?? 0;
          const margin = (back: number) =>
            moneyRowOf(
              { ...LISTING, listMinor, printCostMinor, discountBp },
              { ...TERMS, shipped: 10_000, returnedBp: back },
            ).afterReturns?.marginMinor ?? 0;
          if (bearableBp > 0) expect(margin(bearableBp)).toBeGreaterThanOrEqual(0);
          if (bearableBp < 10_000) expect(margin(bearableBp + 1)).toBeLessThanOrEqual(0);
        },
      ),
    );
  });
});

describe('the endings of prices', () => {
  it('are the last digits, whatever the currency’s minor unit', () => {
    const all = [
      { currency: 'JPY', endings: ['80'] },
      { currency: 'EUR', endings: ['999'] },
    ];
    expect(endingPrices(1_210, 'JPY', all)).toEqual([{ ending: '80', minor: 1_280 }]);
    expect(endingPrices(1_210, 'EUR', all)).toEqual([{ ending: '999', minor: 1_999 }]);
    expect(endingPrices(1_210, 'GBP', all)).toEqual([]);
  });

  it('give a price that ends so, is not below, and has no lower one that is', () => {
    const ending = fc
      .integer({ min: 1, max: 4 })
      .chain((n) => fc.stringMatching(new RegExp(`^[0-9]{${n}}$`)));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), ending, (from, text) => {
        const [price] = endingPrices(from, 'EUR', [{ currency: 'EUR', endings: [text] }]);
        const minor = price?.minor ?? 0;
        expect(String(minor).padStart(text.length, '0').endsWith(text)).toBe(true);
        expect(minor).toBeGreaterThanOrEqual(from);
        expect(minor - 10 ** text.length).toBeLessThan(from);
      }),
    );
  });
});

describe('a line of the picture', () => {
  const line = (over: 'price' | 'pages' | 'discount', more: Partial<MoneyListing> = {}) =>
    curveOf({ ...LISTING, ...more }, over, spanOf(over, LISTING.listMinor, LISTING.pages), TERMS);

  it('passes through what the listing keeps today', () => {
    for (const over of ['price', 'pages', 'discount'] as const) expect(line(over).now?.keptMinor).toBe(552);
  });

  it('rises with the price, falls with discount and pages', () => {
    const kept = (over: 'price' | 'pages' | 'discount') =>
      line(over).points.map(({ keptMinor }) => keptMinor ?? Number.NaN);
    expect(kept('price')).toEqual(kept('price').toSorted((a, b) => a - b));
    expect(kept('discount')).toEqual(kept('discount').toSorted((a, b) => b - a));
    expect(kept('pages')).toEqual(kept('pages').toSorted((a, b) => b - a));
  });

  it('is not drawn over pages from a figure that holds for its own pages alone', () => {
    const alone = curveOf(LISTING, 'pages', spanOf('pages', 1_699, 240), { ...TERMS, cards: [] });
    expect(alone.points.every(({ x, keptMinor }) => (x === 240) === (keptMinor !== null))).toBe(true);
    expect(alone.now).toEqual({ x: 240, keptMinor: 552 });
    expect(alone.note).toContain('for its own pages alone');
  });
});
