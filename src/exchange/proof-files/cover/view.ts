import type { Raster } from './raster.ts';

/** A part of a sheet in pixels of the resolution it is drawn at, from its top left. */
export interface Part {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A sheet that can be drawn at any resolution, whole or in part. */
export interface SheetView {
  /** Size as shown, in points. */
  widthPt: number;
  heightPt: number;
  /** The resolution beyond which nothing more is to be seen: that of a picture; null for a page that is drawn anew. */
  finestDpi: number | null;
  /** Pixels of a part, on white. At `dpi` the sheet is `widthPt × dpi ÷ 72` pixels wide, rounded. */
  draw(dpi: number, part: Part): Raster;
}

/** Width and height of the whole sheet in pixels. */
export function sizeAt(view: SheetView, dpi: number): { width: number; height: number } {
  return {
    width: Math.max(1, Math.round((view.widthPt * dpi) / 72)),
    height: Math.max(1, Math.round((view.heightPt * dpi) / 72)),
  };
}

/** The resolution at which the whole has at most so many pixels, and no more than is wanted or is there. */
export function boundedDpi(view: SheetView, wanted: number, mostPixels: number): number {
  const fits = 72 * Math.sqrt(mostPixels / (view.widthPt * view.heightPt));
  return Math.min(view.finestDpi ?? wanted, Math.max(wanted, 1), fits);
}
