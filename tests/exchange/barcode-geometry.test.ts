import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BarcodeOptions, barcodeGeometry } from '../../src/exchange/barcode/index.ts';
import { checkDigit13 } from '../../src/rules/isbn/index.ts';

const digits = (length: number) =>
  fc.array(fc.integer({ min: 0, max: 9 }), { minLength: length, maxLength: length }).map((d) => d.join(''));

const anyOptions: fc.Arbitrary<BarcodeOptions> = fc.record({
  isbn13: fc
    .tuple(fc.constantFrom('978', '979'), digits(9))
    .map(([p, nine]) => p + nine + checkDigit13(p + nine)),
  isbnLine: fc.constant(null),
  addOn: fc.option(digits(5).map((five) => ({ kind: 'digits' as const, digits: five }))),
  magnification: fc.double({ min: 80, max: 200, noNaN: true }),
  barWidthReductionUm: fc.double({ min: 0, max: 132, noNaN: true }),
});

describe('geometry of any bar code', () => {
  it('gives back its modules when the bars are read at the middle of each module', () => {
    fc.assert(
      fc.property(anyOptions, (options) => {
        const geometry = barcodeGeometry(options);
        const dark = (module: number) => {
          const x = (module + 0.5) * geometry.moduleMm;
          return geometry.bars.some((bar) => bar.xMm < x && x < bar.xMm + bar.widthMm) ? '1' : '0';
        };
        const read = (from: number, count: number) =>
          Array.from({ length: count }, (_, i) => dark(from + i)).join('');
        expect(read(0, 11)).toBe('0'.repeat(11));
        expect(read(11, 95)).toBe(geometry.mainModules);
        if (geometry.addOn) {
          expect(read(106, 9)).toBe('0'.repeat(9));
          expect(read(115, 47)).toBe(geometry.addOn.modules);
          expect(read(162, 5)).toBe('0'.repeat(5));
          expect(geometry.widthMm).toBeCloseTo(167 * geometry.moduleMm, 9);
        } else expect(geometry.widthMm).toBeCloseTo(113 * geometry.moduleMm, 9);
      }),
      { numRuns: 100 },
    );
  });

  it('narrows every bar by the reduction and keeps it in the middle of its modules', () => {
    fc.assert(
      fc.property(anyOptions, (options) => {
        const geometry = barcodeGeometry(options);
        const plain = barcodeGeometry({ ...options, barWidthReductionUm: 0 });
        const reductionMm = (options.barWidthReductionUm ?? 0) / 1000;
        geometry.bars.forEach((bar, i) => {
          const whole = plain.bars[i];
          expect(bar.widthMm).toBeCloseTo((whole?.widthMm ?? 0) - reductionMm, 9);
          expect(bar.xMm + bar.widthMm / 2).toBeCloseTo((whole?.xMm ?? 0) + (whole?.widthMm ?? 0) / 2, 9);
          expect(bar.widthMm).toBeGreaterThanOrEqual(geometry.moduleMm / 2 - 1e-12);
        });
        expect(geometry.widthMm).toBe(plain.widthMm);
      }),
      { numRuns: 50 },
    );
  });

  it('lengthens the six guard bars by five modules and no other', () => {
    fc.assert(
      fc.property(anyOptions, (options) => {
        const geometry = barcodeGeometry(options);
        const guards = geometry.bars.filter((bar) => bar.guard);
        expect(guards.map((bar) => bar.startModule - 11)).toEqual([0, 2, 46, 48, 92, 94]);
        for (const bar of geometry.bars.filter((one) => one.part === 'main'))
          expect(bar.heightMm).toBeCloseTo(geometry.barHeightMm + (bar.guard ? 5 * geometry.moduleMm : 0), 9);
        expect(geometry.bars.filter((bar) => bar.part === 'main')).toHaveLength(30);
      }),
      { numRuns: 50 },
    );
  });

  it('keeps all ink on the white ground and no digit in a bar', () => {
    fc.assert(
      fc.property(anyOptions, (options) => {
        const geometry = barcodeGeometry(options);
        expect(geometry.glyphs).toHaveLength(options.addOn ? 18 : 13);
        for (const glyph of geometry.glyphs) {
          const half = 0.22 * glyph.size;
          const top = glyph.baselineY - 0.68 * glyph.size;
          const foot = glyph.baselineY + 0.02 * glyph.size;
          expect(glyph.centreX - half).toBeGreaterThan(0);
          expect(glyph.centreX + half).toBeLessThan(geometry.widthMm);
          expect(top).toBeGreaterThan(0);
          expect(foot).toBeLessThan(geometry.heightMm);
          const hit = geometry.bars.filter(
            (bar) =>
              bar.xMm < glyph.centreX + half &&
              bar.xMm + bar.widthMm > glyph.centreX - half &&
              bar.yMm < foot &&
              bar.yMm + bar.heightMm > top,
          );
          expect(hit).toEqual([]);
        }
      }),
      { numRuns: 50 },
    );
  });

  it('grows in proportion', () => {
    const options = { isbn13: '9780306406157', isbnLine: '978-0-306-40615-7', addOn: null };
    const single = barcodeGeometry({ ...options, magnification: 100 });
    const double = barcodeGeometry({ ...options, magnification: 200 });
    expect(double.widthMm).toBeCloseTo(2 * single.widthMm, 9);
    expect(double.heightMm).toBeCloseTo(2 * single.heightMm, 9);
  });

  it('sets the ISBN line between the first digit and the last bar', () => {
    const geometry = barcodeGeometry({
      isbn13: '9780306406157',
      isbnLine: '978-0-306-40615-7',
      addOn: { kind: 'none' },
      magnification: 100,
    });
    const barTop = geometry.bars[0]?.yMm ?? 0;
    const line = geometry.glyphs.filter((glyph) => glyph.baselineY < barTop);
    expect(line.map((glyph) => glyph.char).join('')).toBe('ISBN978-0-306-40615-7');
    const last = line.at(-1);
    expect((last?.centreX ?? 0) + 0.2175 * (last?.size ?? 0)).toBeCloseTo(106 * geometry.moduleMm, 6);
    const firstDigit = geometry.glyphs[0];
    expect((line[0]?.centreX ?? 0) - 0.2175 * (line[0]?.size ?? 0)).toBeCloseTo(
      (firstDigit?.centreX ?? 0) - 0.2175 * (firstDigit?.size ?? 0),
      6,
    );
    const steps = line.slice(1).map((glyph, i) => glyph.centreX - (line[i]?.centreX ?? 0));
    expect(Math.min(...steps)).toBeGreaterThan(0.4 * (last?.size ?? 0));
  });
});
