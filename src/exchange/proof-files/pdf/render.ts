import { unreadable } from '../watch.ts';
import type { Engine } from './engine.ts';

/** Pixels row by row from the top left; four bytes each: red, green, blue, 255. */
export interface Picture {
  width: number;
  height: number;
  rgba: Uint8Array;
}

/** What is drawn: an open page and its size as shown. */
interface Drawn {
  engine: Engine;
  handle: number;
  widthPt: number;
  heightPt: number;
}

/** A part of a page in pixels of the resolution it is drawn at. */
interface Part {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Enough for an opened jacket at 300 pixels to the inch. */
const MOST_PIXELS = 40_000_000;
/** A page that takes longer is not drawn; one with large pictures takes less than a second. */
const MOST_MS = 10_000;

/** FPDF_ANNOT would draw notes, which are not printed; FPDF_REVERSE_BYTE_ORDER gives RGBA; FPDF_PRINTING looks as on paper. */
const REVERSE_BYTE_ORDER = 0x10;
const PRINTING = 0x800;
const BITMAP_BGRX = 3;
const WHITE = 0xffffffff;
/** The fourth byte of a pixel, as the processors that there are read four bytes. */
const OPAQUE = 0xff000000;
/** FPDF_RENDER_DONE */
const DONE = 2;

/** The whole page on white, smaller than asked where it would have too many pixels; null where it takes too long. */
export function renderPage(page: Drawn, dpi: number, mostPixels = MOST_PIXELS): Picture | null {
  const most = Math.sqrt(mostPixels / Math.max(1, page.widthPt * page.heightPt));
  const size = sizeAt(page, Math.min(dpi / 72, most));
  return draw(page, size, { x: 0, y: 0, ...size });
}

/**
 * A part of the page, in pixels of the whole page drawn at a size.
 * @throws Refusal BAD_INPUT where it takes too long
 */
export function renderPart(
  page: Pick<Drawn, 'engine' | 'handle'>,
  whole: { width: number; height: number },
  part: Part,
): Picture {
  const picture = draw(page, whole, part);
  if (picture === null)
    throw unreadable('The page takes too long to draw: have its transparency flattened and export it again.');
  return picture;
}

const sizeAt = ({ widthPt, heightPt }: Drawn, scale: number) => ({
  width: Math.max(1, Math.round(widthPt * scale)),
  height: Math.max(1, Math.round(heightPt * scale)),
});

function draw(
  { engine, handle }: Pick<Drawn, 'engine' | 'handle'>,
  whole: { width: number; height: number },
  { x, y, width, height }: Part,
): Picture | null {
  const { lib } = engine;
  const bitmap = lib.FPDFBitmap_CreateEx(width, height, BITMAP_BGRX, 0, 0);
  if (bitmap === 0) throw new WebAssembly.RuntimeError('no room for a picture');
  try {
    lib.FPDFBitmap_FillRect(bitmap, 0, 0, width, height, WHITE);
    const flags = REVERSE_BYTE_ORDER | PRINTING;
    const state = engine.pausing(MOST_MS, (pause) =>
      lib.FPDF_RenderPageBitmap_Start(bitmap, handle, -x, -y, whole.width, whole.height, 0, flags, pause),
    );
    lib.FPDF_RenderPage_Close(handle);
    return state === DONE ? { width, height, rgba: pixels(engine, bitmap, width, height) } : null;
  } finally {
    lib.FPDFBitmap_Destroy(bitmap);
  }
}

function pixels({ lib, bytes }: Engine, bitmap: number, width: number, height: number): Uint8Array {
  const start = lib.FPDFBitmap_GetBuffer(bitmap);
  const stride = lib.FPDFBitmap_GetStride(bitmap);
  const memory = bytes();
  const rgba = new Uint8Array(width * height * 4);
  for (let row = 0; row < height; row += 1)
    rgba.set(memory.subarray(start + row * stride, start + row * stride + width * 4), row * width * 4);
  const opaque = new Uint32Array(rgba.buffer);
  for (let i = 0; i < opaque.length; i += 1) opaque[i] = (opaque[i] ?? 0) | OPAQUE;
  return rgba;
}
