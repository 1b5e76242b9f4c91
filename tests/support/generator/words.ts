// Invented titles, names and places for catalogues to measure with.

/** Numbers in [0, 1) that are the same for the same seed (mulberry32). */
export type Dice = () => number;

export function diceOf(seed: number): Dice {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A whole number from `from` to `to`. */
export const between = (dice: Dice, from: number, to: number): number =>
  from + Math.floor(dice() * (to - from + 1));

export function oneOf<T>(dice: Dice, values: readonly [T, ...T[]]): T {
  return values[Math.floor(dice() * values.length)] ?? values[0];
}

const KINDS =
  'Salt Slow Grey Low Far Tidal Winter Northern Hidden Tarred Paper Borrowed Patient Silver Seventh Hollow Drifting Small Unlit Broad Lesser Copper Windward Sunken Early Quiet Narrow Idle Bitter Second'.split(
    ' ',
  );
const THINGS =
  'Almanac Lantern Knots Harbour Keeper Primer Rope Ferry Ledger Mooring Compass Orchard Signal Causeway Reed Anchor Kiln Bell Atlas Weir Loom Sluice Beacon Pilot Saltpan Mirror Herring Drawer Cellar Map'.split(
    ' ',
  );
const FIRST = 'Ska Tarn Fen Oster Quil Mar Hesk Wend Thorl Bray Orl Ness Grim Pell Vask'.split(' ');
const LAST = 'dalby mere wick holt garth sund ferry reach'.split(' ');
const GIVEN =
  'Maren Tobias Ilse Corin Wenna Jorek Alvi Petra Osric Linde Tamsin Rurik Edda Halvar Nessa Brock'.split(
    ' ',
  );

const at = (words: readonly string[], n: number): string => words[n % words.length] ?? '';
const place = (n: number): string => at(FIRST, Math.floor(n / LAST.length)) + at(LAST, n);

/** The nth title; no two of the first 108,000 are alike. */
export function titleOf(n: number): string {
  const spread = (n * 7919) % (KINDS.length * THINGS.length * FIRST.length * LAST.length);
  const rest = Math.floor(spread / KINDS.length);
  return `${at(KINDS, spread)} ${at(THINGS, rest)} of ${place(Math.floor(rest / THINGS.length))}`;
}

/** The nth person; no two of the first 1,920 are alike, later ones carry a count. */
export function personOf(n: number): string {
  const round = Math.floor(n / (GIVEN.length * FIRST.length * LAST.length));
  const name = `${at(GIVEN, n)} ${place(Math.floor(n / GIVEN.length))}`;
  return round === 0 ? name : `${name} ${String.fromCharCode(65 + (round % 26))}.`;
}

/** A description of a few sentences. */
export function descriptionOf(dice: Dice, title: string): string {
  const sentences = Array.from(
    { length: between(dice, 3, 6) },
    () =>
      `A ${at(KINDS, between(dice, 0, 29)).toLowerCase()} tale of the ${at(THINGS, between(dice, 0, 29)).toLowerCase()} and those who kept it at ${place(between(dice, 0, 119))}.`,
  );
  return `${title}. ${sentences.join(' ')}`;
}

/** Some keywords, all different. */
export function keywordsOf(dice: Dice, count: number): string[] {
  const start = between(dice, 0, 29);
  return Array.from({ length: count }, (_, n) => `${at(THINGS, start + n).toLowerCase()} ${at(LAST, n)}`);
}

const DAY = 86_400_000;

/** Days since 1 January 1970 of an ISO day, and back. */
export const dayNumber = (day: string): number => Date.parse(`${day}T00:00:00Z`) / DAY;
export const isoDay = (day: number): string => new Date(day * DAY).toISOString().slice(0, 10);

/** The same day, or the Monday after it where it falls on a weekend. */
export function workday(day: number): number {
  const weekday = (((day + 4) % 7) + 7) % 7;
  return weekday === 6 ? day + 2 : weekday === 0 ? day + 1 : day;
}
