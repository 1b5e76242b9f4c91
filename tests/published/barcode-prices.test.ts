import { describe, expect, it } from 'vitest';
import { barcodeGeometry } from '../../src/exchange/barcode/index.ts';

const withPrice = (amountMinor: number, currency: string) =>
  barcodeGeometry({
    isbn13: '9780306406157',
    isbnLine: '978-0-306-40615-7',
    addOn: { kind: 'price', amountMinor, currency },
    magnification: 100,
  });

/** Published examples in US dollars: barcode-us.com, ggbarcode.com, swinglabels.com (STANDARDS B4). */
const US_DOLLARS: [number, string][] = [
  [695, '50695'],
  [1095, '51095'],
  [1900, '51900'],
  [2495, '52495'],
  [9998, '59998'],
  [9999, '59999'],
  [12500, '59999'],
];

/** First digits by currency, same sources. */
const CURRENCIES: [string, string][] = [
  ['USD', '51299'],
  ['CAD', '61299'],
  ['NZD', '41299'],
  ['AUD', '31299'],
  ['GBP', '01299'],
];

describe('price add-on against the published table', () => {
  it.each(US_DOLLARS)('turns %d cents of a US dollar into %s', (amountMinor, digits) => {
    expect(withPrice(amountMinor, 'USD').addOn?.digits).toBe(digits);
  });

  it.each(CURRENCIES)('begins a price in %s as %s does', (currency, digits) => {
    expect(withPrice(1299, currency).addOn?.digits).toBe(digits);
  });

  it('says 90000 where no price is given', () => {
    const options = { isbn13: '9780306406157', isbnLine: null, magnification: 100 };
    expect(barcodeGeometry({ ...options, addOn: { kind: 'none' } }).addOn?.digits).toBe('90000');
  });

  it('advises against prices outside the United States and Canada', () => {
    expect(withPrice(1299, 'GBP').notes).toEqual([expect.stringContaining('United States and Canada')]);
    expect(withPrice(1299, 'USD').notes).toEqual([]);
    expect(withPrice(1299, 'CAD').notes).toEqual([]);
  });
});
