import { createHash } from 'node:crypto';
import type { Box } from '../../../contract/proof-checks/facts.ts';
import { CHROMA } from './objects.ts';
import type { Picture } from './render.ts';

/** What a small picture of a page shows of its trimmed part. */
export interface Look {
  blank: boolean;
  colour: boolean;
  bleeds: boolean;
  lookPrint: string;
  /** Whether a part of it shows colour. */
  colourIn(part: Box): boolean;
}

/** Lighter than this is paper: a soft edge of a letter, a nearly white ground. */
const PAPER = 250;
/** So many pixels of 36 to the inch make a colour: one alone may come from the edge of a letter. */
const COLOURED_PIXELS = 2;
/** Cells of the fingerprint have so many pixels along each side, and each so many steps of grey. */
const CELL_BITS = 2;
const CELL = 1 << CELL_BITS;
const STEPS = 6;

/** Print that goes over an edge is looked for so many pixels beyond it, past the soft edge of what ends there. */
const BEYOND = 2;

const WHITE = 0xffffffff;

/** A part of a picture in whole pixels, right and bottom left out. */
interface Part {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** Looks at a picture of a page of `widthPt`; `trim` is where it is cut. */
export function lookOver(picture: Picture, widthPt: number, trim: Box): Look {
  const scale = picture.width / widthPt;
  const inner = pixelsOf(picture, scale, trim);
  return {
    blank: !some(picture, inner, isInk, 1),
    colour: some(picture, inner, isColour, COLOURED_PIXELS),
    bleeds: bleedsOver(picture, inner),
    lookPrint: fingerprint(picture, inner),
    colourIn: (part) => some(picture, pixelsOf(picture, scale, part), isColour, COLOURED_PIXELS),
  };
}

function pixelsOf({ width, height }: Picture, scale: number, { xPt, yPt, widthPt, heightPt }: Box): Part {
  const within = (value: number, most: number) => Math.min(most, Math.max(0, Math.round(value * scale)));
  return {
    left: within(xPt, width),
    top: within(yPt, height),
    right: within(xPt + widthPt, width),
    bottom: within(yPt + heightPt, height),
  };
}

type Seen = (red: number, green: number, blue: number) => boolean;
const isInk: Seen = (red, green, blue) => red < PAPER || green < PAPER || blue < PAPER;
const isColour: Seen = (red, green, blue) =>
  Math.abs(red - green) > CHROMA || Math.abs(green - blue) > CHROMA || Math.abs(red - blue) > CHROMA;

/** Whether at least so many pixels of a part are as sought; most are white, which is not asked about. */
function some({ width, rgba }: Picture, part: Part, sought: Seen, least: number): boolean {
  const pixels = new Uint32Array(rgba.buffer);
  let count = 0;
  for (let y = part.top; y < part.bottom; y += 1)
    for (let i = y * width + part.left; i < y * width + part.right; i += 1) {
      if (pixels[i] === WHITE) continue;
      if (!sought(rgba[i * 4] ?? 255, rgba[i * 4 + 1] ?? 255, rgba[i * 4 + 2] ?? 255)) continue;
      count += 1;
      if (count >= least) return true;
    }
  return false;
}

/**
 * Whether print goes over an edge of the trimmed part: ink on both sides of it, or at the very edge of the page where
 * nothing lies beyond. Marks of cutting stand off the edge and do not count.
 */
function bleedsOver(picture: Picture, { left, top, right, bottom }: Part): boolean {
  const { width, height, rgba } = picture;
  const inked = (x: number, y: number) => {
    if (x < 0 || y < 0 || x >= width || y >= height) return true;
    const at = (y * width + x) * 4;
    return isInk(rgba[at] ?? 255, rgba[at + 1] ?? 255, rgba[at + 2] ?? 255);
  };
  for (let y = top; y < bottom; y += 1)
    if ((inked(left, y) && inked(left - BEYOND, y)) || (inked(right - 1, y) && inked(right - 1 + BEYOND, y)))
      return true;
  for (let x = left; x < right; x += 1)
    if ((inked(x, top) && inked(x, top - BEYOND)) || (inked(x, bottom - 1) && inked(x, bottom - 1 + BEYOND)))
      return true;
  return false;
}

/** Mean grey of every cell in few steps, hashed: the same for a page that was written anew without a change. */
function fingerprint({ width, rgba }: Picture, { left, top, right, bottom }: Part): string {
  const pixels = new Uint32Array(rgba.buffer);
  const across = Math.max(0, Math.floor((right - left) / CELL));
  const down = Math.max(0, Math.floor((bottom - top) / CELL));
  const dark = new Uint32Array(across * down);
  for (let y = 0; y < down * CELL; y += 1) {
    const row = (y >> CELL_BITS) * across;
    for (let x = 0, i = (top + y) * width + left; x < across * CELL; x += 1, i += 1) {
      if (pixels[i] === WHITE) continue;
      const light = (rgba[i * 4] ?? 255) + (rgba[i * 4 + 1] ?? 255) + (rgba[i * 4 + 2] ?? 255);
      const cell = row + (x >> CELL_BITS);
      dark[cell] = (dark[cell] ?? 0) + 765 - light;
    }
  }
  const full = CELL * CELL * 766;
  const steps = Uint8Array.from(dark, (sum) => Math.floor((sum * STEPS) / full));
  return createHash('sha256').update(`${across}x${down}`).update(steps).digest('hex').slice(0, 32);
}
