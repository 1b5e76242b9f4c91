import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RELEASE_KINDS, RETIREMENT_KINDS } from '../../src/contract/plan-templates.ts';
import type { ListingStanding } from '../../src/contract/terms.ts';
import { isThere, movesTo } from '../../src/rules/plans/kinds.ts';
import { releaseTasks } from '../../src/rules/plans/release.ts';
import { releaseDates } from '../../src/rules/plans/release-days.ts';
import type { PlanListing } from '../../src/rules/plans/types.ts';
import { isWorkingDay, workingDayFrom, workingDaysAfter } from '../../src/rules/working-days.ts';
import {
  asOpen,
  dueOf,
  expectOrder,
  listing,
  someCalendar,
  someDay,
  someListings,
  TODAY,
  WEEK,
} from '../support/plan-rules.ts';

const release = (day: string, listings: PlanListing[], today = TODAY, calendar = WEEK) =>
  releaseTasks({ calendar, today, day, listings });
const beforeSale = someListings(['unsent', 'sent', 'proof', 'cleared']);

describe('kinds of task', () => {
  it('move a listing along its standings in the order of the plan', () => {
    expect(RELEASE_KINDS.map(movesTo).filter((to) => to !== null)).toEqual([
      'sent',
      'proof',
      'cleared',
      'selling',
    ]);
    expect(RETIREMENT_KINDS.map(movesTo).filter((to) => to !== null)).toEqual(['leaving', 'gone', 'unsent']);
    expect(movesTo('own')).toBeNull();
    expect(movesTo('toString')).toBeNull();
  });

  it('know when a listing is there already', () => {
    expect(isThere('leaving', 'leaving')).toBe(true);
    expect(isThere('gone', 'leaving')).toBe(true);
    expect(isThere('selling', 'leaving')).toBe(false);
    expect(isThere('selling', 'unsent')).toBe(false);
  });
});

describe('a release plan', () => {
  it('works back from the day: one day to submit everywhere, by the slowest channel', () => {
    const tasks = release('2026-05-15', [
      listing(),
      listing({ id: 2, channelId: 2, channelName: 'Broadside Wholesale', leadDays: 10, proof: 'physical' }),
      listing({ id: 3, channelId: 3, channelName: 'Nettlewick Bookshop', leadDays: 0, proof: 'none' }),
    ]);
    // 2026-05-15 is a Friday; 20 working days before it (10 lead, 10 for the printed proof) is 2026-04-17.
    expect([1, 2, 3].map((id) => dueOf(tasks, `submit:${id}`))).toEqual(Array(3).fill('2026-04-17'));
    expect(dueOf(tasks, 'check-proof:1')).toBe('2026-04-21');
    expect(dueOf(tasks, 'check-printed-proof:2')).toBe('2026-05-05');
    expect(dueOf(tasks, 'check-proof:3')).toBeUndefined();
    expect(dueOf(tasks, 'approve:3')).toBe('2026-04-20');
    expect([1, 2, 3].map((id) => dueOf(tasks, `on-sale:${id}`))).toEqual(Array(3).fill('2026-05-15'));
    expect(dueOf(tasks, 'check-page:1')).toBe('2026-05-18');
    expect(tasks.find((task) => task.key === 'check-printed-proof:2')?.title).toBe(
      'Check the printed proof of Paperback from Broadside Wholesale',
    );
  });

  it('asks for the files that fit how each format is made, once a format', () => {
    const tasks = release('2026-05-15', [
      listing(),
      listing({ id: 2, channelId: 2 }),
      listing({ id: 3, formatId: 2, made: 'e-book', formatName: 'E-book (EPUB)' }),
      listing({ id: 4, formatId: 3, made: 'audio', formatName: 'Audiobook download (MP3)' }),
    ]);
    expect(tasks.filter((task) => task.kind.startsWith('make-')).map((task) => task.key)).toEqual([
      'make-interior:1',
      'make-cover:1',
      'make-e-book:2',
      'make-audio:3',
    ]);
    const needs = (key: string) => tasks.find((task) => task.key === key)?.needs;
    expect(needs('submit:3')).toEqual(['register-numbers', 'settle-data', 'make-e-book:2']);
    expect(needs('submit:1')).toEqual(['register-numbers', 'settle-data', 'make-cover:1']);
  });

  it('begins where a listing stands and asks nothing twice', () => {
    const kinds = (standing: ListingStanding) =>
      release('2026-05-15', [listing({ standing })]).map((task) => task.kind);
    expect(kinds('sent')).toEqual(['register-numbers', 'check-proof', 'approve', 'on-sale', 'check-page']);
    expect(kinds('cleared')).toEqual(['register-numbers', 'on-sale', 'check-page']);
  });

  it('squeezes into today what would lie in the past', () => {
    const tasks = release('2026-03-03', [listing({ leadDays: 30 })]);
    expect(new Set(tasks.filter((task) => task.kind !== 'check-page').map((task) => task.dueOn))).toEqual(
      new Set(['2026-03-02', '2026-03-03']),
    );
    expect(dueOf(tasks, 'submit:1')).toBe('2026-03-02');
  });

  it('falls on the release day itself when no working day is left before it', () => {
    const tasks = release('2026-03-08', [listing()], '2026-03-07');
    expect(dueOf(tasks, 'submit:1')).toBe('2026-03-08');
    expect(dueOf(tasks, 'check-page:1')).toBe('2026-03-09');
  });

  it('has no task before what it needs, none before today, and none on a free day but the release day', () => {
    fc.assert(
      fc.property(someCalendar, someDay, beforeSale, (calendar, day, listings) => {
        const tasks = release(day, listings, TODAY, calendar);
        expectOrder(tasks, (task) => task.dueOn);
        for (const task of tasks) {
          expect(task.dueOn >= TODAY).toBe(true);
          expect(task.dueOn === day || isWorkingDay(calendar, task.dueOn)).toBe(true);
          if (task.kind === 'on-sale') expect(task.dueOn).toBe(day);
        }
        const submits = new Set(tasks.filter((task) => task.kind === 'submit').map((task) => task.dueOn));
        expect(submits.size).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('leaves every channel its working days where there is time', () => {
    fc.assert(
      fc.property(someCalendar, someDay, beforeSale, (calendar, day, listings) => {
        const first = workingDayFrom(calendar, TODAY);
        for (const task of release(day, listings, TODAY, calendar)) {
          const own = listings.find((entry) => entry.id === task.listingId);
          if (task.kind !== 'submit' || !own || [first, day].includes(task.dueOn)) continue;
          expect(workingDaysAfter(calendar, task.dueOn, own.leadDays) <= day).toBe(true);
        }
      }),
    );
  });

  it('dated anew is what it would have been, made for that day, and keeps its order', () => {
    fc.assert(
      fc.property(someCalendar, someDay, someDay, beforeSale, (calendar, day, other, listings) => {
        const tasks = release(day, listings, TODAY, calendar);
        const days = releaseDates({ calendar, today: TODAY, day: other }, asOpen(tasks, listings));
        const fresh = release(other, listings, TODAY, calendar);
        expect(tasks.map((_task, at) => days.get(at))).toEqual(fresh.map((task) => task.dueOn));
        expectOrder(tasks, (_task, at) => days.get(at) ?? '');
        for (const [at, task] of tasks.entries()) {
          const moved = days.get(at) ?? '';
          expect(other >= day ? moved >= task.dueOn : moved <= task.dueOn).toBe(true);
        }
      }),
    );
  });
});
