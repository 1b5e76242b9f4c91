import bwipjs from 'bwip-js/node';

/** One step of an outline; the same four kinds serve SVG, PDF and the picture. */
export type Segment =
  | { type: 'M'; x: number; y: number }
  | { type: 'L'; x: number; y: number }
  | { type: 'Q'; x: number; y: number; cx: number; cy: number }
  | { type: 'C'; x: number; y: number; cx1: number; cy1: number; cx2: number; cy2: number };

/** Height of the digits of OCR-B as a share of the type size, overshoot of round digits left aside. */
export const DIGIT_HEIGHT_EM = 0.664;

interface Outline {
  segments: readonly Segment[];
  left: number;
  right: number;
}

const UNITS = 1000;
const cache = new Map<string, Outline>();

/**
 * The OCR-B outline of a character, baseline at 0, y upwards, in shares of the type size; `left` and `right`
 * bound its ink. The outlines come from the font inside bwip-js, so files need no font of their own.
 */
function outline(char: string): Outline {
  const known = cache.get(char);
  if (known) return known;
  const font = bwipjs.FontLib.lookup('OCR-B');
  const segments = [...bwipjs.FontLib.getpaths(font, char.charCodeAt(0), UNITS, UNITS)].map((segment) =>
    mapSegment(
      segment,
      (v) => v / UNITS,
      (v) => v / UNITS,
    ),
  );
  // The font has a point on the curve at every extreme, so end points alone bound the ink.
  const xs = segments.map((segment) => segment.x);
  const made = { segments, left: Math.min(...xs), right: Math.max(...xs) };
  cache.set(char, made);
  return made;
}

/** A character in its place: the centre of its ink, its baseline and its type size, in one unit of length. */
export interface Glyph {
  char: string;
  centreX: number;
  baselineY: number;
  size: number;
}

/** Width of a character's cell in shares of the type size; OCR-B gives all its letters and digits the same ink. */
export function cellWidth(char: string): number {
  if (char === '-') return 0.26;
  return char === ' ' ? 0.2 : 0.435;
}

/** The outline of a placed character, y downwards, in the unit of its place. Fill it by the non-zero rule. */
export function glyphSegments(glyph: Glyph): Segment[] {
  const { segments, left, right } = outline(glyph.char);
  const middle = (left + right) / 2;
  // OCR-B's hyphen is as wide as a digit; at that width a hyphenated ISBN would not fit above the bars.
  const width = glyph.size * (glyph.char === '-' ? cellWidth('-') / (right - left) : 1);
  return segments.map((segment) =>
    mapSegment(
      segment,
      (x) => glyph.centreX + (x - middle) * width,
      (y) => glyph.baselineY - y * glyph.size,
    ),
  );
}

/** Applies one function to every x and one to every y of a segment. */
export function mapSegment(
  segment: Segment,
  mapX: (x: number) => number,
  mapY: (y: number) => number,
): Segment {
  const end = { x: mapX(segment.x), y: mapY(segment.y) };
  if (segment.type === 'Q') return { type: 'Q', ...end, cx: mapX(segment.cx), cy: mapY(segment.cy) };
  if (segment.type === 'C')
    return {
      type: 'C',
      ...end,
      cx1: mapX(segment.cx1),
      cy1: mapY(segment.cy1),
      cx2: mapX(segment.cx2),
      cy2: mapY(segment.cy2),
    };
  return { type: segment.type, ...end };
}
