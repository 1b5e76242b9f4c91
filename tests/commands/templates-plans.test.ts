import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { PlanStep } from '../../src/contract/plan-templates.ts';
import { DEFAULT_STEPS } from '../../src/rules/plans/default-templates.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

const DAY = '2026-06-05';
let test: TestCatalogue;
/** The second edition of the demo press's almanac, in preparation. */
let edition: number;
let first: number;
let work: number;
const editions = () => test.call('works.get', { id: work }).editions;

beforeEach(() => {
  test = openTestCatalogue();
  test.call('catalogue.demo', {});
  work = test.call('works.list', {}).works.find(({ title }) => title === 'The Salt Almanac')?.id ?? 0;
  const [second, old] = editions();
  edition = second?.id ?? 0;
  first = old?.id ?? 0;
});
afterEach(() => test.close());

const OWN: PlanStep = {
  ...{ key: 'book-hall', kind: 'own', title: 'Book the hall for {edition}', note: '', scope: 'edition' },
  ...{ made: [], proof: [], days: 15, side: 'before', anchor: 'release', needs: [], on: true },
};
const versions = () => test.call('templates.planVersions', { kind: 'release' }).versions;
const save = (steps: PlanStep[]) => test.call('templates.savePlan', { kind: 'release', steps }).version;
const release = () => test.call('plans.release', { editionId: edition, day: DAY }).planId;
const tasks = (editionId = edition) => test.call('tasks.list', { editionId, count: 2000 }).tasks;
const plans = (of = edition) => editions().find(({ id }) => id === of)?.plans ?? [];
/** Finishes what can be finished until nothing of a kind is left. */
function finishUpTo(kind: string): void {
  for (;;) {
    const next = tasks().find((task) => task.needs.length === 0 && task.kind !== kind);
    if (!next || tasks().every((task) => task.kind !== kind)) return;
    test.call('tasks.finish', { id: next.id });
    if (!tasks().some((task) => task.kind === 'submit') && kind === 'check-proof') return;
  }
}

describe('the steps of a plan', () => {
  it('are saved as versions, and a plan remembers the one it was made from', () => {
    expect(versions().map(({ version }) => version)).toEqual([0]);
    expect(save([...DEFAULT_STEPS.release, OWN])).toBe(1);
    release();
    expect(tasks().find(({ title }) => title.startsWith('Book'))).toMatchObject({
      title: 'Book the hall for The Salt Almanac, 2nd edition',
      dueOn: '2026-05-15',
      kind: 'own',
    });
    expect(save([...DEFAULT_STEPS.release])).toBe(2);
    expect(versions().map(({ version, plans }) => [version, plans])).toEqual([
      [2, 0],
      [1, 1],
      [0, 0],
    ]);
    // Moved to another day, the plan still goes by the version it was made from.
    test.call('plans.redate', { planId: plans()[0]?.id ?? 0, day: '2026-07-03' });
    expect(tasks().find(({ title }) => title.startsWith('Book'))?.dueOn).toBe('2026-06-12');
    expect(test.call('templates.putBackPlan', { kind: 'release', version: 1 }).version).toBe(3);
    expect(versions()[0]?.steps.at(-1)?.key).toBe('book-hall');
  });

  it('as delivered become a version when a plan is made from them', () => {
    release();
    expect(versions().map(({ version, plans, note }) => [version, plans, note])).toEqual([
      [1, 1, 'As delivered'],
      [0, 0, ''],
    ]);
  });

  it('are refused with the step and the field, and nothing is kept', () => {
    const refused = test.refusal('templates.savePlan', {
      kind: 'release',
      steps: [...DEFAULT_STEPS.release, { ...OWN, needs: ['book-hall'] }],
    });
    expect(refused).toMatchObject({
      code: 'BAD_INPUT',
      field: `steps.${DEFAULT_STEPS.release.length}.needs`,
    });
    expect(refused.message).toContain('a circle');
    expect(versions().length).toBe(1);
  });
});

describe('a plan', () => {
  it('wants printed proofs of everything printed, or of nothing, when it is told so', () => {
    const kinds = (printedProof: boolean | null) => {
      const { planId } = test.call('plans.release', { editionId: edition, day: DAY, printedProof });
      const titles = tasks()
        .filter(({ kind }) => kind === 'check-proof')
        .map(({ title }) => title);
      test.call('plans.drop', { planId, reason: 'Other proofs.' });
      return titles.filter((title) => title.includes('printed')).length;
    };
    expect(kinds(true)).toBeGreaterThan(kinds(null));
    expect(kinds(false)).toBe(0);
  });

  it('sets the publication date alone when the on-sale date stays open', () => {
    test.call('plans.release', { editionId: edition, day: DAY, onSaleFixed: false });
    const formats = editions()[0]?.formats ?? [];
    expect(formats.map(({ publicationDate, onSaleDate }) => [publicationDate, onSaleDate])).toEqual(
      formats.map(() => [DAY, null]),
    );
    test.call('plans.redate', { planId: plans()[0]?.id ?? 0, day: '2026-07-03' });
    const moved = editions()[0]?.formats ?? [];
    expect(moved.map(({ publicationDate, onSaleDate }) => [publicationDate, onSaleDate])).toEqual(
      formats.map(() => ['2026-07-03', null]),
    );
  });

  it('ends by itself with its last task, and makes room for another', () => {
    const planId = release();
    for (let next = tasks()[0]; next; next = tasks().find((task) => task.needs.length === 0))
      test.call('tasks.drop', { id: next.id, reason: 'Done elsewhere.' });
    expect(test.refusal('plans.redate', { planId, day: DAY }).message).toContain('ended on 2026-03-02');
    expect(release()).toBeGreaterThan(planId);
    expect(plans().map(({ id, ended }) => [id, ended])).toEqual([
      [planId, true],
      [planId + 1, false],
    ]);
  });

  it('asks again for everything a refused listing has to go through', () => {
    release();
    finishUpTo('check-proof');
    const listing =
      tasks().find(({ kind, listingId }) => kind === 'check-proof' && listingId)?.listingId ?? 0;
    const kinds = () =>
      tasks()
        .filter(({ listingId }) => listingId === listing)
        .map(({ kind }) => kind);
    expect(kinds()).not.toContain('submit');
    test.call('listings.move', { id: listing, to: 'unsent', note: 'Refused: the cover is too small.' });
    expect(kinds().toSorted()).toEqual(['approve', 'check-page', 'check-proof', 'on-sale', 'submit']);
    const submit = tasks().find(({ kind, listingId }) => kind === 'submit' && listingId === listing);
    const proof = tasks().find(({ kind, listingId }) => kind === 'check-proof' && listingId === listing);
    expect(proof?.needs.map(({ id }) => id)).toEqual([submit?.id]);
    expect(submit && proof && submit.dueOn <= proof.dueOn).toBe(true);
  });
});

describe('a retirement', () => {
  it("counts the channel's promise from the day it was really asked", () => {
    test.call('plans.retirement', { editionId: first, day: '2026-03-02', beforeReplacement: true });
    const ask = tasks(first).find(({ kind }) => kind === 'ask-removal');
    const due = (kind: string) =>
      tasks(first).find((task) => task.kind === kind && task.listingId === ask?.listingId)?.dueOn ?? '';
    const before = due('chase');
    test.setToday('2026-03-16');
    test.call('tasks.finish', { id: ask?.id ?? 0 });
    const late = (Date.parse(due('chase')) - Date.parse(before)) / 86_400_000;
    expect(late).toBe(14);
    expect(due('confirm-gone') > due('chase')).toBe(true);
  });
});
