import type { PdfPage } from '../pdf/page.ts';
import { renderPart } from '../pdf/render.ts';
import { cropped, type Raster } from './raster.ts';
import { type Part, type SheetView, sizeAt } from './view.ts';

/** An open page as a sheet that is drawn anew at any resolution. */
export function viewOfPage(page: PdfPage): SheetView {
  const view: SheetView = {
    widthPt: page.widthPt,
    heightPt: page.heightPt,
    finestDpi: null,
    draw: (dpi, part) => renderPart(page, sizeAt(view, dpi), part),
  };
  return view;
}

/** A page that holds nothing but a picture, one point a pixel, as a sheet at the picture's own resolution. */
export function viewOfPicture(page: PdfPage, ppi: number): SheetView {
  const view: SheetView = {
    widthPt: (page.widthPt * 72) / ppi,
    heightPt: (page.heightPt * 72) / ppi,
    finestDpi: ppi,
    draw: (dpi, part) => renderPart(page, sizeAt(view, dpi), part),
  };
  return view;
}

/** Pixels at hand as a sheet of so many to the inch. */
export function viewOfRaster(raster: Raster, ppi: number): SheetView {
  const view: SheetView = {
    widthPt: (raster.width * 72) / ppi,
    heightPt: (raster.height * 72) / ppi,
    finestDpi: ppi,
    draw: (dpi, part) => drawn(raster, sizeAt(view, dpi), part),
  };
  return view;
}

/**
 * A part of a raster as it would be at another size: each pixel the mean of those that it takes in, or one of them where
 * that is at most four.
 */
function drawn(raster: Raster, whole: { width: number; height: number }, part: Part): Raster {
  const { x, y, width, height } = part;
  if (whole.width === raster.width && whole.height === raster.height)
    return cropped(raster, x, y, width, height);
  const columns = spans(x, width, raster.width / whole.width, raster.width);
  const rows = spans(y, height, raster.height / whole.height, raster.height);
  const rgba = new Uint8Array(width * height * 4).fill(255);
  const pixels = new Uint32Array(raster.rgba.buffer, raster.rgba.byteOffset, raster.width * raster.height);
  const out = new Uint32Array(rgba.buffer);
  const single = raster.width < whole.width * 2;
  for (const [row, [top, bottom]] of rows.entries())
    for (const [column, [left, right]] of columns.entries()) {
      const at = row * width + column;
      if (single) out[at] = pixels[top * raster.width + left] ?? 0;
      else mean(raster, { left, right, top, bottom }, rgba, at * 4);
    }
  return { width, height, rgba };
}

/** Which of a raster's columns or rows each one of a part takes in. */
function spans(from: number, count: number, by: number, most: number): (readonly [number, number])[] {
  return Array.from({ length: count }, (_, i) => {
    const start = Math.min(most - 1, Math.floor((from + i) * by));
    return [start, Math.max(start + 1, Math.min(most, Math.floor((from + i + 1) * by)))] as const;
  });
}

function mean(
  raster: Raster,
  of: { left: number; right: number; top: number; bottom: number },
  into: Uint8Array,
  at: number,
): void {
  const count = (of.right - of.left) * (of.bottom - of.top);
  for (let channel = 0; channel < 3; channel += 1) {
    let sum = 0;
    for (let y = of.top; y < of.bottom; y += 1)
      for (let x = of.left; x < of.right; x += 1)
        sum += raster.rgba[(y * raster.width + x) * 4 + channel] ?? 0;
    into[at + channel] = Math.round(sum / count);
  }
}
