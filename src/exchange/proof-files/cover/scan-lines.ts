import { checkDigit13 } from '../../../rules/isbn/index.ts';
import { PATTERNS, RIGHT_PATTERNS } from './patterns.ts';
import type { Grey } from './raster.ts';

/** An ISBN that several lines of pixels show, and where. */
export interface LineSighting {
  digits: string;
  /** It reads from right to left. */
  reversed: boolean;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** One line in so many is read. */
const STRIDE = 6;
const LEAST_LINES = 4;
/** Bars and spaces are told apart by the darkest and lightest pixel in blocks of so many. */
const BLOCK = 48;
const LEAST_STEP = 50;
const EDGES = 60;
/** Which of the six digits after a leading 9 are odd (STANDARDS B2). */
const PARITY_OF_9 = 'LGGLGL';

/**
 * ISBNs whose bars are whole but whose quiet zones may not be: readers pass these over, so they are sought by the bars alone.
 * Lines run from left to right.
 */
export function scanLines(grey: Grey): LineSighting[] {
  const seen = new Map<string, LineSighting & { lines: number }>();
  for (let y = 0; y < grey.height; y += STRIDE) {
    const edges = edgesOf(grey.values.subarray(y * grey.width, (y + 1) * grey.width));
    for (let first = 0; first + EDGES <= edges.length; first += 2) {
      const part = edges.slice(first, first + EDGES);
      const read = decode(part, false) ?? decode(part, true);
      if (read === null) continue;
      const [left = 0, right = 0] = [part[0], part.at(-1)];
      const key = `${read.digits}${read.reversed}`;
      const one = seen.get(key) ?? { ...read, left, right, top: y, bottom: y, lines: 0 };
      seen.set(key, {
        ...one,
        left: Math.min(one.left, left),
        right: Math.max(one.right, right),
        bottom: y,
        lines: one.lines + 1,
      });
    }
  }
  return [...seen.values()].filter(({ lines }) => lines >= LEAST_LINES);
}

/** Middle between the darkest and the lightest pixel of a block and its neighbours; below 0 where they hardly differ. */
function thresholds(row: Uint8Array): number[] {
  const count = Math.ceil(row.length / BLOCK);
  const least: number[] = [];
  const most: number[] = [];
  for (let block = 0; block < count; block += 1) {
    let [low, high] = [255, 0];
    for (let x = block * BLOCK; x < Math.min(row.length, (block + 1) * BLOCK); x += 1) {
      const value = row[x] ?? 0;
      if (value < low) low = value;
      if (value > high) high = value;
    }
    least.push(low);
    most.push(high);
  }
  return least.map((_, i) => {
    const low = Math.min(...least.slice(Math.max(0, i - 1), i + 2));
    const high = Math.max(...most.slice(Math.max(0, i - 1), i + 2));
    return high - low < LEAST_STEP ? -1 : (low + high) / 2;
  });
}

/** Where a line turns dark and light again; even entries begin a bar. */
function edgesOf(row: Uint8Array): number[] {
  const levels = thresholds(row);
  const edges: number[] = [];
  let inBar = false;
  for (let x = 0; x < row.length; x += 1) {
    const level = levels[Math.floor(x / BLOCK)] ?? -1;
    const value = row[x] ?? 255;
    if (value < level === inBar) continue;
    const before = x === 0 ? 255 : (row[x - 1] ?? 255);
    edges.push(
      x - 0.5 + (value === before ? 0 : Math.min(1, Math.max(0, (level - before) / (value - before)))),
    );
    inBar = !inBar;
  }
  return edges;
}

/** The number that sixty edges show, if they are those of a symbol that begins with 9. */
function decode(edges: readonly number[], reversed: boolean): { digits: string; reversed: boolean } | null {
  const forward = edges.slice(1).map((edge, i) => edge - (edges[i] ?? 0));
  const widths = reversed ? forward.reverse() : forward;
  const module = ((edges.at(-1) ?? 0) - (edges[0] ?? 0)) / 95;
  const isGuard = (from: number, count: number) =>
    widths.slice(from, from + count).every((wide) => wide > 0.4 * module && wide < 1.7 * module);
  if (!isGuard(0, 3) || !isGuard(27, 5) || !isGuard(56, 3)) return null;
  let digits = '9';
  let parity = '';
  for (let i = 0; i < 12; i += 1) {
    const at = 3 + i * 4 + (i >= 6 ? 5 : 0);
    const bits = bitsOf(widths.slice(at, at + 4), i < 6 ? '0' : '1', module);
    const left = i < 6 ? PATTERNS.get(bits) : undefined;
    const digit = i < 6 ? left?.digit : RIGHT_PATTERNS.get(bits);
    if (digit === undefined) return null;
    parity += left?.parity ?? '';
    digits += digit;
  }
  const isIsbn = parity === PARITY_OF_9 && /^97[89]/.test(digits);
  return isIsbn && checkDigit13(digits.slice(0, 12)) === digits[12] ? { digits, reversed } : null;
}

/** Four widths as seven modules, '1' a bar. */
function bitsOf(widths: readonly number[], first: '0' | '1', module: number): string {
  const sum = widths.reduce((total, wide) => total + wide, 0);
  if (Math.abs(sum / module - 7) > 1) return '';
  const other = first === '0' ? '1' : '0';
  return widths
    .map((wide, i) => (i % 2 === 0 ? first : other).repeat(Math.max(0, Math.round((wide * 7) / sum))))
    .join('');
}
