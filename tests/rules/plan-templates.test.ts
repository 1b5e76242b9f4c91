import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PLAN_KINDS, type PlanKind, type PlanStep, planSteps } from '../../src/contract/plan-templates.ts';
import { checkSteps } from '../../src/rules/plans/check-template.ts';
import { DEFAULT_STEPS } from '../../src/rules/plans/default-templates.ts';
import { releaseTasks } from '../../src/rules/plans/release.ts';
import { releaseDates } from '../../src/rules/plans/release-days.ts';
import { retirementTasks } from '../../src/rules/plans/retirement.ts';
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

const own = (given: Partial<PlanStep> = {}): PlanStep => ({
  key: 'own-1',
  kind: 'own',
  title: 'Send copies to reviewers of {format}',
  note: '',
  scope: 'format',
  made: [],
  proof: [],
  days: 4,
  side: 'before',
  anchor: 'release',
  needs: [],
  on: true,
  ...given,
});
const changed = (kind: PlanKind, key: string, given: Partial<PlanStep>): PlanStep[] =>
  DEFAULT_STEPS[kind].map((step) => (step.key === key ? { ...step, ...given } : step));
const faults = (kind: PlanKind, steps: readonly PlanStep[]) =>
  checkSteps(kind, steps).map(({ sentence }) => sentence);

describe('the steps of a plan', () => {
  it.each(PLAN_KINDS)('as delivered are sound: %s', (kind) => {
    expect(checkSteps(kind, DEFAULT_STEPS[kind])).toEqual([]);
    expect(planSteps.safeParse(DEFAULT_STEPS[kind]).success).toBe(true);
  });

  it.each<[string, PlanKind, PlanStep[], RegExp]>([
    ['carrying steps off', 'release', changed('release', 'on-sale', { on: false }), /cannot be switched off/],
    [
      'another day of submitting',
      'release',
      changed('release', 'submit', { days: 2 }),
      /submitted on one day/,
    ],
    ['another scope', 'release', changed('release', 'approve', { scope: 'format' }), /stays as it is/],
    [
      'a step of ours taken out',
      'retirement',
      [...DEFAULT_STEPS.retirement.slice(1)],
      /switch it off instead/,
    ],
    [
      'a need that is not there',
      'release',
      [...DEFAULT_STEPS.release, own({ needs: ['x'] })],
      /needs x, and/,
    ],
    ['one short name twice', 'release', [...DEFAULT_STEPS.release, own(), own()], /Two steps have/],
    [
      'a word nothing fills',
      'release',
      [...DEFAULT_STEPS.release, own({ title: 'Call {channel}' })],
      /fills \{channel\}/,
    ],
    [
      'a day of the other plan',
      'release',
      [...DEFAULT_STEPS.release, own({ anchor: 'promise' })],
      /does not have/,
    ],
    [
      'a day before one not known',
      'retirement',
      [...DEFAULT_STEPS.retirement, own({ anchor: 'request' })],
      /only come after/,
    ],
    [
      'a step of its own that moves',
      'release',
      [...DEFAULT_STEPS.release, own({ kind: 'approve' })],
      /does not move/,
    ],
    [
      'a circle',
      'release',
      [...changed('release', 'submit', { needs: ['own-1'] }), own({ needs: ['approve'] })],
      /a circle\.$/,
    ],
    [
      'a circle through the order of standings',
      'release',
      changed('release', 'submit', { needs: ['on-sale'] }),
      /a circle\.$/,
    ],
  ])('are refused with %s', (_name, kind, steps, sentence) => {
    expect(faults(kind, steps)[0]).toMatch(sentence);
  });

  it('may be switched off and moved: what comes after then needs what came before', () => {
    const steps = changed('release', 'approve', { on: false });
    expect(faults('release', steps)).toEqual([]);
    const tasks = releaseTasks({
      calendar: WEEK,
      today: TODAY,
      day: '2026-05-15',
      listings: [listing()],
      steps,
    });
    expect(tasks.some(({ kind }) => kind === 'approve')).toBe(false);
    expect(tasks.find(({ key }) => key === 'on-sale:1')?.needs).toEqual(['check-proof:1']);
  });

  it('of your own stand where they are counted to, with their words filled in', () => {
    const steps = [...DEFAULT_STEPS.release, own({ needs: ['make-interior'] })];
    const tasks = releaseTasks({
      calendar: WEEK,
      today: TODAY,
      day: '2026-05-15',
      listings: [listing()],
      steps,
    });
    expect(tasks.find(({ step }) => step === 'own-1')).toMatchObject({
      key: 'own-1:1',
      kind: 'own',
      title: 'Send copies to reviewers of Paperback',
      dueOn: '2026-05-11',
      formatId: 1,
      listingId: null,
      needs: ['make-interior:1'],
    });
  });

  it('pull what they need forward where their day asks for it', () => {
    const steps = [
      ...DEFAULT_STEPS.release,
      own({
        days: 40,
        anchor: 'release',
        needs: ['finish-content'],
        scope: 'edition',
        title: 'Book the hall',
      }),
    ];
    const tasks = releaseTasks({
      calendar: WEEK,
      today: TODAY,
      day: '2026-06-26',
      listings: [listing()],
      steps,
    });
    expect(dueOf(tasks, 'own-1')).toBe('2026-05-01');
    expect(dueOf(tasks, 'finish-content')).toBe('2026-05-01');
  });
});

/** Some of ours switched off or moved, and up to five own steps needing whatever makes no circle. */
const someSteps = (kind: PlanKind) => {
  const ours = DEFAULT_STEPS[kind];
  const anchors =
    kind === 'release'
      ? (['submission', 'release'] as const)
      : (['start', 'replacement', 'request', 'promise'] as const);
  const extra = fc.array(
    fc.record({
      scope: fc.constantFrom<PlanStep['scope']>('edition', 'format', 'listing'),
      days: fc.integer({ min: 0, max: 30 }),
      side: fc.constantFrom<PlanStep['side']>('before', 'after'),
      anchor: fc.constantFrom<PlanStep['anchor']>(...anchors),
      made: fc.constantFrom<PlanStep['made']>([], ['print'], ['e-book']),
      needs: fc.subarray(
        ours.map(({ key }) => key),
        { maxLength: 3 },
      ),
      neededBy: fc.subarray(
        ours.map(({ key }) => key),
        { maxLength: 2 },
      ),
    }),
    { maxLength: 5 },
  );
  const tweaks = fc.array(
    fc.record({
      at: fc.integer({ min: 0, max: ours.length - 1 }),
      on: fc.boolean(),
      days: fc.integer({ min: 0, max: 30 }),
    }),
    { maxLength: 5 },
  );
  return fc.tuple(tweaks, extra).map(([moved, added]) => {
    let steps: PlanStep[] = [...ours];
    const keep = (next: PlanStep[]) => {
      if (checkSteps(kind, next).length === 0) steps = next;
    };
    for (const { at, on, days } of moved)
      keep(steps.map((step, index) => (index === at ? { ...step, on, days } : step)));
    for (const [index, { neededBy, ...given }] of added.entries()) {
      const key = `own-${index}`;
      const step = own({ ...given, key, title: 'Something more' });
      keep([...steps, step]);
      for (const user of neededBy)
        keep(steps.map((one) => (one.key === user ? { ...one, needs: [...one.needs, key] } : one)));
    }
    return steps;
  });
};

describe('plans from templates of your own', () => {
  const beforeSale = someListings(['unsent', 'sent', 'proof', 'cleared']);

  it('release: the order holds, one day to submit, nothing on a free day, dated anew likewise', () => {
    fc.assert(
      fc.property(
        someSteps('release'),
        someCalendar,
        someDay,
        someDay,
        beforeSale,
        (steps, calendar, day, other, listings) => {
          const tasks = releaseTasks({ calendar, today: TODAY, day, listings, steps });
          const days = releaseDates(
            { calendar, today: TODAY, day: other },
            asOpen(tasks, listings, undefined, steps),
          );
          for (const [on, dueOn] of [
            [day, (task: { dueOn: string }) => task.dueOn],
            [other, (_task: unknown, at: number) => days.get(at) ?? ''],
          ] as const) {
            expectOrder(tasks, dueOn);
            const submits = tasks.flatMap((task, at) => (task.kind === 'submit' ? [dueOn(task, at)] : []));
            expect(new Set(submits).size).toBeLessThanOrEqual(1);
            for (const [at, task] of tasks.entries()) {
              const due = dueOn(task, at);
              expect(due >= TODAY && (due === on || isWorkingDay(calendar, due))).toBe(true);
              if (task.kind === 'on-sale') expect(due).toBe(on);
            }
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it('retirement: the order holds and nothing lies on a free day', () => {
    const anywhere = someListings(['unsent', 'sent', 'cleared', 'selling', 'leaving', 'gone']);
    fc.assert(
      fc.property(
        someSteps('retirement'),
        someCalendar,
        someDay,
        anywhere,
        (steps, calendar, day, listings) => {
          const tasks = retirementTasks({
            ...{ calendar, today: TODAY, day, listings, steps },
            ...{ awaited: [], replacementSells: false, replacement: null },
          });
          expectOrder(tasks, (task) => task.dueOn);
          for (const { dueOn } of tasks) expect(dueOn >= TODAY && isWorkingDay(calendar, dueOn)).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });
});
