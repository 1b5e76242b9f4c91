import {
  dayPlus,
  type WorkCalendar,
  workingDayFrom,
  workingDaysAfter,
  workingDaysBefore,
} from '../working-days.ts';
import { inNeedOrder } from './order.ts';
import type { Dated } from './types.ts';

export interface RetirementFrame {
  calendar: WorkCalendar;
  today: string;
  /** The day to ask for removal. */
  day: string;
  /** The day by which what is awaited of the replacing edition sells; null when nothing is awaited. */
  replacementOn: string | null;
}

/** The later of two days. */
export function later(day: string, other: string | null): string {
  return other !== null && other > day ? other : day;
}

/** Where a day of asking is known of old: the channel was asked on it. */
function askedOn(item: Dated<unknown>): string | null {
  return item.listing?.standing === 'leaving' ? item.listing.lastStepOn : null;
}

/**
 * Dates of a retirement: asking on its day or when what it awaits sells, what follows counted from the day of
 * asking or of the channel's promise, and everything behind what it needs. Nothing lies before today or on a day
 * that is not worked.
 */
export function retirementDates<Key>(frame: RetirementFrame, items: readonly Dated<Key>[]): Map<Key, string> {
  const { calendar, today, replacementOn } = frame;
  const start = later(frame.day, today);
  const due = new Map<Key, string>();
  const asks = items.filter(({ step }) => step.kind === 'ask-removal');
  const askOf = (item: Dated<Key>): string => {
    if (item.listing === null) return asks.map(({ key }) => due.get(key) ?? start).reduce(later, start);
    const ask = asks.find(({ listing }) => listing?.id === item.listing?.id);
    return askedOn(item) ?? (ask && due.get(ask.key)) ?? later(start, item.awaitedDue);
  };
  const fromOf = (item: Dated<Key>): string => {
    const { anchor, kind } = item.step;
    if (kind === 'ask-removal') return later(start, item.awaitedDue);
    if (anchor === 'replacement') return later(later(start, replacementOn), item.awaitedDue);
    if (anchor === 'request') return askOf(item);
    if (anchor !== 'promise') return start;
    const asked = askedOn(item) ?? workingDayFrom(calendar, askOf(item));
    return workingDayFrom(calendar, dayPlus(asked, item.listing?.removalDays ?? 0));
  };
  const dated = (item: Dated<Key>): string => {
    const { side, days } = item.step;
    const from = fromOf(item);
    const own =
      side === 'before' ? workingDaysBefore(calendar, from, days) : workingDaysAfter(calendar, from, days);
    const needed = item.needs.map((key) => due.get(key) ?? '').reduce(later, '');
    return workingDayFrom(calendar, later(later(own, needed), today));
  };
  // A day that is counted from asking needs the asking dated first, also where the order does not say so.
  const counted = items.map((item) => ({ ...item, needs: [...item.needs, ...asksBefore(item, asks)] }));
  for (const item of inNeedOrder(counted)) due.set(item.key, dated(item));
  return due;
}

function asksBefore<Key>(item: Dated<Key>, asks: readonly Dated<Key>[]): Key[] {
  if (item.step.anchor !== 'request' && item.step.anchor !== 'promise') return [];
  return asks
    .filter(({ listing }) => item.listing === null || listing?.id === item.listing.id)
    .map(({ key }) => key);
}
