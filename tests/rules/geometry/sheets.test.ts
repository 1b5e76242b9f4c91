import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { USUAL_FIGURES } from '../../../src/rules/geometry/figures.ts';
import { caseCover, jacket, paperbackCover } from '../../../src/rules/geometry/sheets.ts';
import { blockThickness, boundPages } from '../../../src/rules/geometry/spine.ts';
import type { Book, Sheet } from '../../../src/rules/geometry/types.ts';

const IN = 25_400;
/** The sources round to four decimals of an inch, we to a micrometre. */
const TOLERANCE_IN = 0.0001;
const sixByNine = (pages: number, pagesPerInch: number): Book => ({
  trimWidthUm: 6 * IN,
  trimHeightUm: 9 * IN,
  pages,
  bulk: { pagesPerInch },
  rightToLeft: false,
});
const sizeIn = (sheet: Sheet) => [sheet.widthUm / IN, sheet.heightUm / IN];

describe('the spine (STANDARDS E1)', () => {
  it.each([
    [240, 444, 0.5405],
    [240, 435, 0.5517],
    [300, 360, 0.8333],
    [316, 400, 0.79],
    [250, 500, 0.5],
  ])('%i pages at %i to the inch are %f in', (pages, pagesPerInch, expected) => {
    expect(Math.abs(blockThickness(pages, { pagesPerInch }) / IN - expected)).toBeLessThanOrEqual(
      TOLERANCE_IN,
    );
  });

  it('is half the pages times the thickness of a leaf: 200 pages at 0.005 in are 0.5 in', () => {
    expect(blockThickness(200, { leafUm: 127 })).toBe(12_700);
    expect(blockThickness(199, { leafUm: 127 })).toBe(12_700);
  });

  it('takes the pages a printer binds (STANDARDS E5)', () => {
    expect([boundPages(237, 2), boundPages(238, 4), boundPages(240, 16), boundPages(1, 6)]).toEqual([
      238, 240, 240, 6,
    ]);
  });
});

describe('sheets of the published examples', () => {
  it('paperback (STANDARDS E2)', () => {
    expect(sizeIn(paperbackCover(sixByNine(250, 500), USUAL_FIGURES))).toEqual([12.75, 9.25]);
    const [width, height] = sizeIn(paperbackCover(sixByNine(240, 444), USUAL_FIGURES));
    expect(Math.abs((width ?? 0) - 12.7905)).toBeLessThanOrEqual(TOLERANCE_IN);
    expect(height).toBe(9.25);
  });

  it('case (STANDARDS E3)', () => {
    const [width, height] = sizeIn(caseCover(sixByNine(240, 444), USUAL_FIGURES));
    expect(Math.abs((width ?? 0) - 14.6655)).toBeLessThanOrEqual(TOLERANCE_IN);
    expect(height).toBe(10.5);
  });

  it('jacket (STANDARDS E4)', () => {
    const [width, height] = sizeIn(jacket(sixByNine(240, 444), USUAL_FIGURES));
    expect(Math.abs((width ?? 0) - 20.1655)).toBeLessThanOrEqual(TOLERANCE_IN);
    expect(height).toBe(9.5);
  });

  it('allows for a thick cover: 316 pages at 400 to the inch and 0.0156 in (STANDARDS E1)', () => {
    const figures = { ...USUAL_FIGURES, coverAllowanceUm: Math.round(0.0156 * IN) };
    expect(Math.abs(paperbackCover(sixByNine(316, 400), figures).spineUm / IN - 0.8056)).toBeLessThanOrEqual(
      TOLERANCE_IN,
    );
  });
});

it('gives the spine at the step of a printer: 128 and 316 pages to 1/32 in (STANDARDS E1)', () => {
  // 1/32 in is 793.75 µm, and steps are whole micrometres.
  const step = { ...USUAL_FIGURES, spineStepUm: Math.round(IN / 32) };
  const leaf = { leafUm: Math.round(0.0039 * IN) };
  const thin = paperbackCover({ ...sixByNine(128, 500), bulk: leaf }, step).spineUm / IN;
  const thick = paperbackCover(sixByNine(316, 400), { ...step, coverAllowanceUm: Math.round(0.0156 * IN) });
  expect(Math.abs(thin - 1 / 4)).toBeLessThanOrEqual(0.0005);
  expect(Math.abs(thick.spineUm / IN - 13 / 16)).toBeLessThanOrEqual(0.0005);
});

it('makes room for a bar code of the size that is set: 80 % is 29.83 mm wide (STANDARDS B1)', () => {
  const figures = { ...USUAL_FIGURES, barcodeWidthUm: 29_830, barcodeHeightUm: 25_000 };
  const { barcode } = paperbackCover(sixByNine(240, 444), figures);
  expect(barcode).toMatchObject({ widthUm: 29_830, heightUm: 25_000 });
  expect(paperbackCover(sixByNine(240, 444), { ...figures, barcodeWidthUm: 160_000 }).barcode).toBeNull();
});

const book: fc.Arbitrary<Book> = fc.record({
  trimWidthUm: fc.integer({ min: 90_000, max: 320_000 }),
  trimHeightUm: fc.integer({ min: 120_000, max: 420_000 }),
  pages: fc.integer({ min: 2, max: 1_500 }),
  bulk: fc.oneof(
    fc.record({ pagesPerInch: fc.integer({ min: 200, max: 800 }) }),
    fc.record({ leafUm: fc.integer({ min: 40, max: 300 }) }),
  ),
  rightToLeft: fc.boolean(),
});

describe.each([
  ['paperback cover', paperbackCover],
  ['case', caseCover],
  ['jacket', jacket],
] as const)('any %s', (kind, lay) => {
  it('is its panels side by side without gap or overlap, with safe areas and bar code inside them', () => {
    fc.assert(
      fc.property(book, (any) => {
        const sheet = lay(any, USUAL_FIGURES);
        expect(sheet.kind).toBe(kind);
        let x = sheet.trimmed.xUm;
        for (const [i, panel] of sheet.panels.entries()) {
          expect(panel.xUm).toBe(x);
          if (i > 0) expect(sheet.foldsUm[i - 1]).toBe(x);
          x += panel.widthUm;
          const { safe } = panel;
          if (!safe) continue;
          expect(safe.xUm).toBeGreaterThanOrEqual(panel.xUm);
          expect(safe.xUm + safe.widthUm).toBeLessThanOrEqual(panel.xUm + panel.widthUm);
          expect(safe.yUm + safe.heightUm).toBeLessThanOrEqual(panel.yUm + panel.heightUm);
        }
        expect(x).toBe(sheet.trimmed.xUm + sheet.trimmed.widthUm);
        expect(x + sheet.edge.um).toBe(sheet.widthUm);
        const back = sheet.panels.find((panel) => panel.kind === 'back cover');
        const { barcode } = sheet;
        if (!back || !barcode) throw new Error('A page of this size has room for a bar code.');
        expect(barcode.xUm).toBeGreaterThanOrEqual(back.xUm);
        expect(barcode.xUm + barcode.widthUm).toBeLessThanOrEqual(back.xUm + back.widthUm);
        expect(barcode.yUm).toBeGreaterThan(back.yUm + back.heightUm / 2);
      }),
    );
  });

  it('is mirrored for a book read from right to left', () => {
    fc.assert(
      fc.property(book, (any) => {
        const left = lay({ ...any, rightToLeft: false }, USUAL_FIGURES);
        const right = lay({ ...any, rightToLeft: true }, USUAL_FIGURES);
        const mirrored = right.panels.map((p) => right.widthUm - p.xUm - p.widthUm).toReversed();
        expect(mirrored).toEqual(left.panels.map((p) => p.xUm));
        const mirror = (x: number, width: number) => right.widthUm - x - width;
        expect(right.barcode && mirror(right.barcode.xUm, right.barcode.widthUm)).toBe(left.barcode?.xUm);
      }),
    );
  });
});

it('leaves a thin spine without text', () => {
  const spine = (pages: number) =>
    paperbackCover(sixByNine(pages, 444), USUAL_FIGURES).panels.find((panel) => panel.kind === 'spine');
  expect(spine(60)?.safe).toBeNull();
  expect(spine(240)?.safe).not.toBeNull();
});
