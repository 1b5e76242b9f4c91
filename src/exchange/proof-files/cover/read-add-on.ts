import { ADD_ON_MODULES, addOnModules } from '../../barcode/modules.ts';
import { rowOf } from './edges.ts';
import type { Measure } from './measure.ts';
import { PATTERNS } from './patterns.ts';
import type { Grey } from './raster.ts';

/** The add-on begins so many modules from the main symbol: GS1 asks for 7 to 12, and some leave more (B3, from memory). */
const GAP = { least: 4, most: 24 };
const START = '1011';
/** So many rows have to agree. */
const LEAST_ROWS = 3;

/**
 * The five digits beside a measured symbol, in pixels that show it upright; null where there are none. Some readers
 * miss an add-on at the wider gaps that GS1 allows, so it is read here by the main symbol's own module.
 */
export function readAddOn(grey: Grey, symbol: Measure): string | null {
  const height = symbol.foot - symbol.top;
  const counts = new Map<string, number>();
  for (let share = 0.3; share < 0.95; share += 0.05) {
    const digits = readRow(grey, symbol, Math.round(symbol.top + height * share));
    if (digits !== null) counts.set(digits, (counts.get(digits) ?? 0) + 1);
  }
  const [best] = [...counts].sort((a, b) => b[1] - a[1]);
  return best && best[1] >= LEAST_ROWS ? best[0] : null;
}

function readRow(grey: Grey, symbol: Measure, y: number): string | null {
  const row = rowOf(grey, y);
  const half = (symbol.levels.dark + symbol.levels.light) / 2;
  const end = symbol.startAt(y) + (symbol.right - symbol.left);
  const step = (symbol.right - symbol.left) / 95;
  const dark = (x: number) => (row[Math.floor(x)] ?? 255) < half;
  let x = end + GAP.least * step;
  while (x < end + GAP.most * step && !dark(x)) x += 0.25;
  const modules = Array.from({ length: ADD_ON_MODULES }, (_, k) => (dark(x + (k + 0.5) * step) ? '1' : '0'));
  return decode(modules.join(''));
}

function decode(modules: string): string | null {
  if (!modules.startsWith(START)) return null;
  let digits = '';
  for (let i = 0; i < 5; i += 1) {
    const at = START.length + i * 9;
    const digit = PATTERNS.get(modules.slice(at, at + 7))?.digit;
    if (digit === undefined) return null;
    digits += digit;
  }
  // The separators and the parities, which carry the check, come out of drawing the digits again.
  return addOnModules(digits) === modules ? digits : null;
}
