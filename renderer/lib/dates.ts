/** True for a `YYYY-MM-DD` day that exists. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().slice(0, 10) === text;
}

/** Making a formatter takes far longer than using it, and a table writes hundreds of days. */
const formatters = new Map<string | undefined, Intl.DateTimeFormat>();

function formatterOf(locale: string | undefined): Intl.DateTimeFormat {
  const known = formatters.get(locale);
  if (known) return known;
  const made = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' });
  formatters.set(locale, made);
  return made;
}

/** Reading form of a `YYYY-MM-DD` day in the locale's own order with the month in letters: `1 May 2024`. */
export function formatDay(day: string, locale?: string): string {
  if (!isDay(day)) return day;
  return formatterOf(locale).format(new Date(`${day}T00:00:00Z`));
}
