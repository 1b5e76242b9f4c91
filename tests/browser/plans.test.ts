import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { acts } from '../support/acts.ts';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// Steps of a plan edited in Settings, the release looked at before it is planned, and a task that slips.

let w: Window;
let act: ReturnType<typeof acts>;
let work: number;

beforeAll(async () => {
  if (noBrowser) return;
  w = await openWindow({ today: '2026-03-02', demo: true });
  act = acts(w);
  const { works } = await w.call('works.list', {});
  work = works.find(({ title }) => title === 'The Salt Almanac')?.id ?? 0;
});
afterAll(async () => {
  await w?.close();
});
afterEach(async ({ task }) => {
  if (task.result?.state === 'fail') await w?.picture('plans-failed');
});

/** Puts the message of the step before away, which would lie behind the next dialog. */
const quiet = async () => {
  const dismiss = w.page.getByRole('button', { name: 'Dismiss the message' });
  if (await dismiss.isVisible()) await dismiss.click();
};
const edition = async () => (await w.call('works.get', { id: work })).editions[0];
const tasks = async () => (await w.call('tasks.list', { count: 2000 })).tasks;

describe.skipIf(noBrowser)('plans on the screens', () => {
  it('take a step of your own, saved as a version', async () => {
    await w.go('/settings');
    await w.press('Edit the steps: Release');
    await w.press('Add a step');
    await act.field('What is to be done').fill('Book the hall for {edition}');
    await act.field('Working days').fill('15');
    await w.press('Keep this step');
    expect(await w.faults()).toEqual([]);
    await w.press('Save as a new version');
    await act.closed();
    const { versions } = await w.call('templates.planVersions', { kind: 'release' });
    expect(versions[0]?.version).toBe(1);
    expect(versions[0]?.steps.at(-1)).toMatchObject({ key: 'book-the-hall-for', kind: 'own', days: 15 });
  });

  it('refuse a text with a word nothing fills, and keep what is typed', async () => {
    await w.press('Edit the text: Reminder');
    await act.field('Text').fill('Dear {chanel}');
    await w.press('Save as a new version');
    await w.page.getByText('Line 1, sign 6: nothing fills {chanel}.').first().waitFor();
    await act.field('Text').fill('Dear {channel}');
    await w.press('Save as a new version');
    await act.closed();
    const { texts } = await w.call('templates.texts', {});
    expect(texts.find(({ kind }) => kind === 'chase')).toMatchObject({ version: 1, body: 'Dear {channel}' });
  });

  it('show whether a release day can be kept before the release is planned', async () => {
    await w.go(`/work/${work}`);
    await quiet();
    await w.press('Plan the release: The Salt Almanac, 2nd edition');
    await act.field('Day of the release').fill('2026-03-05');
    await w.page.getByText(/5 Mar 2026 cannot be kept/).waitFor();
    await w.picture('plans-preview');
    expect(await w.faults()).toEqual([]);
    await act.field('Day of the release').fill('2026-06-05');
    await w.page.getByText('5 Jun 2026 can be kept.').waitFor();
    await w.press('Plan the release');
    await w.press('Done');
    expect((await edition())?.plans.map(({ kind, day }) => [kind, day])).toEqual([['release', '2026-06-05']]);
    const hall = (await tasks()).find(({ kind }) => kind === 'own');
    expect([hall?.title, hall?.dueOn]).toEqual([
      'Book the hall for The Salt Almanac, 2nd edition',
      '2026-05-15',
    ]);
  });

  it('show what moves when a task slips, and move the release when that is chosen', async () => {
    const submit = (await tasks()).find(({ kind }) => kind === 'submit');
    const { earliest } = await w.call('plans.previewSlip', { taskId: submit?.id ?? 0, dueOn: '2026-06-01' });
    await w.go('/agenda');
    await quiet();
    await w.press(`Other day: ${submit?.title}`);
    await act.field('Due on').fill('2026-06-01');
    await w.page.getByText(/too early/).waitFor();
    await w.picture('plans-slip');
    expect(await w.faults()).toEqual([]);
    await w.page.locator('dialog[open] input[name="moveTo"]').check();
    await w.press('Set the day');
    await act.closed();
    expect((await edition())?.plans[0]?.day).toBe(earliest);
    const days = (await tasks()).filter(({ kind }) => kind === 'submit').map(({ dueOn }) => dueOn);
    expect(new Set(days)).toEqual(new Set(['2026-06-01']));
  });

  it('are kept as a calendar file when that is asked for', async () => {
    await quiet();
    await w.press('Calendar file…');
    await act.field('Keep a file up to date').selectOption('tasks');
    expect(await w.faults()).toEqual([]);
    await w.press('Save this choice');
    await act.closed();
    expect((await w.call('settings.get', {})).calendar).toBe('tasks');
    expect(w.complaints).toEqual([]);
  });
});
