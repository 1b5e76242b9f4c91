import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { Reading } from '../../../src/contract/proof-checks/facts.ts';
import { barcodePng } from '../../../src/exchange/barcode/index.ts';
import { readBytes, refusalOf } from '../../support/proof-files/laid.ts';
import { fill, paintBars, sheetOf } from '../../support/proof-files/paint.ts';
import { makeJpeg, makePng, passesOf, pngChunk, rowsOf } from '../../support/proof-files/pictures.ts';

/** Published number (STANDARDS A7). */
const ISBN = '9780306406157';
const PPI = 300;

/** 3 × 2 inches, dark blue with a white ground for the code at 4 pixels a module (102 %). */
function cover() {
  const sheet = sheetOf(900, 600, [20, 30, 90]);
  fill(sheet, 200, 100, 520, 400, [255, 255, 255]);
  paintBars(sheet, 260, 150, { digits: ISBN, module: 4, height: 270 });
  return sheet;
}
const SIZE = { widthPx: 900, heightPx: 600 };

function factsOf({ facts }: Reading) {
  if (facts.of !== 'picture') throw new Error('No picture.');
  return facts;
}

describe('a cover that is a picture', () => {
  const made: [string, () => Buffer, string][] = [
    ['PNG in colours', () => makePng({ ...SIZE, kind: 2, ppi: PPI, rows: rowsOf(cover(), 3) }), 'colour'],
    ['PNG in grey', () => makePng({ ...SIZE, kind: 0, ppi: PPI, rows: rowsOf(cover(), 1) }), 'grey'],
    ['PNG with opacity', () => makePng({ ...SIZE, kind: 6, ppi: PPI, rows: rowsOf(cover(), 4) }), 'colour'],
    [
      'PNG in grey with opacity',
      () => makePng({ ...SIZE, kind: 4, ppi: PPI, rows: rowsOf(cover(), 2) }),
      'grey',
    ],
    [
      'interlaced PNG',
      () => makePng({ ...SIZE, kind: 2, ppi: PPI, interlaced: true, rows: passesOf(cover(), 3) }),
      'colour',
    ],
    ['JPEG', () => makeJpeg(cover(), PPI), 'colour'],
    ['JPEG that states its resolution in Exif', () => makeJpeg(cover(), PPI, 'Exif'), 'colour'],
  ];

  it.each(made)('is read: %s', async (_, make, colour) => {
    const facts = factsOf(await readBytes(make(), 'cover'));
    expect(facts).toMatchObject({ ...SIZE, colour, unread: [] });
    expect(facts.ppi).toBeCloseTo(PPI, 1);
    expect(facts.barcodes).toHaveLength(1);
    const [code] = facts.barcodes;
    expect(code?.digits).toBe(ISBN);
    expect(((code?.modulePt ?? 0) * PPI) / 72).toBeCloseTo(4, 1);
    expect(((code?.box.xPt ?? 0) * PPI) / 72).toBeCloseTo(260, -0.5);
    expect(code?.quietLeft).toBeCloseTo(15, 0);
    expect(code?.quietRight).toBeCloseTo(20, 0);
    expect(facts.edges?.left).toEqual(Array(24).fill(0));
  });

  it('is read with a palette, and as black and white', async () => {
    const sheet = cover();
    const rows = rowsOf(sheet, 1).map((value, i) =>
      i % 901 === 0 ? 0 : value < 25 ? (value === 20 ? 2 : 0) : 1,
    );
    const palette = pngChunk('PLTE', Buffer.from([0, 0, 0, 255, 255, 255, 20, 30, 90]));
    const png = makePng({ ...SIZE, kind: 3, ppi: PPI, rows, extra: [palette] });
    expect(factsOf(await readBytes(png, 'cover'))).toMatchObject({
      colour: 'colour',
      barcodes: [{ digits: ISBN }],
    });
    const own = barcodePng({
      isbn13: ISBN,
      isbnLine: null,
      addOn: { kind: 'none' },
      magnification: 100,
      dpi: 600,
    });
    const facts = factsOf(await readBytes(own, 'cover'));
    expect(facts).toMatchObject({ colour: 'black and white', barcodes: [{ digits: ISBN, addOn: '90000' }] });
  });

  it('counts 72 pixels to the inch where it states no resolution, and looks at no edges', async () => {
    const facts = factsOf(await readBytes(makeJpeg(cover(), null), 'cover'));
    expect(facts).toMatchObject({ ppi: null, edges: null, barcodes: [{ digits: ISBN }] });
    expect(facts.barcodes[0]?.modulePt).toBeCloseTo(4, 1);
  });

  it('is shown no longer than 480 pixels', async () => {
    const { pictures } = await readBytes(makeJpeg(cover(), PPI), 'cover');
    expect(pictures).toMatchObject([{ page: 1, widthPx: 480, heightPx: 320 }]);
    expect(Buffer.from(pictures[0]?.png ?? '', 'base64').toString('latin1', 1, 4)).toBe('PNG');
  });
});

describe('a picture that is damaged or made to hurt', () => {
  const good = () => makePng({ ...SIZE, kind: 2, ppi: PPI, rows: rowsOf(cover(), 3) });
  const sized = (width: number, height: number, kind: number, rows: Buffer) =>
    makePng({ widthPx: width, heightPx: height, kind, rows });
  const bad: [string, () => Buffer, RegExp][] = [
    ['a PNG cut short', () => good().subarray(0, 3_000), /cut short/],
    ['a JPEG cut short', () => makeJpeg(cover(), PPI).subarray(0, 9_000), /cut short/],
    ['a JPEG that ends in its tables', () => makeJpeg(cover(), PPI).subarray(0, 100), /cut short/],
    [
      'a PNG with a changed byte',
      () => {
        const png = good();
        png.writeUInt8(png.readUInt8(200) ^ 1, 200);
        return png;
      },
      /damaged/,
    ],
    ['a PNG of nothing', () => sized(0, 100, 2, Buffer.alloc(0)), /no size/],
    ['a PNG of ten thousand million pixels', () => sized(100_000, 100_000, 2, Buffer.alloc(10)), /million/],
    [
      'a PNG that unfolds to far more',
      () => sized(10, 10, 6, Buffer.alloc(50_000_000)),
      /more than its size/,
    ],
    ['a large PNG with opacity', () => sized(12_000, 12_000, 6, Buffer.alloc(10)), /transparent/],
    ['a PNG of an unknown kind', () => sized(10, 10, 5, Buffer.alloc(10)), /does not know/],
  ];

  it.each(bad)('%s is refused in a sentence', async (_, make, words) => {
    const started = Date.now();
    expect(await refusalOf(make(), 'cover')).toMatch(words);
    expect(Date.now() - started).toBeLessThan(10_000);
  });

  it('is not unfolded in what is not looked at', async () => {
    const bomb = Buffer.concat([Buffer.from('icc\0\0', 'latin1'), deflateSync(Buffer.alloc(80_000_000))]);
    const png = makePng({
      ...SIZE,
      kind: 6,
      ppi: PPI,
      rows: rowsOf(cover(), 4),
      extra: [pngChunk('iCCP', bomb)],
    });
    const before = process.memoryUsage().arrayBuffers;
    expect(factsOf(await readBytes(png, 'cover')).barcodes).toHaveLength(1);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(60_000_000);
  });
});
