import { isDay } from '../dates.ts';

/** How a written date reads: as one day, as one of several, or not at all, with the reason in words. */
export type DateReading =
  | { kind: 'sure'; day: string }
  | { kind: 'either'; days: string[] }
  | { kind: 'unread'; why: string };

const LANGUAGES = ['en', 'de', 'fr', 'es', 'it', 'nl', 'sv', 'da', 'nb', 'pt'];

let months: ReadonlyMap<string, number> | undefined;

/** Letters alone, without accents and capitals. */
function bare(word: string): string {
  return word
    .normalize('NFD')
    .replace(/[^\p{L}]/gu, '')
    .toLowerCase();
}

/** Names and short names of the months in the languages above; a short name that means two months is left out. */
function monthNames(): ReadonlyMap<string, number> {
  if (months) return months;
  const found = new Map<string, number>();
  const doubtful = new Set<string>();
  for (const language of LANGUAGES)
    for (const style of ['long', 'short'] as const)
      for (let month = 1; month <= 12; month += 1) {
        const write = new Intl.DateTimeFormat(language, { month: style, day: 'numeric', timeZone: 'UTC' });
        const parts = write.formatToParts(new Date(Date.UTC(2026, month - 1, 9)));
        const name = bare(parts.find(({ type }) => type === 'month')?.value ?? '');
        if ((found.get(name) ?? month) !== month) doubtful.add(name);
        found.set(name, month);
      }
  for (const name of ['', ...doubtful]) found.delete(name);
  months = found.set('sept', 9);
  return months;
}

function dayOf(year: number, month: number, day: number): string | undefined {
  const text = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
  return isDay(text) ? text : undefined;
}

const unread = (why: string): DateReading => ({ kind: 'unread', why });
const NO_DAY = unread('The calendar has no such day.');
const SHORT_YEAR = unread('Write the year with four figures.');

function sure(day: string | undefined): DateReading {
  return day === undefined ? NO_DAY : { kind: 'sure', day };
}

/** '12/3/2026': day or month first is told by nothing but figures over twelve. Points always part day and month so. */
function figures(first: number, second: number, year: number, sign: string): DateReading {
  const dayFirst = dayOf(year, second, first);
  const monthFirst = dayOf(year, first, second);
  if (sign === '.' || dayFirst === monthFirst) return sure(dayFirst);
  if (dayFirst === undefined || monthFirst === undefined) return sure(dayFirst ?? monthFirst);
  return { kind: 'either', days: [dayFirst, monthFirst] };
}

function inWords(text: string): DateReading {
  const words = text.split(/[\s,./-]+/).filter((word) => word !== '');
  const month = words.map((word) => monthNames().get(bare(word))).find((found) => found !== undefined);
  const numbers = words
    .map((word) => /^(\d{1,4})(?:st|nd|rd|th|er|º|ª)?$/i.exec(word)?.[1])
    .filter((figure) => figure !== undefined);
  const year = numbers.find((figure) => figure.length === 4);
  const day = numbers.find((figure) => figure.length < 3);
  if (month === undefined) return unread('Write a day such as 3 March 2026 or 2026-03-03.');
  if (numbers.length > 2) return unread('Write one day alone.');
  if (year === undefined) return numbers.length === 2 ? SHORT_YEAR : unread('The year is missing.');
  return day === undefined
    ? unread('The day of the month is missing.')
    : sure(dayOf(Number(year), month, Number(day)));
}

/**
 * Reads one day in any usual writing: year first, day and month in figures, the month in letters of ten languages.
 * What figures cannot tell ('03/04/2026') comes back as both days, and a year of two figures is not guessed.
 */
export function readDate(text: string): DateReading {
  const plain = text.trim().replace(/[T\s]\d{1,2}:\d{2}(?::\d{2})?(?:\.\d+)?(?:Z|[+-]\d{2}:?\d{2})?$/, '');
  const yearFirst =
    /^(\d{4})([-/.\u2010-\u2014]|\.\s|年)(\d{1,2})(?:[-/.\u2010-\u2014]|\.\s|月)(\d{1,2})(?:\.|日)?$/.exec(
      plain,
    );
  if (yearFirst) return sure(dayOf(Number(yearFirst[1]), Number(yearFirst[3]), Number(yearFirst[4])));
  const packed = /^(\d{4})(\d{2})(\d{2})$/.exec(plain);
  if (packed) return sure(dayOf(Number(packed[1]), Number(packed[2]), Number(packed[3])));
  const yearLast = /^(\d{1,2})\s?([-/.\u2010-\u2014])\s?(\d{1,2})\s?[-/.\u2010-\u2014]\s?(\d{2}|\d{4})$/.exec(
    plain,
  );
  if (yearLast?.[4]?.length === 2) return SHORT_YEAR;
  if (yearLast)
    return figures(Number(yearLast[1]), Number(yearLast[3]), Number(yearLast[4]), yearLast[2] ?? '');
  return inWords(plain);
}
