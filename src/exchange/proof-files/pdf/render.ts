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

/** Enough for an opened jacket at 300 pixels to the inch. */
const MOST_PIXELS = 40_000_000;

/** FPDF_ANNOT would draw notes, which are not printed; FPDF_REVERSE_BYTE_ORDER gives RGBA; FPDF_PRINTING looks as on paper. */
const REVERSE_BYTE_ORDER = 0x10;
const PRINTING = 0x800;
const BITMAP_BGRX = 3;
const WHITE = 0xffffffff;

export function renderPage(page: Drawn, dpi: number, mostPixels = MOST_PIXELS): Picture {
  const wanted = dpi / 72;
  const scale = Math.min(wanted, Math.sqrt(mostPixels / Math.max(1, page.widthPt * page.heightPt)));
  const width = Math.max(1, Math.round(page.widthPt * scale));
  const height = Math.max(1, Math.round(page.heightPt * scale));
  return renderPart(page, { width, height }, { x: 0, y: 0, width, height });
}

/** A part of the page, in pixels of the whole page drawn at a size. */
export function renderPart(
  { engine, handle }: Pick<Drawn, 'engine' | 'handle'>,
  whole: { width: number; height: number },
  { x, y, width, height }: { x: number; y: number; width: number; height: number },
): Picture {
  const { lib } = engine;
  const bitmap = lib.FPDFBitmap_CreateEx(width, height, BITMAP_BGRX, 0, 0);
  if (bitmap === 0) throw new WebAssembly.RuntimeError('no room for a picture');
  try {
    lib.FPDFBitmap_FillRect(bitmap, 0, 0, width, height, WHITE);
    const flags = REVERSE_BYTE_ORDER | PRINTING;
    lib.FPDF_RenderPageBitmap(bitmap, handle, -x, -y, whole.width, whole.height, 0, flags);
    return { width, height, rgba: pixels(engine.bytes(), bitmap, width, height, lib) };
  } finally {
    lib.FPDFBitmap_Destroy(bitmap);
  }
}

function pixels(
  memory: Uint8Array,
  bitmap: number,
  width: number,
  height: number,
  lib: Engine['lib'],
): Uint8Array {
  const start = lib.FPDFBitmap_GetBuffer(bitmap);
  const stride = lib.FPDFBitmap_GetStride(bitmap);
  const rgba = new Uint8Array(width * height * 4);
  for (let row = 0; row < height; row += 1)
    rgba.set(memory.subarray(start + row * stride, start + row * stride + width * 4), row * width * 4);
  for (let i = 3; i < rgba.length; i += 4) rgba[i] = 255;
  return rgba;
}
