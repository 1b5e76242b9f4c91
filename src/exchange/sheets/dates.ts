import type { Reading } from '../../contract/sheet-fields.ts';

export type DateOrder = Extract<Reading, 'ymd' | 'dmy' | 'mdy'>;

/** What the cells of a column say about the order of day and month. */
export interface DateGuess {
  /** Null where the cells fit both orders: the person must say which. */
  order: DateOrder | null;
  /** One sentence: why. */
  why: string;
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const YEAR_FIRST = /^([0-9]{4})[-/.]([0-9]{1,2})[-/.]([0-9]{1,2})(?:[T ][0-9:.Z+-]*)?$/;
const COMPACT = /^([0-9]{4})([0-9]{2})([0-9]{2})$/;
const YEAR_LAST = /^([0-9]{1,2})[-/. ]([0-9]{1,2})[-/. ]([0-9]{4})(?: [0-9:.]*)?$/;
const DAY_NAMED = /^([0-9]{1,2})(?:st|nd|rd|th)?[-. ]+([A-Za-z]{3,9})\.?[-, ]+([0-9]{4})$/;
const MONTH_NAMED = /^([A-Za-z]{3,9})\.?[- ]+([0-9]{1,2})(?:st|nd|rd|th)?,?[- ]+([0-9]{4})$/;

/** YYYY-MM-DD of a real calendar day between 1400 and 2999, or null. */
function day(year: number, month: number, date: number): string | null {
  if (year < 1400 || year > 2999 || month < 1 || month > 12 || date < 1 || date > 31) return null;
  const time = new Date(Date.UTC(year, month - 1, date));
  return time.getUTCMonth() === month - 1 ? time.toISOString().slice(0, 10) : null;
}

function monthOf(name: string): number {
  return MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;
}

/** Day of a text that can be read one way only; null for what is none or depends on the order. */
function plainDay(text: string): string | null {
  const first = YEAR_FIRST.exec(text) ?? COMPACT.exec(text);
  if (first) return day(Number(first[1]), Number(first[2]), Number(first[3]));
  const named = DAY_NAMED.exec(text);
  if (named) return day(Number(named[3]), monthOf(named[2] ?? ''), Number(named[1]));
  const month = MONTH_NAMED.exec(text);
  if (month) return day(Number(month[3]), monthOf(month[1] ?? ''), Number(month[2]));
  return null;
}

/** Reads one date; null when it is none in this order. Without an order, texts that fit both orders are null. */
export function readDate(text: string, order: DateOrder | null): string | null {
  const plain = plainDay(text);
  if (plain !== null) return plain;
  const last = YEAR_LAST.exec(text);
  if (!last) return null;
  const [, one, two, year] = last.map(Number);
  const dmy = day(year ?? 0, two ?? 0, one ?? 0);
  const mdy = day(year ?? 0, one ?? 0, two ?? 0);
  if (order === 'dmy') return dmy;
  if (order === 'mdy') return mdy;
  return dmy === null || mdy === null || dmy === mdy ? (dmy ?? mdy) : null;
}

/** Tells the order of day and month from the cells of a column: one day above twelve decides it. */
export function guessDates(cells: Iterable<string>): DateGuess {
  let dmy: string | undefined;
  let mdy: string | undefined;
  let either: string | undefined;
  for (const cell of cells) {
    const last = YEAR_LAST.exec(cell.trim());
    if (!last) continue;
    const [, one = 0, two = 0] = last.map(Number);
    if (one > 12 && two <= 12) dmy ??= cell;
    else if (two > 12 && one <= 12) mdy ??= cell;
    else if (one !== two) either ??= cell;
  }
  if (dmy !== undefined && mdy !== undefined)
    return { order: null, why: `‘${dmy}’ has the day first, ‘${mdy}’ the month: say which order holds.` };
  if (dmy !== undefined) return { order: 'dmy', why: `‘${dmy}’ can only have the day first.` };
  if (mdy !== undefined) return { order: 'mdy', why: `‘${mdy}’ can only have the month first.` };
  if (either !== undefined)
    return { order: null, why: `‘${either}’ may have the day or the month first: say which.` };
  return { order: 'ymd', why: 'Every date can be read one way only.' };
}
