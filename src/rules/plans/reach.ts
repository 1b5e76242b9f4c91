import { type WorkCalendar, workingDayFrom, workingDaysAfter } from '../working-days.ts';
import { ancestorsOf, inNeedOrder } from './order.ts';
import { channelDays } from './proof-days.ts';
import { releaseSpan } from './release-days.ts';
import { later } from './retirement-days.ts';
import type { Dated } from './types.ts';

/**
 * The first release day that leaves every channel its time: what is still to be sent is sent at the earliest, what
 * was sent already has its days from then on, and nothing is done before the day it can be done (`notBefore`).
 */
export function earliestRelease<Key>(
  calendar: WorkCalendar,
  today: string,
  items: readonly Dated<Key>[],
): string {
  const first = workingDayFrom(calendar, today);
  const toSubmit = items.filter(({ step }) => step.kind === 'submit');
  const before = ancestorsOf(items, ({ step }) => step.kind === 'submit');
  const beforeSale = ancestorsOf(items, ({ step }) => step.kind === 'on-sale');
  let submit = first;
  let day = first;
  for (const item of items) {
    const from = workingDayFrom(calendar, later(first, item.notBefore ?? null));
    if (before.has(item.key) || item.step.kind === 'submit') submit = later(submit, from);
    if (beforeSale.has(item.key)) day = later(day, from);
    const { listing } = item;
    if (listing?.standing === 'sent' && listing.lastStepOn !== null)
      day = later(day, workingDaysAfter(calendar, listing.lastStepOn, channelDays(listing)));
  }
  return toSubmit.length === 0 ? day : later(day, workingDaysAfter(calendar, submit, releaseSpan(items)));
}

/** The first release day on which every step has the days that its template gives it. */
export function unhurriedRelease<Key>(
  calendar: WorkCalendar,
  today: string,
  items: readonly Dated<Key>[],
): string {
  const first = workingDayFrom(calendar, today);
  const daysBefore = (anchor: string) =>
    Math.max(
      0,
      ...items.map(({ step }) => (step.side === 'before' && step.anchor === anchor ? step.days : 0)),
    );
  const hasSubmit = items.some(({ step }) => step.kind === 'submit');
  const submit = workingDaysAfter(calendar, first, hasSubmit ? daysBefore('submission') : 0);
  const released = workingDaysAfter(calendar, first, daysBefore('release'));
  return later(
    later(earliestRelease(calendar, today, items), released),
    hasSubmit ? workingDaysAfter(calendar, submit, releaseSpan(items)) : first,
  );
}

/** Working days from one day to a later one; 0 where it is no later. */
export function workingDaysBetween(calendar: WorkCalendar, from: string, to: string): number {
  let count = 0;
  for (let day = from; day < to; count += 1) day = workingDaysAfter(calendar, day, 1);
  return count;
}

/**
 * Days of a release when something slips: what needs it is pushed behind it, everything still to be submitted
 * together, on working days. What is on sale keeps its day; a push beyond it shows that the day cannot be kept.
 */
export function pushed<Key>(
  calendar: WorkCalendar,
  items: readonly Dated<Key>[],
  days: ReadonlyMap<Key, string>,
  slipped: ReadonlyMap<Key, string>,
): Map<Key, string> {
  const due = new Map(days);
  for (const [key, day] of slipped) due.set(key, day);
  const ordered = inNeedOrder(items);
  const submits = ordered.filter(({ step }) => step.kind === 'submit');
  const push = () => {
    for (const item of ordered) {
      if (item.step.kind === 'on-sale') continue;
      const own = due.get(item.key) ?? '';
      const needed = item.needs.map((key) => due.get(key) ?? '').reduce(later, own);
      if (needed > own) due.set(item.key, workingDayFrom(calendar, needed));
    }
  };
  push();
  const together = submits.map(({ key }) => due.get(key) ?? '').reduce(later, '');
  for (const { key } of submits) due.set(key, together);
  push();
  return due;
}
