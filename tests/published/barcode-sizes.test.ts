import { describe, expect, it } from 'vitest';
import { barcodeGeometry } from '../../src/exchange/barcode/index.ts';

/**
 * Percent, module, bars, left zone, right zone, total, bar height, add-on width in mm: STANDARDS B1, whose rows of
 * 80, 100 and 200 per cent agree with the GS1 size guide of gs1.se and gs1ie.org.
 */
const SIZES: [number, number, number, number, number, number, number, number][] = [
  [80, 0.264, 25.08, 2.9, 1.85, 29.83, 18.28, 12.41],
  [90, 0.297, 28.22, 3.27, 2.08, 33.56, 20.57, 13.96],
  [100, 0.33, 31.35, 3.63, 2.31, 37.29, 22.85, 15.51],
  [110, 0.363, 34.49, 3.99, 2.54, 41.02, 25.14, 17.06],
  [120, 0.396, 37.62, 4.36, 2.77, 44.75, 27.42, 18.61],
  [150, 0.495, 47.03, 5.45, 3.47, 55.94, 34.28, 23.27],
  [200, 0.66, 62.7, 7.26, 4.62, 74.58, 45.7, 31.02],
];

/** The tables are rounded to hundredths of a millimetre. */
const near = (actual: number, published: number) =>
  expect(Math.abs(actual - published), `${actual} against ${published}`).toBeLessThanOrEqual(0.005 + 1e-9);

const base = { isbn13: '9781873671009', isbnLine: '978-1-873671-00-9' };

describe('sizes against the GS1 table', () => {
  it.each(SIZES)('keeps every width and height at %d per cent', (percent, ...sizes) => {
    const [moduleMm, bars, left, right, total, height, addOn] = sizes;
    const plain = barcodeGeometry({ ...base, addOn: null, magnification: percent });
    expect(plain.moduleMm).toBeCloseTo(moduleMm, 9);
    near(plain.mainWidthMm, bars);
    near(plain.quietLeftMm, left);
    near(plain.quietRightMm, right);
    near(plain.widthMm, total);
    near(plain.barHeightMm, height);
    const priced = barcodeGeometry({ ...base, addOn: { kind: 'none' }, magnification: percent });
    near(priced.addOn?.widthMm ?? 0, addOn);
    expect(priced.quietRightMm).toBeGreaterThanOrEqual(plain.quietRightMm);
  });

  it('is 25.93 mm high with its digits at 100 per cent (barcodes-israel, ozbarcodes: 25.91 to 25.93)', () => {
    near(barcodeGeometry({ ...base, addOn: null, magnification: 100 }).heightWithDigitsMm, 25.93);
  });

  it('fits the 38 by 31 mm of the book symbol with the ISBN above it (Bar Coding for Books r09, 2019)', () => {
    const { widthMm, heightMm } = barcodeGeometry({ ...base, addOn: null, magnification: 100 });
    expect(widthMm).toBeLessThanOrEqual(38);
    near(heightMm, 31);
  });

  it('has the add-on digits level with the main bars and its own bars at least half a module below them', () => {
    const geometry = barcodeGeometry({ ...base, addOn: { kind: 'none' }, magnification: 100 });
    const main = geometry.bars.find((bar) => bar.part === 'main');
    const addOn = geometry.bars.find((bar) => bar.part === 'addOn');
    const digit = geometry.glyphs.find((glyph) => glyph.centreX > (addOn?.xMm ?? Number.POSITIVE_INFINITY));
    // 0.664 of the type size is the height of a digit of OCR-B.
    expect((digit?.baselineY ?? 0) - (digit?.size ?? 0) * 0.664).toBeCloseTo(main?.yMm ?? -1, 6);
    expect((addOn?.yMm ?? 0) - (digit?.baselineY ?? 0)).toBeGreaterThanOrEqual(0.5 * geometry.moduleMm);
  });

  it('sets the ISBN line in the 9 point of the ISBN manual at 100 per cent', () => {
    const at = (magnification: number) => barcodeGeometry({ ...base, addOn: null, magnification });
    expect(at(100).isbnLinePt).toBeCloseTo(9, 9);
    expect(at(100).notes).toEqual([]);
    expect(at(80).notes).toEqual([expect.stringContaining('7.2 point')]);
  });
});
