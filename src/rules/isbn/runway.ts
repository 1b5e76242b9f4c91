import type { BlockSize } from './sizes.ts';

/** How long the free numbers will last at the pace of late. */
export interface Runway {
  /** The window that the pace was measured over, both days included. */
  from: string;
  to: string;
  /** Numbers assigned within the window. */
  assigned: number;
  /** Numbers a year (365.25 days). */
  perYear: number;
  /** The day the free numbers run out at that pace; null when nothing was assigned or it is over a century away. */
  runsOutOn: string | null;
}

const DAY_MS = 86_400_000;
const YEAR_DAYS = 365.25;
/** A shorter history says nothing about a year: it is measured as if it had lasted this long. */
const SHORTEST_WINDOW_DAYS = 90;
const CENTURY_DAYS = 36_525;

function dayNumber(day: string): number {
  const time = Date.parse(`${day}T00:00:00Z`);
  if (Number.isNaN(time)) throw new RangeError(`'${day}' is no day of the form YYYY-MM-DD`);
  return time / DAY_MS;
}

function dayOf(number: number): string {
  return new Date(number * DAY_MS).toISOString().slice(0, 10);
}

/**
 * The pace at which numbers were assigned in the last `windowDays` before and including `today`, and the day on which
 * `free` numbers run out at that pace. Where the first assignment ever lies inside the window, the window begins with
 * it, but is at least 90 days long. Days are YYYY-MM-DD; later ones than today do not count.
 * Our own arithmetic: common practice, no source.
 */
export function runway(
  assignedOn: readonly string[],
  free: number,
  today: string,
  windowDays: number = 2 * 365,
): Runway {
  const now = dayNumber(today);
  const days = assignedOn.map(dayNumber).filter((day) => day <= now);
  const first = days.reduce((earliest, day) => Math.min(earliest, day), now);
  const begin = Math.max(now - windowDays + 1, Math.min(first, now - SHORTEST_WINDOW_DAYS + 1));
  const assigned = days.filter((day) => day >= begin).length;
  const perDay = assigned / (now - begin + 1);
  const left = assigned === 0 ? Number.POSITIVE_INFINITY : Math.floor(free / perDay);
  return {
    from: dayOf(begin),
    to: today,
    assigned,
    perYear: perDay * YEAR_DAYS,
    runsOutOn: left > CENTURY_DAYS ? null : dayOf(now + left),
  };
}

/**
 * The smallest size that lasts at least `years` at a pace, the largest there is when none does; null where the group
 * has no sizes or nothing is being assigned. `sizes` ascend, as blockSizes answers them.
 */
export function sizeToBuy(sizes: readonly BlockSize[], perYear: number, years: number): BlockSize | null {
  if (perYear <= 0) return null;
  return sizes.find((size) => size.capacity >= perYear * years) ?? sizes.at(-1) ?? null;
}
