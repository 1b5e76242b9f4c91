import type { Box, SheetEdges } from '../../../contract/proof-checks/facts.ts';
import type { Grey } from './raster.ts';

/** Each side is looked at in so many parts, so that a white back cover does not hide a picture that ends at the cut. */
const PARTS = 24;
/** So far inwards is looked, in points. */
const DEEP_PT = 72;
/** Anything darker is print. */
const PAPER = 244;
/** So many pixels of a line make print; fewer may be a speck. */
const LEAST_PIXELS = 3;

/** How far from each edge of a box print begins; `scale` is pixels to the point. */
export function sheetEdgesOf(grey: Grey, scale: number, box: Box): SheetEdges {
  const x0 = Math.max(0, Math.round(box.xPt * scale));
  const y0 = Math.max(0, Math.round(box.yPt * scale));
  const x1 = Math.min(grey.width, Math.round((box.xPt + box.widthPt) * scale));
  const y1 = Math.min(grey.height, Math.round((box.yPt + box.heightPt) * scale));
  const dark = (x: number, y: number) => (grey.values[y * grey.width + x] ?? 255) < PAPER;
  const side = (
    length: number,
    depth: number,
    at: (along: number, inward: number) => boolean,
  ): (number | null)[] =>
    Array.from({ length: PARTS }, (_, part) => {
      const from = Math.floor((length * part) / PARTS);
      const to = Math.floor((length * (part + 1)) / PARTS);
      const inward = firstPrinted(Math.min(depth, Math.round(DEEP_PT * scale)), from, to, at);
      return inward === null ? null : Math.round((inward / scale) * 100) / 100;
    });
  const width = Math.max(0, x1 - x0);
  const height = Math.max(0, y1 - y0);
  return {
    left: side(height, width, (along, inward) => dark(x0 + inward, y0 + along)),
    right: side(height, width, (along, inward) => dark(x1 - 1 - inward, y0 + along)),
    top: side(width, height, (along, inward) => dark(x0 + along, y0 + inward)),
    bottom: side(width, height, (along, inward) => dark(x0 + along, y1 - 1 - inward)),
  };
}

function firstPrinted(
  depth: number,
  from: number,
  to: number,
  at: (along: number, inward: number) => boolean,
): number | null {
  for (let inward = 0; inward < depth; inward += 1) {
    let count = 0;
    for (let along = from; along < to; along += 1) {
      if (!at(along, inward)) continue;
      count += 1;
      if (count >= LEAST_PIXELS) return inward;
    }
  }
  return null;
}
