import { type Glyph, glyphSegments, mapSegment, type Segment } from './glyphs.ts';

/** A picture of one bit a pixel, rows padded to whole bytes, most significant bit leftmost; 1 is white. */
export interface Bitmap {
  width: number;
  height: number;
  rowBytes: number;
  bits: Uint8Array;
}

/** A white picture. */
export function whiteBitmap(width: number, height: number): Bitmap {
  const rowBytes = Math.ceil(width / 8);
  return { width, height, rowBytes, bits: new Uint8Array(rowBytes * height).fill(0xff) };
}

/** Blackens the pixels from `left` up to but not including `right`, on rows `top` up to but not including `foot`. */
export function fillBox(bitmap: Bitmap, left: number, top: number, right: number, foot: number): void {
  for (let y = top; y < foot; y++) fillSpan(bitmap, y, left, right);
}

function fillSpan(bitmap: Bitmap, y: number, left: number, right: number): void {
  if (y < 0 || y >= bitmap.height) return;
  const row = y * bitmap.rowBytes;
  for (let x = Math.max(left, 0); x < Math.min(right, bitmap.width); x++) {
    const at = row + (x >> 3);
    bitmap.bits[at] = (bitmap.bits[at] ?? 0) & ~(0x80 >> (x & 7));
  }
}

/** Blackens a character: every pixel whose middle lies inside its outline, by the non-zero rule. */
export function fillGlyph(bitmap: Bitmap, glyph: Glyph, pixelsPerUnit: number): void {
  const scale = (v: number) => v * pixelsPerUnit;
  const edges = toEdges(glyphSegments(glyph).map((segment) => mapSegment(segment, scale, scale)));
  const top = Math.floor(Math.min(...edges.map((edge) => edge.top.y)));
  const foot = Math.ceil(Math.max(...edges.map((edge) => edge.foot.y)));
  for (let y = top; y < foot; y++)
    for (const [from, to] of insideSpans(edges, y + 0.5))
      fillSpan(bitmap, y, Math.ceil(from - 0.5), Math.ceil(to - 0.5));
}

interface Point {
  x: number;
  y: number;
}

/** A straight edge, its ends in order of y; `turn` is 1 where the outline runs downwards here, else -1. */
interface Edge {
  top: Point;
  foot: Point;
  turn: number;
}

function insideSpans(edges: Edge[], y: number): [number, number][] {
  const crossings = edges
    .filter((edge) => edge.top.y <= y && y < edge.foot.y)
    .map(({ top, foot, turn }) => ({
      x: top.x + ((y - top.y) / (foot.y - top.y)) * (foot.x - top.x),
      turn,
    }))
    .sort((a, b) => a.x - b.x);
  const spans: [number, number][] = [];
  let winding = 0;
  let from = 0;
  for (const { x, turn } of crossings) {
    if (winding === 0) from = x;
    winding += turn;
    if (winding === 0) spans.push([from, x]);
  }
  return spans;
}

function toEdges(segments: Segment[]): Edge[] {
  return toContours(segments).flatMap((contour) =>
    contour.flatMap((point, i): Edge[] => {
      const next = contour[(i + 1) % contour.length] ?? point;
      if (point.y === next.y) return [];
      return point.y < next.y
        ? [{ top: point, foot: next, turn: 1 }]
        : [{ top: next, foot: point, turn: -1 }];
    }),
  );
}

/** Closed outlines as points; a curve becomes eight straight pieces, finer than a pixel at any size drawn here. */
function toContours(segments: Segment[]): Point[][] {
  const contours: Point[][] = [];
  let contour: Point[] = [];
  for (const segment of segments) {
    const from = contour.at(-1);
    if (segment.type === 'M' || from === undefined) {
      contour = [{ x: segment.x, y: segment.y }];
      contours.push(contour);
    } else if (segment.type === 'L') contour.push({ x: segment.x, y: segment.y });
    else for (let step = 1; step <= 8; step++) contour.push(pointOnCurve(from, segment, step / 8));
  }
  return contours;
}

function pointOnCurve(from: Point, curve: Extract<Segment, { type: 'Q' | 'C' }>, t: number): Point {
  const u = 1 - t;
  if (curve.type === 'Q')
    return {
      x: u * u * from.x + 2 * u * t * curve.cx + t * t * curve.x,
      y: u * u * from.y + 2 * u * t * curve.cy + t * t * curve.y,
    };
  const [a, b, c, d] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
  return {
    x: a * from.x + b * curve.cx1 + c * curve.cx2 + d * curve.x,
    y: a * from.y + b * curve.cy1 + c * curve.cy2 + d * curve.y,
  };
}
