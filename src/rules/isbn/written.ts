import { type PlainText, placeOf } from './characters.ts';

/** A number as written: its characters and what stands between them. */
export interface Written {
  /** Digits, and X in upper case. */
  digits: string;
  /** Index of each digit in what was typed, and one more for the place after the last. */
  places: readonly number[];
  /** Each dash: how many digits stand before it, and its index in what was typed. */
  dashes: readonly { before: number; place: number }[];
  /** How many digits stand before each gap of spaces. */
  gaps: readonly number[];
}

/** Collects the number in plain[from, to), which holds digits, X, dashes and spaces only. */
export function collect(plain: PlainText, from: number, to: number): Written {
  let digits = '';
  const places: number[] = [];
  const dashes: { before: number; place: number }[] = [];
  const gaps: number[] = [];
  for (let i = from; i < to; i += 1) {
    const character = plain.text.charAt(i);
    if (character === '-') dashes.push({ before: digits.length, place: placeOf(plain, i) });
    else if (character === ' ') {
      if (gaps.at(-1) !== digits.length) gaps.push(digits.length);
    } else {
      digits += character === 'x' ? 'X' : character;
      places.push(placeOf(plain, i));
    }
  }
  places.push(placeOf(plain, to));
  return { digits, places, dashes, gaps };
}

/** A part of a written number, from the digit `from` up to the digit `to`. What stands between parts is left out. */
export function part(written: Written, from: number, to: number): Written {
  const inside = (before: number): boolean => (from === 0 || before > from) && before < to;
  return {
    digits: written.digits.slice(from, to),
    places: written.places.slice(from, to + 1),
    dashes: written.dashes
      .filter(({ before }) => inside(before))
      .map(({ before, place }) => ({ before: before - from, place })),
    gaps: written.gaps.filter(inside).map((before) => before - from),
  };
}
