import { darkRuns, MAIN_MODULES } from '../../barcode/modules.ts';
import type { Grey } from './raster.ts';

/** Levels of the bars and of the spaces between them, 0 black to 255 white. */
export interface Levels {
  dark: number;
  light: number;
}

/** A symbol on one row of pixels: module `k` reaches from `start + k × module` on. */
export interface RowFit {
  start: number;
  module: number;
  /** It was read from right to left. */
  reversed: boolean;
  levels: Levels;
}

/** Least difference between bars and spaces for edges to be looked for. */
const LEAST_STEP = 24;
/** An edge may stand off its place by so much of a module (GS1 decoders tell elements apart by half of one). */
const MOST_OFF = 0.5;
/** Edges of an EAN-13 symbol: two for each of its 30 bars. */
const EDGES = 60;

/** Where bars begin and end, in modules from the first one. */
function places(modules: string): number[] {
  return darkRuns(modules).flatMap(({ start, modules: wide }) => [start, start + wide]);
}

/** Darkest and lightest tenth of a part of a row. */
export function levelsOf(row: Uint8Array, from: number, to: number): Levels {
  const part = row.slice(Math.max(0, Math.floor(from)), Math.max(1, Math.ceil(to))).sort();
  const at = (share: number) => part[Math.min(part.length - 1, Math.floor(part.length * share))] ?? 0;
  return { dark: at(0.1), light: at(0.9) };
}

/** A row of pixels; the first or the last one where `y` lies outside. */
export function rowOf({ width, height, values }: Grey, y: number): Uint8Array {
  const at = Math.max(0, Math.min(height - 1, Math.round(y)));
  return values.subarray(at * width, (at + 1) * width);
}

/**
 * All places where a row passes half way between dark and light; even entries begin a bar. Pixel 0 reaches from 0 to 1,
 * and its value stands in its middle.
 */
function crossings(row: Uint8Array, { dark, light }: Levels): number[] {
  const half = (dark + light) / 2;
  const found: number[] = [];
  // What lies left of the row is taken for light, so that the first entry begins a bar.
  let inBar = false;
  for (let x = 0; x < row.length; x += 1) {
    const value = row[x] ?? 255;
    if (value < half === inBar) continue;
    const before = x === 0 ? light : (row[x - 1] ?? light);
    const share = value === before ? 0 : (half - before) / (value - before);
    found.push(x - 0.5 + share);
    inBar = !inBar;
  }
  return found;
}

/** Least squares of edges against places: where module 0 begins, how wide one is, how far the worst edge is off. */
function lineThrough(edges: readonly number[], at: readonly number[]) {
  const n = edges.length;
  const meanX = at.reduce((sum, x) => sum + x, 0) / n;
  const meanY = edges.reduce((sum, y) => sum + y, 0) / n;
  let over = 0;
  let under = 0;
  for (let i = 0; i < n; i += 1) {
    over += ((at[i] ?? 0) - meanX) * ((edges[i] ?? 0) - meanY);
    under += ((at[i] ?? 0) - meanX) ** 2;
  }
  const module = over / under;
  const start = meanY - module * meanX;
  const off = Math.max(...edges.map((edge, i) => Math.abs(edge - start - module * (at[i] ?? 0))));
  return { start, module, off: off / module };
}

/**
 * The symbol's modules on a row, found by all of its sixty edges; null where the row does not show them.
 */
export function fitRow(row: Uint8Array, modules: string, from: number, to: number): RowFit | null {
  const levels = levelsOf(row, from, to);
  if (levels.light - levels.dark < LEAST_STEP) return null;
  const edges = crossings(row, levels);
  const forwards = places(modules);
  const backwards = forwards.map((place) => MAIN_MODULES - place).reverse();
  let best: (RowFit & { off: number }) | null = null;
  for (let first = 0; first + EDGES <= edges.length; first += 2) {
    const part = edges.slice(first, first + EDGES);
    for (const reversed of [false, true]) {
      const fit = lineThrough(part, reversed ? backwards : forwards);
      if (fit.off < (best?.off ?? MOST_OFF)) best = { ...fit, reversed, levels };
    }
  }
  return best;
}
