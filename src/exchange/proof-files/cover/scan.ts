import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';
import type { Raster } from './raster.ts';

/** A symbol that was decoded, where it was seen in pixels: corners as it reads. */
export interface Sighting {
  /** Thirteen digits of an ISBN. */
  digits: string;
  /** Five digits that stand beside it, null where none were read. */
  addOn: string | null;
  turned: 0 | 90 | 180 | 270;
  inverted: boolean;
  left: number;
  top: number;
  right: number;
  bottom: number;
}

const MOST_SYMBOLS = 20;

let prepared: Promise<void> | null = null;

/** Where the reader's WebAssembly lies: beside the bundled program, or in the package. Left alone it would ask the network. */
async function prepare(): Promise<void> {
  const beside = await readFile(new URL('./zxing_reader.wasm', import.meta.url)).catch(() => null);
  const bytes =
    beside ?? (await readFile(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm')));
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(bytes).buffer } });
}

/**
 * All ISBNs (EAN-13 that begins with 978 or 979) that can be read in pixels, whichever way they are turned; the same
 * symbol once, with its add-on where any reading of it found one.
 * Light bars on a dark ground are looked for only where no others are: readers at a till do not see them.
 */
export async function scan(raster: Raster): Promise<Sighting[]> {
  prepared ??= prepare();
  await prepared;
  const found = await read(raster);
  if (found.length > 0) return found;
  const seen = await read({
    ...raster,
    rgba: raster.rgba.map((value, i) => (i % 4 === 3 ? 255 : 255 - value)),
  });
  return seen.map((one) => ({ ...one, inverted: true }));
}

async function read({ width, height, rgba }: Raster): Promise<Sighting[]> {
  const data = new Uint8ClampedArray(rgba.buffer as ArrayBuffer, rgba.byteOffset, rgba.byteLength);
  const results = await readBarcodes({ width, height, data, colorSpace: 'srgb' } as ImageData, {
    formats: ['EAN13'],
    eanAddOnSymbol: 'Read',
    tryHarder: true,
    maxNumberOfSymbols: MOST_SYMBOLS,
  });
  const found: Sighting[] = [];
  const longestFirst = results.toSorted((a, b) => b.text.length - a.text.length);
  for (const { text, position } of longestFirst) {
    const digits = /^(97[89]\d{10})\s*(\d{5})?/.exec(text);
    if (!digits?.[1]) continue;
    const corners = [position.topLeft, position.topRight, position.bottomRight, position.bottomLeft];
    const xs = corners.map(({ x }) => x);
    const ys = corners.map(({ y }) => y);
    const one = {
      digits: digits[1],
      addOn: digits[2] ?? null,
      turned: turnOf(position.topLeft, position.topRight),
      inverted: false,
      left: Math.min(...xs),
      top: Math.min(...ys),
      right: Math.max(...xs),
      bottom: Math.max(...ys),
    };
    if (!found.some((other) => other.digits === one.digits && overlap(other, one))) found.push(one);
  }
  return found;
}

/** The way a symbol reads, by two corners of its upper side as it reads. */
function turnOf(from: { x: number; y: number }, to: { x: number; y: number }): Sighting['turned'] {
  const quarters = Math.round(Math.atan2(to.y - from.y, to.x - from.x) / (Math.PI / 2));
  return ((((quarters * 90) % 360) + 360) % 360) as Sighting['turned'];
}

/** Readings of one symbol share lines or lie close together. */
function overlap(a: Sighting, b: Sighting): boolean {
  return (
    Math.max(a.left, b.left) <= Math.min(a.right, b.right) + 1 &&
    Math.max(a.top, b.top) <= Math.min(a.bottom, b.bottom) + 1
  );
}
