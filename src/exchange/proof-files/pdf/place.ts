import type { Box } from '../../../contract/proof-checks/facts.ts';

/** A rectangle in the page's own units, y upwards (ISO 32000-1, 7.9.5), ordered. */
export interface Rect {
  left: number;
  bottom: number;
  right: number;
  top: number;
}

/** How a page is shown: what of it, turned by how much (clockwise), and points to a unit. */
export interface Placing {
  shown: Rect;
  rotate: 0 | 90 | 180 | 270;
  userUnit: number;
}

/** Places beyond this are not a page's: kept within what the contract allows. */
const FAR_PT = 100_000;
const kept = (value: number) =>
  Number.isFinite(value) ? Math.min(FAR_PT, Math.max(-FAR_PT, Math.round(value * 1000) / 1000)) : 0;

/** A rectangle as a box from the top left of the page as shown, in points, to the thousandth. */
export function placed({ left, bottom, right, top }: Rect, { shown, rotate, userUnit }: Placing): Box {
  const [x, y, width, height] =
    rotate === 90
      ? [bottom - shown.bottom, left - shown.left, top - bottom, right - left]
      : rotate === 180
        ? [shown.right - right, bottom - shown.bottom, right - left, top - bottom]
        : rotate === 270
          ? [shown.top - top, shown.right - right, top - bottom, right - left]
          : [left - shown.left, shown.top - top, right - left, top - bottom];
  return {
    xPt: kept(x * userUnit),
    yPt: kept(y * userUnit),
    widthPt: kept(width * userUnit),
    heightPt: kept(height * userUnit),
  };
}

/** FS_RECTF comes as left, top, right, bottom; corners may be given in any order (ISO 32000-1, 7.9.5). */
export function rectOf(corners: readonly number[] | null): Rect | null {
  const [x1, y1, x2, y2] = corners ?? [];
  if (x1 === undefined || y1 === undefined || x2 === undefined || y2 === undefined) return null;
  if (![x1, y1, x2, y2].every(Number.isFinite)) return null;
  return {
    left: Math.min(x1, x2),
    bottom: Math.min(y1, y2),
    right: Math.max(x1, x2),
    top: Math.max(y1, y2),
  };
}

export function union(a: Rect | null, b: Rect): Rect {
  if (a === null) return b;
  return {
    left: Math.min(a.left, b.left),
    bottom: Math.min(a.bottom, b.bottom),
    right: Math.max(a.right, b.right),
    top: Math.max(a.top, b.top),
  };
}
