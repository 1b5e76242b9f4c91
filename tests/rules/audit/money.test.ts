import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cleanCatalogue } from './clean.ts';
import { audit, type Catalogue, FORMAT, factsOf, LISTING, row } from './rows.ts';

function found(change: (catalogue: Catalogue) => void): string[] {
  const catalogue = cleanCatalogue();
  change(catalogue);
  return audit(factsOf(catalogue)).map((finding) => finding.rule);
}

describe('money (STANDARDS E7)', () => {
  const listing = (list: number, discountBp: number, cost: number) => (c: Catalogue) => {
    for (const price of c.prices) if (price.formatId === FORMAT.knotsPaper) price.amountMinor = list;
    Object.assign(row(c.listings, LISTING.knotsPrintworks), { discountBp, printCostMinor: cost });
  };
  test('19.95 at 55 % and 4.25 earns 4.73; 9.45 is the lowest price that loses nothing', () => {
    expect(found(listing(1_995, 5_500, 425))).toEqual([]);
    expect(found(listing(945, 5_500, 425))).toEqual([]);
    expect(found(listing(944, 5_500, 425))).toEqual(['copy-sold-at-a-loss']);
  });

  test('the named price loses nothing and one unit less does', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9_999 }),
        fc.integer({ min: 1, max: 5_000_000 }),
        (discountBp, cost) => {
          const catalogue = cleanCatalogue();
          listing(cost, discountBp, cost)(catalogue);
          const message = audit(factsOf(catalogue))[0]?.message ?? '';
          const named = Number(/EUR (\d+)\.(\d\d)\.$/.exec(message)?.slice(1).join(''));
          expect(found(listing(named, discountBp, cost))).toEqual([]);
          expect(found(listing(named - 1, discountBp, cost))).toHaveLength(1);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('at a discount of 100 % no price helps', () => {
    const catalogue = cleanCatalogue();
    listing(2_000, 10_000, 425)(catalogue);
    expect(audit(factsOf(catalogue))[0]?.message).toMatch(/a copy earns EUR −4\.25\.$/);
  });

  test('a currency without minor units is written without them', () => {
    const catalogue = cleanCatalogue();
    catalogue.prices.push({ formatId: FORMAT.knotsPaper, currency: 'JPY', amountMinor: 500 });
    Object.assign(row(catalogue.listings, LISTING.knotsPrintworks), {
      printCostMinor: 900,
      printCostCurrency: 'JPY',
    });
    expect(audit(factsOf(catalogue))[0]?.message).toContain('JPY 500, printing a copy costs JPY 900.');
  });
});
