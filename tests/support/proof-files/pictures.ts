import { crc32, deflateSync } from 'node:zlib';
import jpeg from 'jpeg-js';
import type { Raster } from '../../../src/exchange/proof-files/cover/raster.ts';

export function pngChunk(name: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  framed.set(body, 4);
  framed.writeUInt32BE(crc32(body), body.length + 4);
  return framed;
}

export interface PngMade {
  widthPx: number;
  heightPx: number;
  /** 0 grey, 2 colours, 3 palette, 4 and 6 with transparency. */
  kind: number;
  depth?: number;
  interlaced?: boolean;
  ppi?: number | null;
  /** Rows with a filter byte each. */
  rows: Uint8Array;
  extra?: readonly Buffer[];
}

/** A PNG put together by hand (ISO/IEC 15948). */
export function makePng({
  widthPx,
  heightPx,
  kind,
  depth = 8,
  interlaced,
  ppi,
  rows,
  extra = [],
}: PngMade): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(widthPx, 0);
  head.writeUInt32BE(heightPx, 4);
  head.set([depth, kind, 0, 0, interlaced ? 1 : 0], 8);
  const size = Buffer.alloc(9);
  const perMetre = Math.round((ppi ?? 0) / 0.0254);
  size.writeUInt32BE(perMetre, 0);
  size.writeUInt32BE(perMetre, 4);
  size.writeUInt8(1, 8);
  const pixels = deflateSync(rows);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    pngChunk('IHDR', head),
    ...(ppi ? [pngChunk('pHYs', size)] : []),
    ...extra,
    pngChunk('IDAT', pixels.subarray(0, 100)),
    pngChunk('IDAT', pixels.subarray(100)),
    pngChunk('IEND', Buffer.alloc(0)),
  ]);
}

/** Rows of a raster, `channels` bytes a pixel: 1 grey, 2 grey and opacity, 3 colours, 4 colours and opacity. */
export function rowsOf(
  raster: Raster,
  channels: 1 | 2 | 3 | 4,
  step = { x: 1, y: 1, fromX: 0, fromY: 0 },
): Buffer {
  const rows: number[] = [];
  for (let y = step.fromY; y < raster.height; y += step.y) {
    rows.push(0);
    for (let x = step.fromX; x < raster.width; x += step.x) {
      const pixel = raster.rgba.subarray((y * raster.width + x) * 4, (y * raster.width + x) * 4 + 4);
      rows.push(...(channels < 3 ? [pixel[0] ?? 0, 255].slice(0, channels) : pixel.subarray(0, channels)));
    }
  }
  return Buffer.from(rows);
}

/** The seven passes of an interlaced PNG. */
export function passesOf(raster: Raster, channels: 3 | 4): Buffer {
  const passes = [
    [0, 0, 8, 8],
    [4, 0, 8, 8],
    [0, 4, 4, 8],
    [2, 0, 4, 4],
    [0, 2, 2, 4],
    [1, 0, 2, 2],
    [0, 1, 1, 2],
  ];
  return Buffer.concat(
    passes.map(([fromX = 0, fromY = 0, x = 1, y = 1]) => rowsOf(raster, channels, { x, y, fromX, fromY })),
  );
}

/** A JPEG of high quality; without a stated resolution, or with JFIF's or Exif's. */
export function makeJpeg(raster: Raster, ppi: number | null, by: 'JFIF' | 'Exif' = 'JFIF'): Buffer {
  const plain = Buffer.from(jpeg.encode({ ...raster, data: raster.rgba }, 92).data);
  // The encoder writes JFIF right after the start; its unit and densities stand at 13 to 17.
  plain.writeUInt8(0, 13);
  if (ppi === null) return plain;
  if (by === 'JFIF') {
    plain.writeUInt8(1, 13);
    plain.writeUInt16BE(ppi, 14);
    plain.writeUInt16BE(ppi, 16);
    return plain;
  }
  const tiff = Buffer.alloc(66);
  tiff.write('MM\0*', 0, 'latin1');
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(3, 8);
  const entry = (i: number, tag: number, type: number, value: number) => {
    tiff.writeUInt16BE(tag, 10 + i * 12);
    tiff.writeUInt16BE(type, 12 + i * 12);
    tiff.writeUInt32BE(1, 14 + i * 12);
    if (type === 3) tiff.writeUInt16BE(value, 18 + i * 12);
    else tiff.writeUInt32BE(value, 18 + i * 12);
  };
  entry(0, 0x011a, 5, 50);
  entry(1, 0x011b, 5, 58);
  entry(2, 0x0128, 3, 2);
  tiff.writeUInt32BE(ppi * 10, 50);
  tiff.writeUInt32BE(10, 54);
  tiff.writeUInt32BE(ppi * 10, 58);
  tiff.writeUInt32BE(10, 62);
  const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
  const segment = Buffer.alloc(4);
  segment.writeUInt16BE(0xffe1, 0);
  segment.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([plain.subarray(0, 20), segment, body, plain.subarray(20)]);
}
