import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { PROOF_OUTCOMES, type ProofOutcome } from '../../src/contract/proofs.ts';
import { LISTING_STANDINGS, type ListingStanding } from '../../src/contract/terms.ts';
import type { PlanListing } from '../../src/rules/plans/types.ts';
import { earliestSale, FILES_OF, OUTCOMES, roundTasks, stepsOf } from '../../src/rules/proof-rounds.ts';
import { LISTING_STEPS } from '../../src/rules/standings.ts';
import { dayPlus, isWorkingDay, workCalendar } from '../../src/rules/working-days.ts';

const MONDAY = '2026-03-02';
const calendar = workCalendar({ workingDays: [1, 2, 3, 4, 5], holidays: [] });

const listing = (given: Partial<PlanListing> = {}): PlanListing => ({
  id: 1,
  standing: 'proof',
  lastStepOn: MONDAY,
  returnable: false,
  formatId: 1,
  formatName: 'Paperback',
  made: 'print',
  channelId: 1,
  channelName: 'Printworks Direct',
  leadDays: 3,
  removalDays: 7,
  proof: 'electronic',
  ...given,
});

// Where each outcome can be recorded, and the steps it takes; every other standing refuses it.
const moves: [ProofOutcome, ListingStanding, ListingStanding[]][] = [
  ['clear for sale', 'sent', ['proof', 'cleared']],
  ['clear for sale', 'proof', ['cleared']],
  ['clear for sale', 'cleared', []],
  ['clear for own orders', 'sent', ['proof', 'cleared']],
  ['clear for own orders', 'proof', ['cleared']],
  ['new file needed', 'sent', ['proof', 'unsent']],
  ['new file needed', 'proof', ['unsent']],
  ['new file needed', 'cleared', ['unsent']],
  ['channel error', 'sent', ['proof']],
  ['channel error', 'proof', []],
  ['channel error', 'cleared', []],
];

test.each(moves)('%s from %s takes the steps %j', (outcome, from, steps) => {
  expect(stepsOf(outcome, from)).toEqual(steps);
  let at = from;
  for (const to of steps) {
    expect(LISTING_STEPS.some((step) => step.from === at && step.to === to)).toBe(true);
    at = to;
  }
});

test('every other standing refuses every outcome', () => {
  for (const outcome of PROOF_OUTCOMES)
    for (const from of LISTING_STANDINGS)
      if (!moves.some(([o, f]) => o === outcome && f === from)) expect(stepsOf(outcome, from)).toBeNull();
});

const made = (outcome: ProofOutcome, given: Partial<Parameters<typeof roundTasks>[0]> = {}) =>
  roundTasks({
    calendar,
    on: MONDAY,
    outcome,
    listing: listing(),
    files: FILES_OF.print,
    saleDay: null,
    answerBy: null,
    saleDue: null,
    ...given,
  });
const table = (tasks: ReturnType<typeof made>) => tasks.map(({ kind, dueOn, needs }) => [kind, dueOn, needs]);

describe('the tasks that follow', () => {
  it('are none when it is clear for sale', () => {
    expect(made('clear for sale')).toEqual([]);
  });

  it('are own copies and a later sale when it is clear for own orders', () => {
    expect(table(made('clear for own orders', { saleDay: '2026-04-01' }))).toEqual([
      ['order-copies', '2026-03-03', []],
      ['on-sale', '2026-04-01', ['order-copies']],
    ]);
  });

  it('are new files, a new submission, a new proof and an approval when a new file is needed', () => {
    expect(table(made('new file needed'))).toEqual([
      ['make-interior', '2026-03-05', []],
      ['make-cover', '2026-03-05', []],
      ['submit', '2026-03-06', ['make-interior', 'make-cover']],
      ['check-proof', '2026-03-10', ['submit']],
      ['approve', '2026-03-10', ['check-proof']],
    ]);
    expect(table(made('new file needed', { listing: listing({ proof: 'none' }), files: ['cover'] }))).toEqual(
      [
        ['make-cover', '2026-03-05', []],
        ['submit', '2026-03-06', ['make-cover']],
        ['approve', '2026-03-09', ['submit']],
      ],
    );
  });

  it('are a promise waited for, a chase the day after and a new look when the channel made an error', () => {
    const tasks = made('channel error', { answerBy: '2026-03-06' });
    expect(table(tasks)).toEqual([
      ['await-mend', '2026-03-06', []],
      ['chase-mend', '2026-03-09', []],
      ['check-proof', '2026-03-09', ['await-mend']],
    ]);
    expect(tasks[0]?.waitingFor).toBe('Printworks Direct');
    expect(made('channel error', { listing: listing({ standing: 'cleared' }) }).map((t) => t.kind)).toEqual([
      'await-mend',
      'chase-mend',
    ]);
  });
});

test('no task comes before what it needs, after the day of sale, or on a day that is not worked', () => {
  const day = fc.integer({ min: 0, max: 1500 }).map((n) => dayPlus(MONDAY, n));
  const proofs = fc.constantFrom('none', 'electronic', 'physical');
  const ask = fc.record({
    on: day,
    outcome: fc.constantFrom(...PROOF_OUTCOMES),
    leadDays: fc.integer({ min: 0, max: 60 }),
    proof: proofs,
    ahead: fc.integer({ min: 1, max: 90 }),
    holidays: fc.array(day, { maxLength: 30 }),
  });
  fc.assert(
    fc.property(ask, ({ on, outcome, leadDays, proof, ahead, holidays }) => {
      const own = workCalendar({ workingDays: [1, 2, 3, 4, 5], holidays });
      const sale = dayPlus(on, ahead);
      const input = {
        calendar: own,
        on,
        outcome,
        listing: listing({ leadDays, proof }),
        files: FILES_OF.print,
        saleDay: sale,
        answerBy: null,
        saleDue: outcome === 'new file needed' ? sale : null,
      };
      const tasks = roundTasks(input);
      const dueOf = new Map(tasks.map((task) => [task.key, task.dueOn]));
      for (const task of tasks) {
        expect(task.dueOn >= on).toBe(true);
        if (outcome !== 'channel error') expect(task.dueOn <= sale).toBe(true);
        if (task.dueOn !== sale) expect(isWorkingDay(own, task.dueOn)).toBe(true);
        for (const need of task.needs) expect((dueOf.get(need) ?? '') <= task.dueOn).toBe(true);
      }
      expect(earliestSale(input) > on).toBe(true);
    }),
  );
});

test('the table names a rule for every outcome', () => {
  expect(Object.keys(OUTCOMES)).toEqual([...PROOF_OUTCOMES]);
});
