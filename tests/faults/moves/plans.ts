import type { Maker } from '../../support/history.ts';

const missing = 9000;

/** A day so many days after another. */
export function dayAfter(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

const planRelease: Maker = (world, dice, wrong, today) => {
  const editionId = dice.of([...world.editions.keys()]);
  if (editionId === undefined) return null;
  const day = dayAfter(today, wrong ? -1 - dice.below(30) : dice.below(90));
  return { name: 'plans.release', input: { editionId, day }, expect: wrong ? 'refused' : 'either' };
};

const planRetirement: Maker = (world, dice, wrong, today) => {
  const editionId = wrong ? missing : dice.of([...world.editions.keys()]);
  if (editionId === undefined) return null;
  const day = dice.below(2) === 0 ? {} : { day: dayAfter(today, dice.below(60)) };
  return {
    name: 'plans.retirement',
    input: { editionId, ...day, beforeReplacement: dice.below(2) === 0 },
    expect: wrong ? 'NOT_FOUND' : 'either',
  };
};

const redatePlan: Maker = (world, dice, wrong, today) => {
  const [planId, plan] = dice.of([...world.plans]) ?? [];
  if (planId === undefined) return null;
  const day = dayAfter(today, wrong ? -3 : dice.below(90));
  return {
    name: 'plans.redate',
    input: { planId, day },
    expect: wrong || plan?.dropped ? 'refused' : 'either',
  };
};

const dropPlan: Maker = (world, dice) => {
  const [planId, plan] = dice.of([...world.plans]) ?? [];
  if (planId === undefined) return null;
  return {
    name: 'plans.drop',
    input: { planId, reason: 'put off' },
    expect: plan?.dropped ? 'STEP_REFUSED' : 'either',
  };
};

const createTask: Maker = (world, dice, wrong, today) => {
  const workId = dice.of([...world.works.keys()]);
  const input = { title: 'Ask for a quote', dueOn: dayAfter(today, dice.below(30)) };
  if (wrong) return { name: 'tasks.create', input: { ...input, workId: missing }, expect: 'NOT_FOUND' };
  return {
    name: 'tasks.create',
    input: { ...input, workId },
    expect: 'ok',
    after: (next, { taskId }: { taskId: number }) =>
      next.tasks.set(taskId, { standing: 'open', workId: workId ?? null, formatId: null, listingId: null }),
  };
};

/** A task that has ended where it is to go wrong, else one that has not. */
const task =
  (name: string, input: (today: string, days: number) => object): Maker =>
  (world, dice, wrong, today) => {
    const fitting = [...world.tasks].filter(
      ([, { standing }]) => ['done', 'dropped'].includes(standing) === wrong,
    );
    const [id] = dice.of(fitting) ?? [];
    if (id === undefined)
      return wrong ? { name, input: { ...input(today, 1), id: missing }, expect: 'NOT_FOUND' } : null;
    return {
      name,
      input: { ...input(today, dice.below(30)), id },
      expect: wrong ? 'STEP_REFUSED' : 'either',
    };
  };

const updateSettings: Maker = (_world, dice, wrong) => {
  if (wrong)
    return {
      name: 'settings.update',
      input: dice.oneOf<object>({ currency: 'pounds' }, { workingDays: [] }, { theme: 'dusk' }),
      expect: 'refused',
    };
  return {
    name: 'settings.update',
    input: { removalOverdueDays: 1 + dice.below(30), publisher: `Halyard & Fen ${dice.below(1000)}` },
    expect: 'ok',
    after: () => {},
  };
};

const undo: Maker = (world, dice, wrong) => {
  if (world.newest === 0) return null;
  const commandSeq = wrong ? world.newest + dice.oneOf(1, -1, 5000) : world.newest;
  return { name: 'journal.undo', input: { commandSeq }, expect: wrong ? 'STEP_REFUSED' : 'either' };
};

export const planMoves = {
  ...{ planRelease, planRetirement, redatePlan, dropPlan, createTask, updateSettings, undo },
  finishTask: task('tasks.finish', () => ({})),
  waitTask: task('tasks.wait', (today, days) => ({
    waitingFor: 'the printer',
    dueOn: dayAfter(today, days),
  })),
  redateTask: task('tasks.redate', (today, days) => ({ dueOn: dayAfter(today, days) })),
  dropTask: task('tasks.drop', () => ({ reason: 'no longer needed' })),
};
