import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dayPlus,
  isWorkingDay,
  weekday,
  workCalendar,
  workingDayFrom,
  workingDaysAfter,
  workingDaysBefore,
  workingDayUntil,
} from '../../src/rules/working-days.ts';

const week = workCalendar({ workingDays: [1, 2, 3, 4, 5], holidays: ['2026-12-25', '2026-12-28'] });

const day = fc.integer({ min: 0, max: 20_000 }).map((offset) => dayPlus('1990-01-01', offset));
const calendar = fc
  .record({
    workingDays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1 }),
    holidays: fc.array(day, { maxLength: 40 }),
  })
  .map(workCalendar);

describe('days', () => {
  it('count over month, year and leap day', () => {
    expect(dayPlus('2026-12-31', 1)).toBe('2027-01-01');
    expect(dayPlus('2028-02-28', 1)).toBe('2028-02-29');
    expect(dayPlus('2100-02-28', 1)).toBe('2100-03-01');
    expect(dayPlus('2026-03-01', -1)).toBe('2026-02-28');
  });

  it('number the week as ISO 8601 does: Monday is 1, Sunday is 7', () => {
    expect(['2026-03-02', '2026-03-07', '2026-03-08'].map(weekday)).toEqual([1, 6, 7]);
  });

  it('stop at the first and last day that can be written', () => {
    expect(dayPlus('9999-12-30', 5)).toBe('9999-12-31');
    expect(dayPlus('0001-01-02', -5)).toBe('0001-01-01');
    const noFriday = workCalendar({ workingDays: [1], holidays: [] });
    expect(weekday('9999-12-31')).toBe(5);
    expect(workingDayFrom(noFriday, '9999-12-30')).toBe('9999-12-31');
  });
});

describe('working days', () => {
  it('leave out weekends and holidays', () => {
    expect(workingDayFrom(week, '2026-12-25')).toBe('2026-12-29');
    expect(workingDayUntil(week, '2026-12-28')).toBe('2026-12-24');
    expect(workingDaysAfter(week, '2026-12-23', 2)).toBe('2026-12-29');
    expect(workingDaysBefore(week, '2026-12-29', 1)).toBe('2026-12-24');
    expect(workingDaysBefore(week, '2026-03-09', 5)).toBe('2026-03-02');
  });

  it('count from a day that is not worked without losing one', () => {
    expect(workingDaysAfter(week, '2026-03-07', 0)).toBe('2026-03-09');
    expect(workingDaysAfter(week, '2026-03-07', 1)).toBe('2026-03-09');
    expect(workingDaysBefore(week, '2026-03-08', 1)).toBe('2026-03-06');
  });

  it('are found on the right side of any day in any calendar, with none skipped', () => {
    fc.assert(
      fc.property(calendar, day, (cal, start) => {
        const next = workingDayFrom(cal, start);
        const last = workingDayUntil(cal, start);
        expect(isWorkingDay(cal, next) && isWorkingDay(cal, last)).toBe(true);
        expect(last <= start && start <= next).toBe(true);
        for (let at = start; at < next; at = dayPlus(at, 1)) expect(isWorkingDay(cal, at)).toBe(false);
        for (let at = start; at > last; at = dayPlus(at, -1)) expect(isWorkingDay(cal, at)).toBe(false);
      }),
    );
  });

  it('counted forward and back lead to where they began', () => {
    fc.assert(
      fc.property(calendar, day, fc.integer({ min: 0, max: 30 }), (cal, start, count) => {
        const from = workingDayFrom(cal, start);
        expect(workingDaysBefore(cal, workingDaysAfter(cal, from, count), count)).toBe(from);
      }),
    );
  });
});
