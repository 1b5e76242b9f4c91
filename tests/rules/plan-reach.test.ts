import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { learnedTimes } from '../../src/rules/lead-times.ts';
import { channelDays } from '../../src/rules/plans/proof-days.ts';
import {
  earliestRelease,
  pushed,
  unhurriedRelease,
  workingDaysBetween,
} from '../../src/rules/plans/reach.ts';
import { datedOf, releaseInstances, releaseTasks } from '../../src/rules/plans/release.ts';
import { releaseDates } from '../../src/rules/plans/release-days.ts';
import { isWorkingDay, workingDayFrom, workingDaysAfter } from '../../src/rules/working-days.ts';
import { listing, someCalendar, someDay, someListings, TODAY, WEEK } from '../support/plan-rules.ts';

const unsent = someListings(['unsent']);
const itemsOf = (listings: ReturnType<typeof listing>[]) => datedOf(releaseInstances({ listings }));

describe('the earliest release day', () => {
  it('is counted by hand: ten working days and ten of the post from today', () => {
    const items = itemsOf([listing({ leadDays: 10, proof: 'physical' }), listing({ id: 2, channelId: 2 })]);
    // 2026-03-02 is a Monday; twenty working days later is Monday 2026-03-30.
    expect(earliestRelease(WEEK, TODAY, items)).toBe('2026-03-30');
    // Ten working days for the text before that.
    expect(unhurriedRelease(WEEK, TODAY, items)).toBe('2026-04-13');
    expect(workingDaysBetween(WEEK, '2026-03-25', '2026-03-30')).toBe(3);
    expect(workingDaysBetween(WEEK, '2026-03-31', '2026-03-30')).toBe(0);
  });

  it('leaves every channel its time, and the day before does not', () => {
    fc.assert(
      fc.property(someCalendar, unsent, (calendar, listings) => {
        const day = earliestRelease(calendar, TODAY, itemsOf(listings));
        const submit = releaseTasks({ calendar, today: TODAY, day, listings }).find(
          ({ kind }) => kind === 'submit',
        );
        for (const one of listings)
          expect(workingDaysAfter(calendar, submit?.dueOn ?? '', channelDays(one)) <= day).toBe(true);
        expect(submit?.dueOn).toBe(workingDayFrom(calendar, TODAY));
      }),
    );
  });

  it('without haste gives every preparation its days', () => {
    fc.assert(
      fc.property(someCalendar, unsent, (calendar, listings) => {
        const day = unhurriedRelease(calendar, TODAY, itemsOf(listings));
        const tasks = releaseTasks({ calendar, today: TODAY, day, listings });
        const text = tasks.find(({ kind }) => kind === 'finish-content');
        const submit = tasks.find(({ kind }) => kind === 'submit');
        expect(workingDaysAfter(calendar, text?.dueOn ?? '', 10) <= (submit?.dueOn ?? '')).toBe(true);
      }),
    );
  });
});

describe('a slip', () => {
  it('pushes what needs it, everything to be sent together, and never what it needs', () => {
    fc.assert(
      fc.property(someCalendar, someDay, someDay, unsent, fc.nat(), (calendar, day, late, listings, at) => {
        const items = itemsOf(listings);
        const before = releaseDates({ calendar, today: TODAY, day }, items);
        const movable = items.filter(({ step }) => step.kind !== 'on-sale');
        const slipped = movable[at % movable.length];
        if (!slipped || late < (before.get(slipped.key) ?? '')) return;
        const after = pushed(calendar, items, before, new Map([[slipped.key, late]]));
        for (const item of items) {
          const due = after.get(item.key) ?? '';
          expect(due >= (before.get(item.key) ?? '')).toBe(true);
          if (item.step.kind === 'on-sale') expect(due).toBe(day);
          else if (item.key !== slipped.key && due !== before.get(item.key) && due !== late)
            expect(isWorkingDay(calendar, due)).toBe(true);
          for (const need of item.needs)
            expect(item.step.kind === 'on-sale' || (after.get(need) ?? '') <= due).toBe(true);
        }
        const submits = items.filter(({ step }) => step.kind === 'submit').map(({ key }) => after.get(key));
        expect(new Set(submits).size).toBe(1);
      }),
    );
  });
});

describe('what the steps of a channel tell', () => {
  const step = (
    listingId: number,
    from: string,
    to: string,
    on: string,
    onSaleDate: string | null = null,
  ) => ({
    ...{ channelId: 1, listingId, from, to, on, onSaleDate },
  });

  it('is the median and the slowest, in working days and for removals in calendar days', () => {
    const times = learnedTimes(WEEK, [
      step(1, 'unsent', 'sent', '2026-03-06'),
      step(2, 'unsent', 'sent', '2026-03-02'),
      step(1, 'sent', 'proof', '2026-03-09'),
      step(2, 'sent', 'proof', '2026-03-12'),
      step(1, 'proof', 'cleared', '2026-03-10'),
      step(1, 'cleared', 'selling', '2026-03-12'),
      step(1, 'selling', 'leaving', '2026-04-01'),
      step(1, 'leaving', 'gone', '2026-04-12'),
    ]);
    // Friday to Monday is one working day, Monday to Thursday of the next week eight: the median is five.
    expect(times.toProof).toEqual({ median: 5, slowest: 8, count: 2 });
    expect(times.toSale).toEqual({ median: 2, slowest: 2, count: 1 });
    expect(times.toGone).toEqual({ median: 11, slowest: 11, count: 1 });
  });

  it('leaves out what was typed in afterwards on one day, and what waited for its on-sale date', () => {
    const times = learnedTimes(WEEK, [
      step(1, 'unsent', 'sent', '2026-03-06'),
      step(1, 'sent', 'proof', '2026-03-06'),
      step(1, 'proof', 'cleared', '2026-03-06', '2026-05-01'),
      step(1, 'cleared', 'selling', '2026-05-01', '2026-05-01'),
    ]);
    expect(times).toEqual({ toProof: null, toSale: null, toGone: null });
  });
});
