import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// The search box of the window, by keys alone: what is typed is found as it is typed, Enter goes there, and back and
// forward retrace the way.

describe.skipIf(noBrowser)('finding things', () => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ demo: true, today: '2026-11-25' });
    await w.call('plans.release', { editionId: 3, day: '2027-02-01' });
  });
  afterAll(() => w?.close());

  const type = async (text: string) => {
    await w.page.keyboard.press('Control+k');
    await w.page.keyboard.type(text);
  };
  const options = () => w.page.locator('.finder').getByRole('option').allInnerTexts();
  /** Types, waits for an option that holds these words, and opens the first option. */
  const open = async (text: string, words: RegExp, heading: string | RegExp) => {
    await type(text);
    await w.page.getByRole('option', { name: words }).first().waitFor();
    expect(await w.page.locator('.finder').getByRole('option', { selected: true }).count()).toBe(1);
    await w.page.keyboard.press('Enter');
    await w.page.getByRole('heading', { level: 1, name: heading }).waitFor();
  };

  it('finds works by words without their accents, and remembers where one was', async () => {
    await w.go('/settings');
    await open('álmanac', /The Salt Almanac/, 'The Salt Almanac');
    await open('oskarsdal knots', /Knots/, 'Knots for Small Hands');
    await w.page.keyboard.press('Control+k');
    await w.page.getByRole('option', { name: /Salt Almanac/ }).waitFor();
    expect((await options())[0]).toContain('Knots for Small Hands');
    await w.picture('finding-recent');
    await w.page.keyboard.press('Escape');
  });

  it('finds a number by its last four digits, with or without hyphens, labelled or as an address', async () => {
    const { works } = await w.call('works.list', { search: 'salt' });
    const hyphenated = works[0]?.formats.find((format) => format.hyphenated)?.hyphenated ?? '';
    const bare = hyphenated.replaceAll('-', '');
    for (const text of [bare.slice(-4), hyphenated, bare, `ISBN ${hyphenated}`, `urn:isbn:${bare}`]) {
      await type(text);
      await w.page
        .getByRole('option', { name: new RegExp(hyphenated) })
        .first()
        .waitFor();
    }
    expect(await w.faults()).toEqual([]);
    await w.picture('finding-number');
    await w.page.keyboard.press('Enter');
    await w.page.getByRole('heading', { level: 1, name: 'The Salt Almanac' }).waitFor();
    expect(w.page.url()).toMatch(/format=\d+/);
  });

  it('says where a number stands that no format took yet', async () => {
    await type('979-8-969999-50-3');
    await w.page.getByRole('option', { name: /free/ }).waitFor();
    await w.page.keyboard.press('Escape');
    await w.page.keyboard.press('Escape');
  });

  it('leads to people, channels and tasks', async () => {
    await open('quayle', /Ilse Quayle/, 'Catalogue');
    await w.page.getByRole('link', { name: 'Knots for Small Hands' }).waitFor();
    await type('lantern');
    await w.page.getByRole('option', { name: /^Lanternshelf/ }).click();
    await w.page.locator('dialog[open]').waitFor();
    await w.page.keyboard.press('Escape');
    const { tasks } = await w.call('tasks.list', {});
    const task = tasks.find((one) => one.needs.length === 0);
    await type(task?.title ?? '');
    await w.page.getByRole('group', { name: 'Tasks' }).getByRole('option').first().click();
    await w.page.getByRole('heading', { level: 1, name: 'Agenda' }).waitFor();
    await expect
      .poll(() => w.page.evaluate(() => document.activeElement?.closest('[data-task]') !== null))
      .toBe(true);
  });

  it('goes back and forward', async () => {
    await w.page.keyboard.press('Alt+ArrowLeft');
    await w.page.getByRole('heading', { level: 1, name: 'Channels' }).waitFor();
    await w.page.getByRole('button', { name: 'Forward' }).click();
    await w.page.getByRole('heading', { level: 1, name: 'Agenda' }).waitFor();
    expect(w.complaints).toEqual([]);
  });
});
