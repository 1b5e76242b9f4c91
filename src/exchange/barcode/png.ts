import { crc32, deflateSync } from 'node:zlib';
import { type Bitmap, fillBox, fillGlyph, whiteBitmap } from './bitmap.ts';
import { type BarcodePngOptions, parsePngOptions } from './options.ts';
import { fitToPixels } from './pixels.ts';

const MM_PER_INCH = 25.4;

/**
 * The bar code as a PNG of one bit a pixel, pure black on pure white, with its resolution (pHYs). Modules are
 * whole pixels; `barcodePixels` tells beforehand what size comes of it.
 * @throws Refusal BAD_INPUT naming the field
 */
export function barcodePng(options: BarcodePngOptions): Uint8Array {
  const { content, dpi } = parsePngOptions(options);
  const { pixels, geometry } = fitToPixels(content, dpi);
  const perMm = dpi / MM_PER_INCH;
  const bitmap = whiteBitmap(pixels.widthPixels, pixels.heightPixels);
  // An odd reduction moves every left edge alike, so distances between bars stay whole.
  const inset = Math.floor(pixels.reductionPixels / 2);
  for (const bar of geometry.bars) {
    const left = bar.startModule * pixels.pixelsPerModule + inset;
    const width = bar.modules * pixels.pixelsPerModule - pixels.reductionPixels;
    const top = Math.round(bar.yMm * perMm);
    fillBox(bitmap, left, top, left + width, Math.round((bar.yMm + bar.heightMm) * perMm));
  }
  for (const glyph of geometry.glyphs) fillGlyph(bitmap, glyph, perMm);
  return encode(bitmap, dpi);
}

/** PNG, ISO/IEC 15948: grey of one bit, each row without a filter, resolution in pixels a metre. */
function encode(bitmap: Bitmap, dpi: number): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(bitmap.width, 0);
  header.writeUInt32BE(bitmap.height, 4);
  header.writeUInt8(1, 8);
  const perMetre = Math.round((dpi * 1000) / MM_PER_INCH);
  const resolution = Buffer.alloc(9);
  resolution.writeUInt32BE(perMetre, 0);
  resolution.writeUInt32BE(perMetre, 4);
  resolution.writeUInt8(1, 8);
  const rows = Buffer.alloc(bitmap.height * (bitmap.rowBytes + 1));
  for (let y = 0; y < bitmap.height; y++)
    rows.set(
      bitmap.bits.subarray(y * bitmap.rowBytes, (y + 1) * bitmap.rowBytes),
      y * (bitmap.rowBytes + 1) + 1,
    );
  return new Uint8Array(
    Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      chunk('IHDR', header),
      chunk('pHYs', resolution),
      chunk('IDAT', deflateSync(rows)),
      chunk('IEND', Buffer.alloc(0)),
    ]),
  );
}

function chunk(name: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  framed.set(body, 4);
  framed.writeUInt32BE(crc32(body), body.length + 4);
  return framed;
}
