const DAY_MS = 86_400_000;

function atNoon(day: string): number {
  return Date.parse(`${day}T12:00:00Z`);
}

/** The day so many days later; `YYYY-MM-DD` in and out. */
function dayPlus(day: string, days: number): string {
  return new Date(atNoon(day) + days * DAY_MS).toISOString().slice(0, 10);
}

/** Whole days from one day to another; negative when the other is earlier. */
function daysBetween(from: string, to: string): number {
  return Math.round((atNoon(to) - atNoon(from)) / DAY_MS);
}

/** The Sunday that ends the week of a day; weeks begin on Monday (ISO 8601). */
function weekEnd(day: string): string {
  const weekday = new Date(atNoon(day)).getUTCDay();
  return dayPlus(day, weekday === 0 ? 0 : 7 - weekday);
}

/** Reading form with its weekday: `Fri 27 Nov 2026`, in the order of the locale. */
export function dayInWords(day: string, locale?: string): string {
  return new Intl.DateTimeFormat(locale, {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    timeZone: 'UTC',
  }).format(new Date(atNoon(day)));
}

/** How late something due on a day is: '1 day late', '12 days late'; undefined when it is not. */
export function lateInWords(dueOn: string, today: string): string | undefined {
  const days = daysBetween(dueOn, today);
  if (days <= 0) return undefined;
  return days === 1 ? '1 day late' : `${days.toLocaleString()} days late`;
}

export const SPANS = ['overdue', 'today', 'this week', 'next week', 'later'] as const;
export type Span = (typeof SPANS)[number];

/** The part of the agenda where a day belongs. */
export function spanOf(dueOn: string, today: string): Span {
  if (dueOn < today) return 'overdue';
  if (dueOn === today) return 'today';
  const end = weekEnd(today);
  if (dueOn <= end) return 'this week';
  return dueOn <= dayPlus(end, 7) ? 'next week' : 'later';
}
