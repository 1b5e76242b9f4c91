import type { Box } from '../../../contract/proof-checks/facts.ts';
import type { Sighting } from './scan.ts';
import { type Part, type SheetView, sizeAt } from './view.ts';

export type Turned = Sighting['turned'];

/** A rectangle in pixels. */
export interface Spot {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** A part of a sheet and the resolution it is drawn at. */
export interface Around {
  part: Part;
  dpi: number;
}

/** Bars are measured to a fiftieth of a millimetre. */
const MEASURE_DPI = 1_200;
const MEASURE_PIXELS = 12_000_000;
/** Looked at around a symbol, in modules: beyond quiet zones and add-on, and beyond its full height. */
const BEFORE = 40;
const AFTER = 110;
const ACROSS = 90;

export const opposite = (turned: Turned): Turned => ((turned + 180) % 360) as Turned;
export const thousandth = (value: number): number => Math.round(value * 1_000) / 1_000;

/** What of a sheet is drawn to measure a symbol; `module` in inches. */
export function partAround(
  view: SheetView,
  seen: Spot & { dpi: number; turned: Turned },
  module: number,
): Around {
  const inches = (px: number) => px / seen.dpi;
  // It may turn out to read the other way round, so both ends get the same room.
  const along = Math.max(BEFORE, AFTER) * module;
  const across = ACROSS * module;
  const [padX, padY] = seen.turned % 180 === 0 ? [along, across] : [across, along];
  const left = Math.max(0, inches(seen.left) - padX);
  const top = Math.max(0, inches(seen.top) - padY);
  const right = Math.min(view.widthPt / 72, inches(seen.right) + padX);
  const bottom = Math.min(view.heightPt / 72, inches(seen.bottom) + padY);
  const fits = Math.sqrt(MEASURE_PIXELS / Math.max(1e-6, (right - left) * (bottom - top)));
  const dpi = Math.min(view.finestDpi ?? MEASURE_DPI, fits);
  const size = sizeAt(view, dpi);
  const x = Math.min(size.width - 1, Math.floor(left * dpi));
  const y = Math.min(size.height - 1, Math.floor(top * dpi));
  const width = Math.max(1, Math.min(size.width, Math.ceil(right * dpi)) - x);
  const height = Math.max(1, Math.min(size.height, Math.ceil(bottom * dpi)) - y);
  return { part: { x, y, width, height }, dpi };
}

/** A rectangle of pixels in those pixels turned upright. */
export function uprightSpot(spot: Spot, size: { width: number; height: number }, turned: Turned): Spot {
  const { left, top, right, bottom } = spot;
  const { width, height } = size;
  if (turned === 90) return { left: top, right: bottom, top: width - right, bottom: width - left };
  if (turned === 180)
    return { left: width - right, right: width - left, top: height - bottom, bottom: height - top };
  if (turned === 270) return { left: height - bottom, right: height - top, top: left, bottom: right };
  return spot;
}

/** The way back: from upright pixels to the sheet, in points. */
export function onSheet(
  spot: Spot,
  size: { width: number; height: number },
  turned: Turned,
  { part, dpi }: Around,
): Box {
  const sideways = turned % 180 !== 0;
  const upright = sideways ? { width: size.height, height: size.width } : size;
  const back = uprightSpot(spot, upright, ((360 - turned) % 360) as Turned);
  const pt = (px: number) => thousandth((px * 72) / dpi);
  return {
    xPt: pt(back.left + part.x),
    yPt: pt(back.top + part.y),
    widthPt: pt(back.right - back.left),
    heightPt: pt(back.bottom - back.top),
  };
}
