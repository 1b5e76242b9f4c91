import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Task } from '../../src/contract/tasks.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

const DAY = '2026-06-05';

/** The first edition on sale on two channels, the second prepared with numbers and listings. */
function prepare(catalogue: TestCatalogue) {
  const { call } = catalogue;
  call('blocks.add', { prefix: '979-8-969999' });
  const channels = [
    call('channels.create', { name: 'Printworks Direct', leadDays: 5, proof: 'physical' }),
    call('channels.create', { name: 'Nettlewick Bookshop', leadDays: 0, proof: 'none', kind: 'any' }),
  ].map((made) => made.channelId);
  const { workId, editionId: first } = call('works.create', { title: 'The Salt Almanac', number: 1 });
  const { formatId } = call('formats.create', { editionId: first, form: 'BC' });
  call('numbers.assign', { formatId });
  const old = channels.map((channelId) => call('listings.create', { formatId, channelId }).listingId);
  for (const id of old) call('listings.move', { id, to: 'selling', on: '2026-01-15' });
  const { editionId: second } = call('editions.prepareNext', { editionId: first, carry: [formatId] });
  return { workId, first, second, old };
}

const ALL = ['open', 'waiting', 'done', 'dropped'] as const;
const everyTask = (catalogue: TestCatalogue) => catalogue.call('tasks.list', { standings: [...ALL] }).tasks;

describe('from one edition to the next', () => {
  let catalogue: TestCatalogue;
  beforeEach(() => {
    catalogue = openTestCatalogue();
  });
  afterEach(() => catalogue.close());

  it('by its tasks alone: the new one sells everywhere before the old one is asked off anywhere', () => {
    const { call } = catalogue;
    const { workId, first, second, old } = prepare(catalogue);
    call('plans.release', { editionId: second, day: DAY });
    call('plans.retirement', { editionId: first });
    const standings = () => {
      const work = call('works.get', { id: workId });
      const of = (id: number) =>
        work.editions.find((edition) => edition.id === id)?.formats[0] ?? { standing: '', listings: [] };
      return { first: of(first), second: of(second) };
    };
    catalogue.setToday('2026-07-31');
    for (let next: Task | undefined; ; ) {
      next = call('tasks.list', {}).tasks.find((task) => task.needs.length === 0);
      if (!next) break;
      call('tasks.finish', { id: next.id });
      const now = standings();
      for (const listing of now.first.listings)
        if (listing.standing !== 'selling')
          expect(now.second.listings.find((l) => l.channelId === listing.channelId)?.standing).toBe(
            'selling',
          );
    }
    expect([standings().first.standing, standings().second.standing]).toEqual(['retired', 'live']);
    expect(everyTask(catalogue).filter((task) => task.endedOn === null)).toEqual([]);
    expect(call('listings.requestText', { id: old[0] ?? 0 }).text).toContain('Replaced by: 979-8-969999-01-');
  });
});

describe('whatever is done with tasks and plans', () => {
  const act = fc.record({
    what: fc.constantFrom('finish', 'redate', 'wait', 'drop', 'plan', 'move'),
    which: fc.nat({ max: 40 }),
    day: fc.integer({ min: 0, max: 120 }),
  });
  const dayAt = (offset: number) => new Date(Date.UTC(2026, 2, 2 + offset)).toISOString().slice(0, 10);

  it('no task is due before one it still needs, and nothing fails but by a refusal', () => {
    fc.assert(
      fc.property(fc.array(act, { minLength: 4, maxLength: 14 }), (acts) => {
        const catalogue = openTestCatalogue();
        try {
          const { first, second, old } = prepare(catalogue);
          const plans = [
            catalogue.call('plans.release', { editionId: second, day: DAY }),
            catalogue.call('plans.retirement', { editionId: first }),
          ];
          for (const { what, which, day } of acts) {
            const tasks = catalogue.call('tasks.list', {}).tasks;
            const id = tasks[which % Math.max(1, tasks.length)]?.id ?? 1;
            const dueOn = dayAt(day);
            const planId = plans[which % 2]?.planId ?? 0;
            const answer = {
              finish: () => catalogue.app.call('tasks.finish', { id }),
              redate: () => catalogue.app.call('tasks.redate', { id, dueOn }),
              wait: () => catalogue.app.call('tasks.wait', { id, waitingFor: 'somebody', dueOn }),
              drop: () => catalogue.app.call('tasks.drop', { id, reason: 'Not wanted.' }),
              plan: () => catalogue.app.call('plans.redate', { planId, day: dueOn }),
              move: () => catalogue.app.call('listings.move', { id: old[which % 2], to: 'leaving' }),
            }[what]?.();
            if (answer && !answer.ok) expect(['STEP_REFUSED', 'BAD_INPUT']).toContain(answer.error.code);
          }
          const left = catalogue.call('tasks.list', {}).tasks;
          const due = new Map(left.map((task) => [task.id, task.dueOn]));
          for (const task of left)
            for (const need of task.needs) expect((due.get(need.id) ?? '') <= task.dueOn).toBe(true);
        } finally {
          catalogue.close();
        }
      }),
      { numRuns: 25 },
    );
  });
});
