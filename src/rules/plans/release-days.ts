import {
  type WorkCalendar,
  workingDayFrom,
  workingDaysAfter,
  workingDaysBefore,
  workingDayUntil,
} from '../working-days.ts';
import { ancestorsOf, inNeedOrder } from './order.ts';
import { channelDays } from './proof-days.ts';
import type { Dated } from './types.ts';

export interface ReleaseFrame {
  calendar: WorkCalendar;
  today: string;
  /** The release day. */
  day: string;
}

const isPinned = (item: Dated<unknown>) => item.step.kind === 'submit' || item.step.kind === 'on-sale';
const later = (a: string, b: string) => (a > b ? a : b);
/** The earlier of two days. */
export const earlier = (a: string, b: string) => (a < b ? a : b);

/** Working days from submitting to the release that a list of tasks asks for: its slowest channel, or its longest step. */
export function releaseSpan<Key>(items: readonly Dated<Key>[]): number {
  const toSubmit = new Set(
    items.filter(({ step }) => step.kind === 'submit').map(({ listing }) => listing?.id),
  );
  const counted = items.filter(({ listing }) => listing && (toSubmit.size === 0 || toSubmit.has(listing.id)));
  const beforeSale = ancestorsOf(items, ({ step }) => step.kind === 'on-sale');
  const spans = counted.map(({ key, step, listing }) => {
    const own = step.anchor === 'submission' && step.side === 'after' && beforeSale.has(key) ? step.days : 0;
    return Math.max(own, listing ? channelDays(listing) : 0);
  });
  return Math.max(0, ...spans);
}

/** The days a release hangs on: the first and last day on which work can lie, and the one of submission. */
function fixedDays({ calendar, today, day }: ReleaseFrame, span: number) {
  const first = workingDayFrom(calendar, today);
  const last = workingDayUntil(calendar, day);
  const within = (wanted: string) => (last < first ? day : later(first, earlier(wanted, last)));
  return { within, submission: within(workingDaysBefore(calendar, last, span)) };
}

/** The day a step is counted to, before its order among the others is looked at. */
function wantedDay({ calendar, day }: ReleaseFrame, item: Dated<unknown>, submission: string): string {
  const { anchor, side, days, kind } = item.step;
  if (kind === 'on-sale') return day;
  if (kind === 'submit') return submission;
  const from = anchor === 'submission' ? submission : day;
  return side === 'before' ? workingDaysBefore(calendar, from, days) : workingDaysAfter(calendar, from, days);
}

/**
 * Dates of a release: all listings are submitted on one day, worked back from the release day by the longest
 * span among them; the rest is counted from that day or from the release day. What comes after a fixed day is
 * pushed behind what it needs, what leads up to one is pulled before what needs it. Nothing is due before today;
 * up to the release day nothing on a day that is not worked, unless no working day is left: then on that day itself.
 */
export function releaseDates<Key>(frame: ReleaseFrame, items: readonly Dated<Key>[]): Map<Key, string> {
  const { within, submission } = fixedDays(frame, releaseSpan(items));
  const beforeSubmission = ancestorsOf(items, ({ step }) => step.kind === 'submit');
  const beforeSale = ancestorsOf(items, ({ step }) => step.kind === 'on-sale');
  const ordered = inNeedOrder(items);
  const due = new Map<Key, string>();
  /** The day that what follows a task may not lie before: its own, or for a preparation that of what it needs. */
  const floor = new Map<Key, string>();
  for (const item of ordered) {
    const needed = item.needs.map((key) => floor.get(key)).filter((day) => day !== undefined);
    const low = needed.reduce(later, '');
    let own = wantedDay(frame, item, submission);
    if (item.step.side === 'before' || item.step.anchor === 'submission' || beforeSale.has(item.key))
      own = within(own);
    if (beforeSubmission.has(item.key)) own = earlier(own, submission);
    const day = isPinned(item) ? own : later(own, low);
    due.set(item.key, day);
    floor.set(item.key, isPinned(item) || item.step.side === 'after' ? day : low);
  }
  for (const item of ordered.toReversed())
    for (const key of item.needs) {
      const [before, after] = [due.get(key), due.get(item.key)];
      if (before !== undefined && after !== undefined && before > after) due.set(key, after);
    }
  return due;
}
