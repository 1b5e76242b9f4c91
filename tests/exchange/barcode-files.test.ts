import { inflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/contract/refusal.ts';
import {
  type BarcodePngOptions,
  barcodeGeometry,
  barcodePdf,
  barcodePixels,
  barcodePng,
  barcodeSvg,
} from '../../src/exchange/barcode/index.ts';
import { REDUCTION_TOLERANCE_UM, SIZE_TOLERANCE_PERCENT } from '../../src/exchange/barcode/pixels.ts';

const options = {
  isbn13: '9783161484100',
  isbnLine: '978-3-16-148410-0',
  addOn: { kind: 'price', amountMinor: 1995, currency: 'USD' },
  magnification: 100,
} as const;

/** Reads a PNG of one bit a pixel without any filter: enough for what is written here, and nothing else. */
function readPng(bytes: Uint8Array) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks = new Map<string, Uint8Array>();
  for (let at = 8; at < bytes.length; at += view.getUint32(at) + 12)
    chunks.set(
      String.fromCharCode(...bytes.subarray(at + 4, at + 8)),
      bytes.slice(at + 8, at + 8 + view.getUint32(at)),
    );
  const numbers = (name: string) => new DataView((chunks.get(name) ?? new Uint8Array(16)).buffer);
  const width = numbers('IHDR').getUint32(0);
  const height = numbers('IHDR').getUint32(4);
  const rows = inflateSync(chunks.get('IDAT') ?? new Uint8Array());
  const rowBytes = Math.ceil(width / 8) + 1;
  const black = (x: number, y: number) =>
    ((rows[y * rowBytes + 1 + (x >> 3)] ?? 0) & (0x80 >> (x & 7))) === 0;
  return {
    order: [...chunks.keys()],
    width,
    height,
    bitDepth: chunks.get('IHDR')?.[8],
    colourType: chunks.get('IHDR')?.[9],
    perMetre: [numbers('pHYs').getUint32(0), numbers('pHYs').getUint32(4), chunks.get('pHYs')?.[8]],
    row: (y: number) => Array.from({ length: width }, (_, x) => (black(x, y) ? '1' : '0')).join(''),
  };
}

describe('SVG', () => {
  const svg = barcodeSvg(options);
  const geometry = barcodeGeometry(options);

  it('states its true size in millimetres and draws in millimetres', () => {
    const [, width, height, box] =
      svg.match(/^<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/) ?? [];
    expect(Number(width)).toBeCloseTo(167 * 0.33, 4);
    expect(Number(height)).toBeCloseTo(31, 4);
    expect(box).toBe(`0 0 ${width} ${height}`);
  });

  it('is black on white and stands alone: outlines only, no text, font, image or link', () => {
    expect(new Set(svg.match(/fill="[^"]*"/g))).toEqual(new Set(['fill="#fff"', 'fill="#000"']));
    expect(new Set(svg.match(/<\w+/g))).toEqual(new Set(['<svg', '<title', '<rect', '<path']));
    expect(svg).not.toMatch(/font|href|style/);
  });

  it('draws every bar where the geometry has it', () => {
    const bars = [...svg.matchAll(/M([\d.]+) ([\d.]+)h([\d.]+)v([\d.]+)h-[\d.]+z/g)].map((match) =>
      match.slice(1).map(Number),
    );
    expect(bars).toHaveLength(geometry.bars.length);
    bars.forEach(([x, y, width, height], i) => {
      const bar = geometry.bars[i];
      expect(x).toBeCloseTo(bar?.xMm ?? -1, 3);
      expect(y).toBeCloseTo(bar?.yMm ?? -1, 3);
      expect(width).toBeCloseTo(bar?.widthMm ?? -1, 3);
      expect(height).toBeCloseTo(bar?.heightMm ?? -1, 3);
    });
  });
});

describe('PDF', () => {
  const bytes = barcodePdf(options);
  const file = new TextDecoder('latin1').decode(bytes);

  it('has a MediaBox of true size in points', () => {
    const box = file.match(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/);
    expect(Number(box?.[1])).toBeCloseTo((167 * 0.33 * 72) / 25.4, 3);
    expect(Number(box?.[2])).toBeCloseTo((31 * 72) / 25.4, 3);
  });

  it('paints in DeviceGray alone, black and white, with no font and no image', () => {
    const stream = file.match(/stream\n([\s\S]*)\nendstream/)?.[1] ?? '';
    const operators = new Set(stream.match(/\b[a-zA-Z]+\b/g));
    expect(operators).toEqual(new Set(['g', 're', 'f', 'm', 'l', 'c']));
    expect(stream.match(/\S+ g\n/g)).toEqual(['1 g\n', '0 g\n']);
    expect(file).not.toMatch(/\/Font|\/XObject|\/ColorSpace/);
  });

  it('points to each object from its cross-reference table', () => {
    const start = Number(file.match(/startxref\n(\d+)\n%%EOF\n$/)?.[1]);
    expect(file.slice(start, start + 4)).toBe('xref');
    const offsets = [...file.slice(start).matchAll(/^(\d{10}) 00000 n $/gm)].map((m) => Number(m[1]));
    expect(offsets).toHaveLength(5);
    offsets.forEach((offset, i) => {
      expect(file.slice(offset)).toMatch(new RegExp(`^${i + 1} 0 obj\n`));
    });
    const length = Number(file.match(/\/Length (\d+)/)?.[1]);
    const from = file.indexOf('stream\n') + 'stream\n'.length;
    expect(file.slice(from + length)).toMatch(/^\nendstream/);
  });

  it('gives the same bytes for the same options', () => {
    expect(barcodePdf(options)).toEqual(bytes);
  });
});

describe('PNG', () => {
  it('carries its resolution and holds nothing but black and white', () => {
    const png = readPng(barcodePng({ ...options, dpi: 600 }));
    expect(png.order).toEqual(['IHDR', 'pHYs', 'IDAT', 'IEND']);
    expect(png.bitDepth).toBe(1);
    expect(png.colourType).toBe(0);
    expect(png.perMetre).toEqual([23622, 23622, 1]);
  });

  it('makes every module the same whole number of pixels, quiet zones included', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(300, 600, 1200),
        fc.double({ min: 80, max: 200, noNaN: true }),
        fc.boolean(),
        (dpi, magnification, withAddOn) => {
          const asked = { ...options, magnification, dpi, addOn: withAddOn ? options.addOn : null };
          if (!fits(asked)) return;
          const pixels = barcodePixels(asked);
          const geometry = barcodeGeometry(asked);
          const png = readPng(barcodePng(asked));
          const wide = (modules: string) => modules.replace(/./g, (m) => m.repeat(pixels.pixelsPerModule));
          const addOn = geometry.addOn ? `${'0'.repeat(9)}${geometry.addOn.modules}00000` : '0000000';
          expect(png.row(Math.round(png.height / 2))).toBe(
            wide(`${'0'.repeat(11)}${geometry.mainModules}${addOn}`),
          );
          expect([png.width, png.height]).toEqual([pixels.widthPixels, pixels.heightPixels]);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('stays within the stated tolerance and the sizes GS1 allows, or refuses', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 150, max: 2540 }),
        fc.double({ min: 80, max: 200, noNaN: true }),
        (dpi, magnification) => {
          const asked = { ...options, magnification, dpi };
          if (!fits(asked)) return;
          const pixels = barcodePixels(asked);
          expect(Math.abs(pixels.magnificationPercent / magnification - 1) * 100).toBeLessThanOrEqual(
            SIZE_TOLERANCE_PERCENT + 1e-9,
          );
          expect(pixels.magnificationPercent).toBeGreaterThanOrEqual(80 - 1e-9);
          expect(pixels.magnificationPercent).toBeLessThanOrEqual(200 + 1e-9);
          expect(pixels.magnificationPercent).toBeCloseTo(
            ((pixels.pixelsPerModule * 25.4) / dpi / 0.33) * 100,
            9,
          );
        },
      ),
    );
  });

  it('draws any magnification at 2400 dpi', () => {
    for (let magnification = 80; magnification <= 200; magnification++)
      expect(fits({ ...options, magnification, dpi: 2400 }), `${magnification} %`).toBe(true);
  });

  it('refuses a size that whole pixels would change too much, and what it proposes works', () => {
    const asked = { ...options, magnification: 80, dpi: 300 };
    const message = refusalOf(asked)?.message ?? '';
    expect(message).toContain('3.12 pixels');
    expect(refusalOf(asked)?.field).toBe('dpi');
    const [, dpi, magnification] =
      message.match(/resolution of (\d+) dpi, a magnification of ([\d.]+) /) ?? [];
    expect(fits({ ...asked, dpi: Number(dpi) })).toBe(true);
    expect(fits({ ...asked, magnification: Number(magnification) })).toBe(true);
  });

  it('narrows bars by whole pixels near the reduction asked for, and refuses where they are too coarse', () => {
    const asked = { ...options, barWidthReductionUm: 40, dpi: 1200 };
    const pixels = barcodePixels(asked);
    expect(pixels.reductionPixels).toBe(2);
    expect(Math.abs(pixels.reductionUm - 40)).toBeLessThanOrEqual(REDUCTION_TOLERANCE_UM);
    const png = readPng(barcodePng(asked));
    const dark = png.row(Math.round(png.height / 2)).match(/1+/g) ?? [];
    const expected = barcodeGeometry(options).bars.map((bar) => bar.modules * pixels.pixelsPerModule - 2);
    expect(dark.map((run) => run.length)).toEqual(expected);
    expect(refusalOf({ ...options, barWidthReductionUm: 20, dpi: 300 })?.field).toBe('barWidthReductionUm');
  });

  it('refuses a resolution outside 150 to 2540 dpi', () => {
    for (const dpi of [149, 2541, 300.5])
      expect(refusalOf({ ...options, dpi })).toMatchObject({ code: 'BAD_INPUT', field: 'dpi' });
  });
});

function refusalOf(asked: BarcodePngOptions) {
  try {
    barcodePixels(asked);
    return null;
  } catch (error) {
    if (error instanceof Refusal) return error.body();
    throw error;
  }
}

function fits(asked: BarcodePngOptions): boolean {
  return refusalOf(asked) === null;
}
