import { type PlainText, placeOf } from './characters.ts';

/** A number as written: its characters and what stands between them. */
export interface Written {
  /** Digits, and X in upper case. */
  digits: string;
  /** Each dash: how many digits stand before it, and its index in what was typed. */
  dashes: readonly { before: number; place: number }[];
  /** How many digits stand before each gap of spaces. */
  gaps: readonly number[];
  /** Where the number stands: plain.text[from, to), of which the first `skipped` digits are left out. */
  plain: PlainText;
  from: number;
  to: number;
  skipped: number;
}

/** Collects the number in plain[from, to), which holds digits, X, dashes and spaces only. */
export function collect(plain: PlainText, from: number, to: number): Written {
  let digits = '';
  const dashes: { before: number; place: number }[] = [];
  const gaps: number[] = [];
  let start = from;
  for (let i = from; i <= to; i += 1) {
    const code = i < to ? plain.text.charCodeAt(i) : 32;
    if (code > 45) continue;
    digits += plain.text.slice(start, i);
    start = i + 1;
    if (code === 45) dashes.push({ before: digits.length, place: placeOf(plain, i) });
    else if (i < to && gaps.at(-1) !== digits.length) gaps.push(digits.length);
  }
  if (digits.endsWith('x')) digits = `${digits.slice(0, -1)}X`;
  return { digits, dashes, gaps, plain, from, to, skipped: 0 };
}

/** Index, in what was typed, of the digit `at`; behind the last digit, the end of the number. */
export function placeOfDigit({ plain, from, to, skipped }: Written, at: number): number {
  let left = skipped + at;
  for (let i = from; i < to; i += 1) {
    if (plain.text.charCodeAt(i) <= 45) continue;
    if (left === 0) return placeOf(plain, i);
    left -= 1;
  }
  return placeOf(plain, to);
}

/** A part of a written number, from the digit `from` up to the digit `to`. What stands between parts is left out. */
export function part(written: Written, from: number, to: number): Written {
  const inside = (before: number): boolean => (from === 0 || before > from) && before < to;
  return {
    ...written,
    digits: written.digits.slice(from, to),
    dashes: written.dashes
      .filter(({ before }) => inside(before))
      .map(({ before, place }) => ({ before: before - from, place })),
    gaps: written.gaps.filter(inside).map((before) => before - from),
    skipped: written.skipped + from,
  };
}
