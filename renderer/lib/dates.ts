/** True for a `YYYY-MM-DD` day that exists. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().slice(0, 10) === text;
}

/** Reading form of a `YYYY-MM-DD` day in the locale's own order with the month in letters: `1 May 2024`. */
export function formatDay(day: string, locale?: string): string {
  if (!isDay(day)) return day;
  return new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' }).format(
    new Date(`${day}T00:00:00Z`),
  );
}

/** Reading form of an ISO 8601 instant in the machine's own time zone: `1 May 2024, 14:05`. */
export function formatInstant(instant: string, locale?: string): string {
  const at = new Date(instant);
  if (Number.isNaN(at.getTime())) return instant;
  return new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' }).format(at);
}
