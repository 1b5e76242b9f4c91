/** The days that are worked: weekdays 1 (Monday) to 7 (Sunday), and single days that are not worked. */
export interface WorkCalendar {
  readonly workingDays: ReadonlySet<number>;
  readonly holidays: ReadonlySet<string>;
}

/** First and last day that a `YYYY-MM-DD` date can name; day arithmetic stops there. */
const FIRST_DAY = '0001-01-01';
const LAST_DAY = '9999-12-31';
const FIRST_MS = Date.parse(FIRST_DAY);
const LAST_MS = Date.parse(LAST_DAY);
const DAY_MS = 86_400_000;

/** The calendar of the settings. */
export function workCalendar(settings: {
  readonly workingDays: readonly number[];
  readonly holidays: readonly string[];
}): WorkCalendar {
  return { workingDays: new Set(settings.workingDays), holidays: new Set(settings.holidays) };
}

/** A day moved by a number of calendar days, forward or back; never beyond the years 1 to 9999. */
export function dayPlus(day: string, days: number): string {
  const moved = Date.parse(day) + days * DAY_MS;
  if (moved >= LAST_MS) return LAST_DAY;
  if (moved <= FIRST_MS) return FIRST_DAY;
  return new Date(moved).toISOString().slice(0, 10);
}

/** Day of the week, 1 (Monday) to 7 (Sunday), as ISO 8601 counts. */
export function weekday(day: string): number {
  return new Date(day).getUTCDay() || 7;
}

export function isWorkingDay(calendar: WorkCalendar, day: string): boolean {
  return calendar.workingDays.has(weekday(day)) && !calendar.holidays.has(day);
}

function nearest(calendar: WorkCalendar, day: string, by: 1 | -1): string {
  let at = day;
  while (!isWorkingDay(calendar, at)) {
    const next = dayPlus(at, by);
    if (next === at) return at;
    at = next;
  }
  return at;
}

/** The first working day on or after a day. */
export function workingDayFrom(calendar: WorkCalendar, day: string): string {
  return nearest(calendar, day, 1);
}

/** The last working day on or before a day. */
export function workingDayUntil(calendar: WorkCalendar, day: string): string {
  return nearest(calendar, day, -1);
}

/** The working day that lies a number of working days after a day; with none, the first on or after it. */
export function workingDaysAfter(calendar: WorkCalendar, day: string, count: number): string {
  let at = count > 0 ? day : workingDayFrom(calendar, day);
  for (let left = count; left > 0; left -= 1) at = workingDayFrom(calendar, dayPlus(at, 1));
  return at;
}

/** The working day that lies a number of working days before a day; with none, the last on or before it. */
export function workingDaysBefore(calendar: WorkCalendar, day: string, count: number): string {
  let at = count > 0 ? day : workingDayUntil(calendar, day);
  for (let left = count; left > 0; left -= 1) at = workingDayUntil(calendar, dayPlus(at, -1));
  return at;
}
