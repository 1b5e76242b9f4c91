import { afterEach, beforeEach, expect, test } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-11-25');
  catalogue.call('catalogue.demo', {});
});
afterEach(() => catalogue.close());

const found = (asOf?: string) => [
  ...new Set(catalogue.call('audit.run', { asOf }).findings.map((finding) => finding.rule)),
];

/** First and second edition of the demo's almanac. */
function almanac(): { first: number; second: number } {
  const [row] = catalogue.call('works.list', { search: 'Almanac' }).works;
  const { editions } = catalogue.call('works.get', { id: row?.id ?? 0 });
  const second = editions.find((edition) => edition.number === 2);
  const first = editions.find((edition) => edition.number !== 2);
  return { first: first?.id ?? 0, second: second?.id ?? 0 };
}

/** Goes to the day of the next task and finishes whatever is due and waits for nothing else; null when all is done. */
function nextDay(): string | null {
  const [next] = catalogue.call('tasks.list', { count: 1 }).tasks;
  if (!next) return null;
  catalogue.setToday(next.dueOn);
  for (;;) {
    const due = catalogue
      .call('tasks.list', { to: next.dueOn })
      .tasks.find((task) => task.needs.length === 0);
    if (!due) return next.dueOn;
    catalogue.call('tasks.finish', { id: due.id });
  }
}

test('a release and a retirement that go by their plans are found nowhere but where two editions overlap', () => {
  const { first, second } = almanac();
  const day = '2027-02-01';
  catalogue.call('plans.release', { editionId: second, day });
  expect(found()).toEqual(['retirement-not-planned']);
  catalogue.call('plans.retirement', { editionId: first });
  expect(found()).toEqual([]);
  const seen = new Map<string, string[]>();
  for (let today = nextDay(); today !== null; today = nextDay()) seen.set(today, found());
  expect(seen.size).toBeGreaterThan(5);
  for (const [today, rules] of seen) {
    const allowed = today < day ? [] : ['older-edition-on-sale', 'removal-overdue'];
    expect(
      rules.filter((rule) => !allowed.includes(rule)),
      today,
    ).toEqual([]);
  }
  expect(seen.get(day)).toContain('older-edition-on-sale');
  expect(found()).toEqual([]);
  expect(found('2027-01-31')).toEqual([]);
  expect(found(day)).toEqual(['older-edition-on-sale']);
});

test('a release that is left undone is found on the day after it, with its overdue tasks', () => {
  const { first, second } = almanac();
  catalogue.call('plans.release', { editionId: second, day: '2027-02-01' });
  catalogue.call('plans.retirement', { editionId: first });
  catalogue.setToday('2027-02-01');
  expect(found()).toEqual(['task-overdue']);
  catalogue.setToday('2027-02-02');
  expect(found()).toEqual(['release-day-passed', 'task-overdue']);
});
