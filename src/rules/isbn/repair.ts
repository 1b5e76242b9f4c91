import { readClean } from './clean.ts';
import type { RangeTable } from './range-table.ts';
import { splitIsbn } from './split.ts';
import type { Written } from './written.ts';

/** A number that may have been meant, and the place of the first digit that it changes. */
export interface Candidate {
  hyphenated: string;
  at: number;
}

/** The hyphenated ISBN-13 of 13 or 10 characters when they are a valid number of a range in use; null otherwise. */
export function validNumber(digits: string, table: RangeTable): string | null {
  return readClean(digits, table)?.isbn.hyphenated ?? null;
}

/** Where dashes belong in 13 digits or 10 characters: how many stand before each. Empty where no range is in use. */
export function boundaries(digits: string, table: RangeTable): number[] {
  const ten = digits.length === 10;
  const parts = splitIsbn(ten ? `978${digits.slice(0, 9)}0` : digits, table);
  if (parts === null) return [];
  const group = (ten ? 0 : 3) + parts.group.length;
  const rest = [group, group + parts.registrant.length, digits.length - 1];
  return ten ? rest : [3, ...rest];
}

/** Whether the dashes, as far as any were written, stand where the elements of these digits meet. */
export function dashesFit(written: Written, digits: string, table: RangeTable): boolean {
  if (written.dashes.length === 0) return true;
  const allowed = boundaries(digits, table);
  return written.dashes.every(({ before }) => allowed.includes(before));
}

/** Keeps the variants that are valid, in use, and agree with the dashes as far as any were written. */
function fitting(written: Written, variants: readonly [number, string][], table: RangeTable): Candidate[] {
  const found: Candidate[] = [];
  for (const [at, digits] of variants) {
    const hyphenated = validNumber(digits, table);
    if (hyphenated === null || found.some((other) => other.hyphenated === hyphenated)) continue;
    if (dashesFit(written, digits, table)) found.push({ hyphenated, at });
  }
  return found;
}

function valueAt(digits: string, at: number): number {
  const value = digits.charCodeAt(at) - 48;
  return value > 9 ? 10 : value;
}

/** The weight of a digit in the check sum of its form (STANDARDS A4, A5). */
function weight(size: number, at: number): number {
  return size === 10 ? 10 - at : at % 2 === 0 ? 1 : 3;
}

/** By how much the check sum misses a multiple of its modulus, and that modulus. */
function excess(digits: string): { over: number; modulus: number } {
  const size = digits.length;
  let sum = 0;
  for (let i = 0; i < size; i += 1) sum += weight(size, i) * valueAt(digits, i);
  const modulus = size === 10 ? 11 : 10;
  return { over: sum % modulus, modulus };
}

/** Every number that arises when two neighbouring digits of 10 or 13 change places. */
export function swaps(written: Written, table: RangeTable): Candidate[] {
  const { digits } = written;
  const size = digits.length;
  const { over, modulus } = excess(digits);
  const variants: [number, string][] = [];
  for (let i = 0; i + 1 < size; i += 1) {
    const change = (weight(size, i) - weight(size, i + 1)) * (valueAt(digits, i + 1) - valueAt(digits, i));
    const [first, second] = [digits.charAt(i), digits.charAt(i + 1)];
    if ((over + change) % modulus !== 0 || first === second || second === 'X') continue;
    variants.push([i, digits.slice(0, i) + second + first + digits.slice(i + 2)]);
  }
  return fitting(written, variants, table);
}

/** Every number that arises when one digit of those before `to` is another; each place has at most one that fits. */
export function substitutes(written: Written, to: number, table: RangeTable): Candidate[] {
  const { digits } = written;
  const { over, modulus } = excess(digits);
  const variants: [number, string][] = [];
  for (let i = 0; i < to; i += 1)
    for (let digit = 0; digit < 10; digit += 1) {
      const change = weight(digits.length, i) * (digit - valueAt(digits, i));
      if (change !== 0 && (over + change) % modulus === 0)
        variants.push([i, digits.slice(0, i) + String(digit) + digits.slice(i + 1)]);
    }
  return fitting(written, variants, table);
}

/** Every number that arises when one of two equal neighbours is left out: a key struck twice. */
export function withoutDoubles(written: Written, table: RangeTable): Candidate[] {
  const { digits } = written;
  const variants: [number, string][] = [];
  for (let i = 1; i < digits.length; i += 1)
    if (digits.charAt(i) === digits.charAt(i - 1))
      variants.push([i, digits.slice(0, i) + digits.slice(i + 1)]);
  // The surplus digit shifts the dashes after it, so they say nothing here.
  return fitting({ ...written, dashes: [] }, variants, table);
}
