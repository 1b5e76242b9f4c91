const DAY_MS = 86_400_000;

/** Whole days since 1970-01-01 of a `YYYY-MM-DD` day. */
export function dayNumber(day: string): number {
  return Math.round(Date.parse(`${day}T00:00:00Z`) / DAY_MS);
}

export function dayOf(number: number): string {
  return new Date(number * DAY_MS).toISOString().slice(0, 10);
}

/** Places days on a line: `from` at `start`, `to` at `end`; days outside are held at the ends. */
export interface TimeScale {
  from: string;
  to: string;
  start: number;
  end: number;
  x(day: string): number;
}

/** A scale over the days, with a little room on both sides so that nothing ends at the very edge. */
export function timeScale(days: readonly string[], start: number, end: number): TimeScale {
  const numbers = days.map(dayNumber);
  const first = Math.min(...numbers);
  const last = Math.max(...numbers);
  const room = Math.max(15, Math.round((last - first) * 0.03));
  const [low, high] = [first - room, last + room];
  return {
    from: dayOf(low),
    to: dayOf(high),
    start,
    end,
    x: (day) => {
      const at = Math.min(high, Math.max(low, dayNumber(day)));
      return start + ((at - low) / (high - low)) * (end - start);
    },
  };
}

export interface Tick {
  x: number;
  label: string;
}

/** Least distance of two labels in pixels. */
const APART = 56;

/** Marks at the beginnings of years, or of months and quarters where the line is short; never closer than their labels. */
export function ticksOf(scale: TimeScale): Tick[] {
  const [firstYear, lastYear] = [Number(scale.from.slice(0, 4)), Number(scale.to.slice(0, 4))];
  const years = (scale.end - scale.start) / Math.max(1, lastYear - firstYear + 1);
  const months = years > APART * 12 ? 1 : years > APART * 4 ? 3 : 12;
  const ticks: Tick[] = [];
  for (let month = firstYear * 12; month <= lastYear * 12 + 11; month += months) {
    const day = `${Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}-01`;
    if (day < scale.from || day > scale.to) continue;
    const x = scale.x(day);
    const last = ticks.at(-1);
    if (last && x - last.x < APART) continue;
    ticks.push({ x, label: months === 12 ? day.slice(0, 4) : day.slice(0, 7) });
  }
  return ticks;
}
