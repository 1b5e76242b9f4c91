import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { acts } from '../support/acts.ts';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// The guided start, from an empty catalogue to a format with its number; the database is read after each step.

let w: Window;
let act: ReturnType<typeof acts>;

beforeAll(async () => {
  if (noBrowser) return;
  w = await openWindow({ today: '2026-11-25' });
  act = acts(w);
});
afterAll(async () => {
  await w?.close();
});
afterEach(async ({ task }) => {
  if (task.result?.state === 'fail') await w?.picture('first-run-failed');
});

const step = (title: string, word: string) =>
  w.page.getByRole('heading', { level: 3, name: new RegExp(`${title} ${word}$`) }).waitFor();

describe.skipIf(noBrowser)('the guided start', () => {
  it('is clean at three widths, and can be put away and shown again', async () => {
    const themes = ['dark', 'light'] as const;
    for (const [width, colorScheme] of [390, 768, 1280].flatMap((wide) =>
      themes.map((theme) => [wide, theme] as const),
    )) {
      await w.page.setViewportSize({ width, height: 844 });
      await w.page.emulateMedia({ colorScheme });
      await step('Name your publisher and imprint', 'next');
      await w.picture(`first-run-${width}-${colorScheme}`);
      expect(await w.faults()).toEqual([]);
      expect(await w.page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    }
    await w.press('Put the guide away');
    await w.page.getByRole('heading', { name: 'Guided start' }).waitFor({ state: 'detached' });
    expect(await w.page.getByRole('button', { name: 'Load the demo' }).count()).toBe(1);
    expect(await w.page.locator('a[href*="/catalogue/import"]').count()).toBe(1);
    await w.press('Show the guided start');
    await step('Name your publisher and imprint', 'next');
  });

  it('skips a step and takes it up again', async () => {
    await w.press(/^Skip this step.*Name your publisher/);
    await step('Record your ISBNs', 'next');
    await w.press(/^Do this step after all.*Name your publisher/);
    await step('Name your publisher and imprint', 'next');
  });

  it('refuses an empty name beside its field, and keeps publisher and imprint', async () => {
    await w.press('Keep these names');
    await w.page.getByText('Write the name of your publisher.').first().waitFor();
    await w.page.getByLabel('Publisher', { exact: true }).fill('Halyard & Fen');
    await w.press('Keep these names');
    await step('Name your publisher and imprint', 'done');
    const { publisher, imprint } = await w.call('settings.get', {});
    expect([publisher, imprint]).toEqual(['Halyard & Fen', 'Halyard & Fen']);
  });

  it('records block, work and format, and goes away with the first number taken', async () => {
    await w.press('Record a block…');
    await act.field(/^Prefix/).fill('979-8-969999');
    await w.press('Record the block');
    await act.closed();
    await step('Record your ISBNs', 'done');
    await w.press('Record a work…');
    await act.field('Title').fill('The Salt Almanac');
    await act.field('Name 1').fill('Maren Oskarsdal');
    await w.press('Record the work');
    await act.closed();
    await step('Make your first work', 'done');
    await w.press('Add a format…');
    await act.field('Product form').selectOption('ED');
    await act.field('File format').selectOption('E101');
    await w.press('Add the format');
    await act.closed();
    await w.picture('first-run-number');
    expect(await w.faults()).toEqual([]);
    await w.press('Take its number…');
    await w.press('Take this number for ever');
    await act.closed();
    await w.page.getByRole('heading', { name: 'Guided start' }).waitFor({ state: 'detached' });
    const { works } = await w.call('works.list', {});
    const { editions } = await w.call('works.get', { id: works[0]?.id ?? 0 });
    expect(editions.map(({ title, imprint }) => [title, imprint])).toEqual([
      ['The Salt Almanac', 'Halyard & Fen'],
    ]);
    expect(editions[0]?.formats.map(({ form, hyphenated }) => [form, hyphenated])).toEqual([
      ['ED', '979-8-969999-00-8'],
    ]);
    expect(w.complaints).toEqual([]);
  });
});
