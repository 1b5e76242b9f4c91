import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/contract/refusal.ts';
import {
  type BarcodeOptions,
  barcodeGeometry,
  barcodePdf,
  barcodePng,
  barcodeSvg,
} from '../../src/exchange/barcode/index.ts';

const good = {
  isbn13: '9780306406157',
  isbnLine: '978-0-306-40615-7',
  addOn: null,
  magnification: 100,
  barWidthReductionUm: 0,
} satisfies BarcodeOptions;

/** What a caller without types might send. */
function refusal(change: Record<string, unknown>, draw: (o: BarcodeOptions) => unknown = barcodeGeometry) {
  try {
    draw({ ...good, ...change });
  } catch (error) {
    if (error instanceof Refusal) return error.body();
    throw error;
  }
  return null;
}

const CASES: [string, Record<string, unknown>, string, string][] = [
  ['hyphens in the number', { isbn13: '978-0-306-40615-7' }, 'isbn13', 'without hyphens'],
  ['twelve digits', { isbn13: '978030640615' }, 'isbn13', 'thirteen digits'],
  ['a number under 977', { isbn13: '9770306406150' }, 'isbn13', '978 or 979'],
  ['a wrong check digit', { isbn13: '9780306406158' }, 'isbn13', 'would be 7'],
  ['no number', { isbn13: undefined }, 'isbn13', 'thirteen digits'],
  ['a line of another number', { isbnLine: '978-3-16-148410-0' }, 'isbnLine', 'same number'],
  ['a line without hyphens', { isbnLine: '9780306406157' }, 'isbnLine', 'five parts'],
  ['a line with other words', { isbnLine: 'ISBN-13 978-0-306-40615-7' }, 'isbnLine', 'five parts'],
  ['too small', { magnification: 79.9 }, 'magnification', '80 to 200'],
  ['too large', { magnification: 200.1 }, 'magnification', '80 to 200'],
  ['a magnification that is no number', { magnification: Number.NaN }, 'magnification', '80 to 200'],
  ['a negative reduction', { barWidthReductionUm: -1 }, 'barWidthReductionUm', '0 or more'],
  ['a reduction beyond half a module', { barWidthReductionUm: 166 }, 'barWidthReductionUm', '165 µm'],
  ['an unknown kind of add-on', { addOn: { kind: 'title' } }, 'addOn.kind', 'no price, or five digits'],
  ['four digits of add-on', { addOn: { kind: 'digits', digits: '9000' } }, 'addOn.digits', 'five digits'],
  [
    'a price of nothing',
    { addOn: { kind: 'price', amountMinor: 0, currency: 'USD' } },
    'addOn.amountMinor',
    'no price (90000)',
  ],
  [
    'half a cent',
    { addOn: { kind: 'price', amountMinor: 1995.5, currency: 'USD' } },
    'addOn.amountMinor',
    'whole minor units',
  ],
  [
    'a currency without a first digit',
    { addOn: { kind: 'price', amountMinor: 1995, currency: 'EUR' } },
    'addOn.currency',
    'USD, CAD, NZD, AUD, GBP',
  ],
  [
    'a currency in small letters',
    { addOn: { kind: 'price', amountMinor: 1995, currency: 'usd' } },
    'addOn.currency',
    'three capital letters',
  ],
  [
    'too many Canadian dollars',
    { addOn: { kind: 'price', amountMinor: 10000, currency: 'CAD' } },
    'addOn.amountMinor',
    'end at 99.99',
  ],
];

describe('refusals of the bar code', () => {
  it.each(CASES)('refuses %s', (_, change, field, words) => {
    const body = refusal(change);
    expect(body).toMatchObject({ code: 'BAD_INPUT', field });
    expect(body?.message).toContain(words);
    expect(body?.message.match(/\.(\s|$)/g), 'one sentence').toHaveLength(1);
  });

  it('refuses alike whatever the file asked for', () => {
    const change = { isbn13: '9780306406158' };
    const body = refusal(change);
    expect(body).not.toBeNull();
    expect(refusal(change, barcodeSvg)).toEqual(body);
    expect(refusal(change, barcodePdf)).toEqual(body);
    expect(refusal(change, (options) => barcodePng({ ...options, dpi: 1200 }))).toEqual(body);
  });

  it('takes the line with and without the letters ISBN, and with spaces', () => {
    const line = (isbnLine: string) => barcodeGeometry({ ...good, isbnLine }).isbnLine;
    expect(line('978-0-306-40615-7')).toBe('ISBN 978-0-306-40615-7');
    expect(line('ISBN 978-0-306-40615-7')).toBe('ISBN 978-0-306-40615-7');
    expect(line('978 0 306 40615 7')).toBe('ISBN 978 0 306 40615 7');
  });

  it('allows a reduction of exactly half a module', () => {
    expect(refusal({ barWidthReductionUm: 165 })).toBeNull();
  });

  it('never draws a number with one digit mistyped', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 1, max: 9 }), (at, shift) => {
        const digits = [...good.isbn13].map((d, i) => (i === at ? (Number(d) + shift) % 10 : d)).join('');
        expect(refusal({ isbn13: digits, isbnLine: null })).toMatchObject({ field: 'isbn13' });
      }),
    );
  });

  it('points out a missing ISBN line without stopping', () => {
    expect(barcodeGeometry({ ...good, isbnLine: null }).notes).toEqual([
      expect.stringContaining('directly above the bars'),
    ]);
  });
});
