import { describe, expect, it } from 'vitest';
import { findBarcodes, lookAt } from '../../../src/exchange/proof-files/cover/find.ts';
import { viewOfRaster } from '../../../src/exchange/proof-files/cover/page-view.ts';
import type { Raster } from '../../../src/exchange/proof-files/cover/raster.ts';
import { fill, type PaintedCode, paintBars, sheetOf, turned } from '../../support/proof-files/paint.ts';

/** Published numbers (STANDARDS A7). */
const ONE = '9780306406157';
const TWO = '9783161484100';
const DPI = 600;
const PLAIN: PaintedCode = { digits: ONE, module: 8, height: 540 };

async function found(raster: Raster) {
  const view = viewOfRaster(raster, DPI);
  return findBarcodes(view, lookAt(view), () => {});
}
const px = (points: number) => (points * DPI) / 72;

function painted(code: PaintedCode, ground: [number, number, number] = [255, 255, 255]) {
  const sheet = sheetOf(2_400, 1_800, ground);
  paintBars(sheet, 600, 500, code);
  return sheet;
}

describe('a bar code on a sheet', () => {
  it.each([0, 1, 2, 3])('is found and measured to a pixel, turned by %d quarters', async (quarters) => {
    const sheet = turned(painted({ ...PLAIN, addOn: '51995' }), quarters);
    const [code, ...more] = await found(sheet);
    expect(more).toEqual([]);
    expect(code).toMatchObject({
      digits: ONE,
      addOn: '51995',
      turned: quarters * 90,
      inverted: false,
      contrast: 1,
    });
    if (!code) return;
    expect(px(code.modulePt)).toBeCloseTo(8, 1);
    expect(px(code.barHeightPt ?? 0)).toBeCloseTo(540, 0);
    expect(code.quietLeft).toBe(30);
    expect(code.quietRight).toBeCloseTo(9, 1);
    const corners = {
      0: [600, 500],
      1: [1_800 - 580 - 500, 600],
      2: [1_040, 1_800 - 580 - 500],
      3: [500, 1_040],
    };
    const [x, y] = corners[quarters as 0 | 1 | 2 | 3] ?? [];
    expect(Math.abs(px(code.box.xPt) - (x ?? 0))).toBeLessThan(1.5);
    expect(Math.abs(px(code.box.yPt) - (y ?? 0))).toBeLessThan(1.5);
    const size = [px(code.box.widthPt), px(code.box.heightPt)];
    const [width = 0, height = 0] = quarters % 2 === 0 ? size : size.reverse();
    expect(Math.abs(width - 760)).toBeLessThan(1.5);
    expect(Math.abs(height - 580)).toBeLessThan(1.5);
  });

  it('keeps several codes apart, whichever way each is turned', async () => {
    const sheet = sheetOf(4_000, 3_000);
    paintBars(sheet, 200, 200, PLAIN);
    paintBars(sheet, 2_400, 1_900, { ...PLAIN, digits: TWO });
    const over = turned(sheetOf(900, 900), 0);
    paintBars(over, 70, 100, PLAIN);
    const side = turned(over, 1);
    for (let y = 0; y < 900; y += 1)
      sheet.rgba.set(side.rgba.subarray(y * 900 * 4, (y + 1) * 900 * 4), ((y + 1_900) * 4_000 + 300) * 4);
    const codes = await found(sheet);
    expect(codes.map(({ digits, turned: by }) => [digits, by])).toEqual([
      [ONE, 0],
      [TWO, 0],
      [ONE, 90],
    ]);
  });

  it.each([7, 9, 12, 15])('reads an add-on %d modules away', async (gap) => {
    const [code] = await found(painted({ ...PLAIN, addOn: '90000', gap }));
    expect(code).toMatchObject({ digits: ONE, addOn: '90000' });
    expect(code?.quietRight).toBeCloseTo(gap, 1);
  });

  it('reads no add-on where there is none', async () => {
    const [code] = await found(painted(PLAIN));
    expect(code).toMatchObject({ addOn: null, quietLeft: 30, quietRight: 30 });
  });

  it('measures quiet zones up to whatever stands in them', async () => {
    const sheet = painted(PLAIN);
    fill(sheet, 600 - 6 * 8 - 4, 600, 4, 200, [90, 90, 90]);
    fill(sheet, 600 + (95 + 4) * 8, 560, 40, 60, [0, 0, 160]);
    const [code] = await found(sheet);
    expect(code?.quietLeft).toBeCloseTo(6, 1);
    expect(code?.quietRight).toBeCloseTo(4, 1);
  });

  it('counts the edge of the sheet as the end of a quiet zone', async () => {
    const sheet = sheetOf(1_500, 1_500);
    paintBars(sheet, 40, 300, PLAIN);
    const [code] = await found(sheet);
    expect(code?.quietLeft).toBeCloseTo(5, 0);
  });

  it.each([0, 1, 2, 3])('finds bars without any quiet zone, turned by %d quarters', async (quarters) => {
    const sheet = painted({ ...PLAIN, addOn: '51995' });
    fill(sheet, 0, 0, 600 - 12, 1_800, [30, 60, 30]);
    const [code, ...more] = await found(turned(sheet, quarters));
    expect(more).toEqual([]);
    expect(code).toMatchObject({ digits: ONE, addOn: '51995', turned: quarters * 90, inverted: false });
    expect(code?.quietLeft).toBeCloseTo(1.5, 1);
  });

  it('tells light bars on a dark ground', async () => {
    const sheet = painted({ ...PLAIN, ink: [255, 255, 255] }, [20, 20, 20]);
    const [code] = await found(sheet);
    expect(code).toMatchObject({ digits: ONE, inverted: true });
    expect(px(code?.modulePt ?? 0)).toBeCloseTo(8, 1);
  });

  it('tells how little of red bars a scanner sees', async () => {
    const [code] = await found(painted({ ...PLAIN, ink: [230, 0, 0] }));
    expect(code?.digits).toBe(ONE);
    expect(code?.contrast).toBeLessThan(0.15);
  });

  it('takes no number for an ISBN that is none, and finds nothing on an empty sheet', async () => {
    expect(await found(painted({ ...PLAIN, digits: '4006381333931' }))).toEqual([]);
    expect(await found(sheetOf(1_000, 1_000))).toEqual([]);
  });

  it('finds one of a third of its size on a large sheet', async () => {
    const sheet = sheetOf(6_100, 4_500);
    paintBars(sheet, 3_001, 2_003, { digits: ONE, module: 2, height: 140 });
    const [code] = await found(sheet);
    expect(code?.digits).toBe(ONE);
    expect(px(code?.modulePt ?? 0)).toBeCloseTo(2, 1);
  });
});
