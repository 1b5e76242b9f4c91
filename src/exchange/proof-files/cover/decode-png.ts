import { inflateSync } from 'node:zlib';
import { convertIndexedToRgb, decode } from 'fast-png';
import { unreadable } from '../watch.ts';
import { type Bytes, bytesAt, joined } from './bytes.ts';
import type { PngHeader } from './png-header.ts';
import type { Raster } from './raster.ts';

/** Decoded in one go, so its pixels may take so many bytes: a cover at 600 pixels to the inch with transparency. */
const MOST_BYTES = 180 * 1024 * 1024;

const CHANNELS = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 } as const;

/**
 * Pixels of a PNG that is interlaced or partly transparent, on white paper.
 * @throws Refusal BAD_INPUT where it is too large, damaged, or holds more than its size says
 */
export function decodePng(header: PngHeader): Raster {
  const { widthPx: width, heightPx: height, depth, kind } = header;
  const rowBytes = Math.ceil((width * CHANNELS[kind] * depth) / 8);
  if (depth < 8 && (kind !== 3 || header.interlaced))
    throw unreadable('The PNG is of an uncommon kind: export it with 8 bits a colour and not interlaced.');
  if (rowBytes * height > MOST_BYTES)
    throw unreadable(
      'The PNG is interlaced or partly transparent, and too large to be read so: export it flattened and not interlaced.',
    );
  // Seven passes of an interlaced picture have a byte more a row, and rows of their own.
  tryInflate(whole(joined(header.pixels)), (rowBytes + 8) * (height + 8) * 2);
  const plain = whole(joined(header.essential));
  try {
    return onWhite(plain, width, height);
  } catch {
    throw unreadable('The PNG is damaged: export it again.');
  }
}

function whole(bytes: Bytes): Buffer {
  const all = bytesAt(bytes, 0, bytes.size);
  if (all === null) throw unreadable('The PNG is cut short: export it again.');
  return all;
}

/** A few kilobytes can unfold to gigabytes; no more than the picture's size is let through. */
function tryInflate(data: Buffer, mostBytes: number): void {
  try {
    inflateSync(data, { maxOutputLength: mostBytes });
  } catch {
    throw unreadable('The PNG is damaged, or holds more than its size says: export it again.');
  }
}

function onWhite(png: Buffer, width: number, height: number): Raster {
  const picture = decode(png);
  const indexed = picture.palette !== undefined;
  const data = indexed ? convertIndexedToRgb(picture) : picture.data;
  const channels = indexed ? data.length / (width * height) : picture.channels;
  const full = picture.depth === 16 && !indexed ? 65_535 : 255;
  const key = (!indexed && picture.transparency) || null;
  const colours = channels < 3 ? 1 : 3;
  const rgba = new Uint8Array(width * height * 4).fill(255);
  for (let i = 0; i < width * height; i += 1) {
    const at = i * channels;
    if (key?.length && isKey(data, at, key, colours)) continue;
    const opaque = channels > colours ? (data[at + colours] ?? 0) / full : 1;
    for (let c = 0; c < 3; c += 1) {
      const value = data[at + (colours === 1 ? 0 : c)] ?? 0;
      rgba[i * 4 + c] = Math.round(255 - opaque * (255 - (value * 255) / full));
    }
  }
  return { width, height, rgba };
}

/** Whether a pixel has the one colour that is to be seen through. */
function isKey(data: ArrayLike<number>, at: number, key: ArrayLike<number>, colours: number): boolean {
  for (let c = 0; c < colours; c += 1) if (data[at + c] !== key[c]) return false;
  return true;
}
