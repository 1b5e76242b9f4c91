import { MAIN_MODULES } from '../../barcode/modules.ts';
import { fitRow, type Levels, type RowFit, rowOf } from './edges.ts';
import type { Grey } from './raster.ts';

/** A symbol as measured in pixels that show it upright; x and y from the top left of these pixels. */
export interface Measure {
  left: number;
  right: number;
  top: number;
  /** Where the ordinary bars end, and where the guards do. */
  barFoot: number;
  foot: number;
  module: number;
  levels: Levels;
  quietLeft: number;
  quietRight: number;
  /** Where module 0 begins on a row. */
  startAt: (y: number) => number;
}

/** What is known before: the digits' modules and roughly where the symbol stands. */
export interface Sought {
  modules: string;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Rows that are tried. */
const ROWS = 41;
/** So many of them have to agree. */
const LEAST_ROWS = 3;
/** A row belongs to the bars where so many of its 95 modules are as they should be. */
const LEAST_RIGHT = 90;
/** Quiet zones are looked at so far, in modules. */
export const QUIET_LOOKED_AT = 30;
/** A space that is darker by so much of the difference between bars and spaces is not clear any more (ours). */
const STAIN = 0.4;

/** Modules of the guards (GS1: 101, 01010, 101) that are dark, and those between that are light. */
const GUARD_DARK = [0, 2, 46, 48, 92, 94];
const GUARD_LIGHT = [1, 47, 93];

/**
 * Measures a symbol; 'turned over' where it stands on its head; null where it cannot be measured.
 */
export function measure(grey: Grey, sought: Sought): Measure | 'turned over' | null {
  const fits = fitsOf(grey, sought);
  if (fits.length < LEAST_ROWS) return null;
  const upsideDown = fits.filter(({ fit }) => fit.reversed).length;
  if (upsideDown * 2 > fits.length) return 'turned over';
  const right = fits.filter(({ fit }) => !fit.reversed);
  const module = median(right.map(({ fit }) => fit.module));
  const startAt = slope(right);
  const levels = {
    dark: median(right.map(({ fit }) => fit.levels.dark)),
    light: median(right.map(({ fit }) => fit.levels.light)),
  };
  const middle = median(right.map(({ y }) => y));
  const shows = (y: number) => showsBars(grey, sought.modules, y, startAt(y), module, levels);
  const top = reach(middle, -1, grey.height, shows);
  const barFoot = reach(middle, 1, grey.height, shows) + 1;
  const guards = (y: number) => showsGuards(grey, y, startAt(y), module, levels);
  const foot = reach(barFoot - 1, 1, grey.height, guards) + 1;
  const rows = range(Math.ceil(top + 1), Math.floor(barFoot - 2));
  const left = startAt((top + barFoot) / 2);
  // A symbol that leans is narrower across its bars than along a row.
  const lean = Math.cos(Math.atan(startAt(1) - startAt(0)));
  return {
    left,
    right: left + MAIN_MODULES * module,
    top,
    barFoot,
    foot,
    module: module * lean,
    levels,
    quietLeft: clear(grey, rows, (y) => startAt(y), -1, module, levels),
    quietRight: clear(grey, rows, (y) => startAt(y) + MAIN_MODULES * module, 1, module, levels),
    startAt,
  };
}

interface Fit {
  y: number;
  fit: RowFit;
}

function fitsOf(grey: Grey, { modules, left, right, top, bottom }: Sought): Fit[] {
  const fits: Fit[] = [];
  for (let i = 0; i < ROWS; i += 1) {
    const y = Math.round(top + ((bottom - top) * i) / (ROWS - 1));
    if (y < 0 || y >= grey.height) continue;
    const fit = fitRow(rowOf(grey, y), modules, left, right);
    if (fit) fits.push({ y, fit });
  }
  return fits;
}

/** Where the first bar begins on a row: a straight line through the rows, since a scan may lean a little. */
function slope(fits: readonly Fit[]): (y: number) => number {
  const n = fits.length;
  const meanY = fits.reduce((sum, { y }) => sum + y, 0) / n;
  const meanX = fits.reduce((sum, { fit }) => sum + fit.start, 0) / n;
  const over = fits.reduce((sum, { y, fit }) => sum + (y - meanY) * (fit.start - meanX), 0);
  const under = fits.reduce((sum, { y }) => sum + (y - meanY) ** 2, 0);
  const lean = under === 0 ? 0 : over / under;
  return (y) => meanX + lean * (y - meanY);
}

function isDark(grey: Grey, x: number, y: number, { dark, light }: Levels): boolean {
  const value = grey.values[Math.round(y) * grey.width + Math.floor(x)] ?? 255;
  return value < (dark + light) / 2;
}

function showsBars(grey: Grey, modules: string, y: number, start: number, module: number, levels: Levels) {
  let right = 0;
  for (let k = 0; k < MAIN_MODULES; k += 1)
    if (isDark(grey, start + (k + 0.5) * module, y, levels) === (modules[k] === '1')) right += 1;
  return right >= LEAST_RIGHT;
}

function showsGuards(grey: Grey, y: number, start: number, module: number, levels: Levels): boolean {
  const at = (k: number) => isDark(grey, start + (k + 0.5) * module, y, levels);
  return GUARD_DARK.every(at) && !GUARD_LIGHT.some(at);
}

/** The last row in a direction up to which `shows` holds. */
function reach(from: number, step: 1 | -1, height: number, shows: (y: number) => boolean): number {
  let y = Math.round(from);
  while (y + step >= 0 && y + step < height && shows(y + step)) y += step;
  return y;
}

/** Clear space beside the symbol in modules: the third narrowest of its rows, so that a speck does not count. */
function clear(
  grey: Grey,
  rows: readonly number[],
  edge: (y: number) => number,
  step: 1 | -1,
  module: number,
  { dark, light }: Levels,
): number {
  const stain = light - STAIN * (light - dark);
  const widths = rows.map((y) => {
    const from = edge(y) + step * module * 0.5;
    const end = Math.round(QUIET_LOOKED_AT * module);
    const row = rowOf(grey, y);
    for (let i = 0; i < end; i += 1) {
      const x = Math.floor(from) + step * i;
      if (x < 0 || x >= grey.width) return (i + module * 0.5) / module;
      if ((row[x] ?? 0) < stain) return Math.abs((step === 1 ? x : x + 1) - edge(y)) / module;
    }
    return QUIET_LOOKED_AT;
  });
  const ordered = widths.sort((a, b) => a - b);
  return ordered[Math.min(2, ordered.length - 1)] ?? 0;
}

function median(values: readonly number[]): number {
  const ordered = [...values].sort((a, b) => a - b);
  return ordered[Math.floor(ordered.length / 2)] ?? 0;
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i);
}
