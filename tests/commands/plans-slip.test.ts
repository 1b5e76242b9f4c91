import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let test: TestCatalogue;
let editionId: number;
let planId: number;
let earliest: string;

beforeEach(() => {
  test = openTestCatalogue();
  test.call('catalogue.demo', {});
  const work = test.call('works.list', {}).works.find(({ title }) => title === 'The Salt Almanac')?.id ?? 0;
  editionId = test.call('works.get', { id: work }).editions[0]?.id ?? 0;
  const preview = test.call('plans.previewRelease', { editionId });
  earliest = preview.earliest;
  planId = test.call('plans.release', { editionId, day: preview.withoutHaste }).planId;
});
afterEach(() => test.close());

const tasks = () => test.call('tasks.list', { editionId, count: 2000 }).tasks;
const of = (kind: string) => tasks().find((task) => task.kind === kind) ?? { id: 0, dueOn: '' };
const plan = () =>
  test.file &&
  test.call('plans.previewSlip', { taskId: of('finish-content').id, dueOn: of('finish-content').dueOn });

describe('the preview of a release', () => {
  it('is the plan that is then made, and says which days cannot be kept', () => {
    const day = '2026-07-03';
    test.call('plans.drop', { planId, reason: 'To look again.' });
    const preview = test.call('plans.previewRelease', { editionId, day });
    expect(preview.shortBy).toBe(0);
    test.call('plans.release', { editionId, day });
    const made = tasks().map(({ title, dueOn }) => [title, dueOn]);
    expect(preview.tasks.map(({ title, dueOn }) => [title, dueOn]).toSorted()).toEqual(made.toSorted());
    const early = test.call('plans.previewRelease', { editionId, day: '2026-03-03' });
    expect(early.shortBy).toBeGreaterThan(0);
    expect(early.earliest).toBe(earliest);
  });
});

describe('a task that slips', () => {
  it('shows what moves and that the day still holds, and is then squeezed', () => {
    const text = of('finish-content');
    const dueOn = of('make-interior').dueOn;
    const preview = test.call('plans.previewSlip', { taskId: text.id, dueOn });
    expect(preview).toMatchObject({ shortBy: 0, canSqueeze: true });
    expect(preview.moves.map(({ id }) => id)).toContain(text.id);
    test.call('plans.slip', { taskId: text.id, dueOn });
    for (const { id, to } of preview.moves) expect(tasks().find((task) => task.id === id)?.dueOn).toBe(to);
  });

  it('says by how much the day cannot be kept, and moves the release with everything', () => {
    const submit = of('submit');
    const dueOn = of('approve').dueOn;
    const preview = test.call('plans.previewSlip', { taskId: submit.id, dueOn });
    expect(preview.shortBy).toBeGreaterThan(0);
    const moved = test.call('plans.slip', { taskId: submit.id, dueOn, moveTo: preview.earliest });
    expect(moved.day).toBe(preview.earliest);
    expect(of('on-sale').dueOn).toBe(preview.earliest);
    const submits = new Set(
      tasks()
        .filter(({ kind }) => kind === 'submit')
        .map((task) => task.dueOn),
    );
    expect([...submits]).toEqual([dueOn]);
    expect(plan()).toMatchObject({ day: preview.earliest, shortBy: 0 });
  });

  it('is refused where nothing fits in before the release, and for what has its day from the plan', () => {
    const late = test.refusal('plans.slip', { taskId: of('submit').id, dueOn: '2027-01-04' });
    expect(late.message).toContain('the earliest release day is');
    expect(test.refusal('plans.previewSlip', { taskId: of('on-sale').id, dueOn: '2027-01-04' }).code).toBe(
      'STEP_REFUSED',
    );
  });
});

describe('plans that are late', () => {
  it('name what is late and how far the release day has moved out of reach', () => {
    expect(test.call('plans.late', {}).plans).toEqual([]);
    test.setToday(of('submit').dueOn);
    const [late] = test.call('plans.late', { editionId }).plans;
    expect(late?.late.map(({ title }) => title)).toContain(
      'Finish the text and everything that goes into the files',
    );
    expect(late?.shortBy).toBe(0);
    test.setToday(of('approve').dueOn);
    expect(test.call('plans.late', {}).plans[0]?.shortBy).toBeGreaterThan(0);
  });
});

describe('lead times of channels', () => {
  it('are told from the recorded steps beside what is recorded', () => {
    const { channels } = test.call('channels.leadTimes', {});
    expect(channels.length).toBeGreaterThan(0);
    for (const channel of channels)
      if (channel.toProof) expect(channel.toProof.slowest).toBeGreaterThanOrEqual(channel.toProof.median);
  });
});
