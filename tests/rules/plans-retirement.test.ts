import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { retirementTasks } from '../../src/rules/plans/retirement.ts';
import { retirementDates } from '../../src/rules/plans/retirement-days.ts';
import type { PlanTask } from '../../src/rules/plans/types.ts';
import { isWorkingDay } from '../../src/rules/working-days.ts';
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

describe('a retirement plan', () => {
  const retire = (given: Partial<Parameters<typeof retirementTasks>[0]>) =>
    retirementTasks({
      calendar: WEEK,
      today: TODAY,
      day: TODAY,
      listings: [listing({ standing: 'selling', lastStepOn: '2026-01-05' })],
      awaited: [],
      replacementSells: false,
      replacement: null,
      ...given,
    });

  it('asks, chases when the promised days are over, and confirms', () => {
    const tasks = retire({ listings: [listing({ standing: 'selling', removalDays: 10 })] });
    expect(dueOf(tasks, 'ask-removal:1')).toBe('2026-03-02');
    expect(dueOf(tasks, 'chase:1')).toBe('2026-03-12');
    expect(dueOf(tasks, 'confirm-gone:1')).toBe('2026-03-19');
    expect(tasks.find((task) => task.key === 'confirm-gone:1')?.needs).toEqual(['ask-removal:1']);
    expect(tasks.find((task) => task.key === 'record-out-of-print')?.needs).toEqual(['ask-removal:1']);
  });

  it('takes back what was sent and never sold, leaves alone what was never sent, and does not ask twice', () => {
    const tasks = retire({
      listings: [
        listing({ standing: 'cleared' }),
        listing({ id: 2, standing: 'unsent' }),
        listing({ id: 3, standing: 'leaving', lastStepOn: '2026-02-20' }),
        listing({ id: 4, standing: 'gone' }),
      ],
    });
    expect(tasks.filter((task) => task.listingId !== null).map((task) => [task.key, task.dueOn])).toEqual([
      ['take-back:1', '2026-03-02'],
      ['chase:3', '2026-03-02'],
      ['confirm-gone:3', '2026-03-06'],
    ]);
  });

  it('minds returns only where copies may come back', () => {
    const sells = listing({ standing: 'selling' });
    expect(dueOf(retire({ listings: [sells] }), 'note-returns')).toBeUndefined();
    const note = retire({
      listings: [sells, listing({ id: 2, standing: 'selling', returnable: true })],
    }).find((task) => task.key === 'note-returns');
    expect(note?.note).toContain('remembered, no source');
  });

  it('waits for the sale on the same channel, and for the whole release where there is none yet', () => {
    const listings = [
      listing({ standing: 'selling', channelId: 1 }),
      listing({ id: 2, standing: 'selling', channelId: 9, channelName: 'Lanternshelf' }),
    ];
    const awaited = [
      { taskId: 71, channelId: 1, dueOn: '2026-04-01' },
      { taskId: 72, channelId: 2, dueOn: '2026-04-04' },
    ];
    const needsOf = (tasks: PlanTask[], key: string) => tasks.find((task) => task.key === key)?.needsTasks;
    const waiting = retire({ listings, awaited });
    expect(needsOf(waiting, 'ask-removal:1')).toEqual([71]);
    expect(needsOf(waiting, 'ask-removal:2')).toEqual([71, 72]);
    expect(dueOf(waiting, 'ask-removal:1')).toBe('2026-04-01');
    // 2026-04-04 is a Saturday: a release may fall on it, asking does not.
    expect(dueOf(waiting, 'ask-removal:2')).toBe('2026-04-06');

    const selling = retire({ listings, awaited, replacementSells: true });
    expect(needsOf(selling, 'ask-removal:1')).toEqual([71]);
    expect(needsOf(selling, 'ask-removal:2')).toEqual([]);
  });

  const awaitedSales = fc.array(
    fc.record({
      taskId: fc.integer({ min: 1, max: 900 }),
      channelId: fc.integer({ min: 1, max: 4 }),
      dueOn: someDay,
    }),
    { maxLength: 4 },
  );
  const anywhere = someListings(['unsent', 'sent', 'cleared', 'selling', 'leaving', 'gone']);

  it('has no task before what it needs, in this plan or another, and none on a free day or before today', () => {
    fc.assert(
      fc.property(someCalendar, someDay, anywhere, awaitedSales, (calendar, day, listings, awaited) => {
        const tasks = retire({ calendar, day, listings, awaited });
        expectOrder(tasks, (task) => task.dueOn);
        for (const task of tasks) {
          expect(task.dueOn >= TODAY && isWorkingDay(calendar, task.dueOn)).toBe(true);
          for (const sale of awaited)
            if (task.needsTasks.includes(sale.taskId)) expect(task.dueOn >= sale.dueOn).toBe(true);
        }
      }),
    );
  });

  it('dated anew keeps its order, waits as before, and falls on working days', () => {
    fc.assert(
      fc.property(
        someCalendar,
        someDay,
        someDay,
        anywhere,
        awaitedSales,
        (calendar, day, other, listings, sales) => {
          const awaited = sales.map((sale, at) => ({ ...sale, taskId: at + 1 }));
          const dues = new Map(awaited.map((sale) => [sale.taskId, sale.dueOn]));
          const tasks = retire({ calendar, day, listings, awaited });
          const open = asOpen(tasks, listings, dues);
          const days = retirementDates({ calendar, today: TODAY, day: other, replacementOn: null }, open);
          expectOrder(tasks, (_task, at) => days.get(at) ?? '');
          for (const [at, task] of open.entries()) {
            const moved = days.get(at) ?? '';
            expect(moved >= TODAY && isWorkingDay(calendar, moved)).toBe(true);
            if (task.awaitedDue !== null) expect(moved >= task.awaitedDue).toBe(true);
          }
        },
      ),
    );
  });
});
