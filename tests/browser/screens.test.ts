import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';
import { everyScreen, NAMES, openScreen, type Screen, sidewaysOf } from '../support/screens.ts';

// Every screen and page of the demo at three widths, light and dark: nothing for axe to find, nothing wider than the
// window, no complaint of the page; and the pictures to look at in test-output/. Each is opened once and looked at in
// all six ways, as a window that is made smaller and a system that turns dark.

const SIZES = [
  { width: 1280, height: 800 },
  { width: 768, height: 1024 },
  { width: 390, height: 844 },
];
const SCHEMES = ['light', 'dark'] as const;

describe.skipIf(noBrowser)('every screen at three widths, light and dark', () => {
  let w: Window;
  let screens: Screen[] = [];
  beforeAll(async () => {
    w = await openWindow({ demo: true, today: '2026-11-25' });
    screens = await everyScreen(w);
  });
  afterAll(() => w?.close());

  /** What is wrong with the screen that is open, in all six ways, each as one sentence. */
  async function wrongs(name: string): Promise<string[]> {
    const found: string[] = [];
    for (const size of SIZES) {
      await w.page.setViewportSize(size);
      for (const colorScheme of SCHEMES) {
        await w.page.emulateMedia({ colorScheme });
        const at = `${size.width}-${colorScheme}`;
        await w.picture(`screen-${name}-${at}`);
        const sideways = await sidewaysOf(w);
        if (sideways > 0) found.push(`${at}: ${sideways} px wider than the window`);
        found.push(...(await w.faults()).map((fault) => `${at}: ${fault}`));
      }
    }
    return found;
  }

  it.each(NAMES)('%s is clean', async (name) => {
    const screen = screens.find((one) => one.name === name);
    if (!screen) throw new Error(`There is no screen '${name}'.`);
    await openScreen(w, screen);
    expect(await wrongs(name)).toEqual([]);
    expect(w.complaints).toEqual([]);
  });

  it('says on every screen that the demo’s numbers are invented', async () => {
    for (const screen of screens) {
      await openScreen(w, screen);
      await w.page.getByText('its numbers are invented and must never be printed').first().waitFor();
    }
  });

  it('shows a past day read only, and says so', async () => {
    await w.go('/work/2', 'asOf=2020-01-01');
    await w.page
      .getByText(/read only/i)
      .first()
      .waitFor();
    expect(await w.page.getByRole('button', { name: /^(Edit|Add|Plan|Mark|Take)/ }).count()).toBe(0);
    expect(await w.faults()).toEqual([]);
  });
});

describe.skipIf(noBrowser)('with the keyboard alone', () => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ demo: true, today: '2026-11-25' });
  });
  afterAll(() => w?.close());

  const keys = async (...names: string[]) => {
    for (const name of names) await w.page.keyboard.press(name);
  };
  const focused = () =>
    w.page.evaluate(
      () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
    );
  /** Tab until the focus is on what is wanted. */
  const tabTo = async (name: string) => {
    for (let count = 0; count < 120; count += 1) {
      await keys('Tab');
      if ((await focused()) === name) return;
    }
    throw new Error(`The Tab key never reaches '${name}'.`);
  };

  it('jumps between screens and searches', async () => {
    await w.go('/catalogue');
    await keys('g', 'a');
    await w.page.getByRole('heading', { name: 'Agenda', level: 1 }).waitFor();
    await keys('g', 'c');
    await w.page.getByRole('heading', { name: 'Catalogue', level: 1 }).waitFor();
    await keys('/');
    await w.page.keyboard.type('knots');
    await w.page.getByRole('link', { name: 'The Salt Almanac' }).waitFor({ state: 'detached' });
    await tabTo('Knots for Small Hands');
    await keys('Enter');
    await w.page.getByRole('heading', { name: 'Knots for Small Hands', level: 1 }).waitFor();
  });

  it('marks a listing sent after reading what locks, and moves the focus back', async () => {
    await w.go('/work/2');
    await tabTo('Mark sent: Paperback on Printworks Direct');
    await keys('Enter');
    await w.page.locator('dialog[open]').waitFor();
    expect(await w.page.locator('dialog[open]').textContent()).toMatch(/title/i);
    await tabTo('Record sent and lock these fields');
    await keys('Enter');
    await w.page.locator('dialog[open]').waitFor({ state: 'detached' });
    const { editions } = await w.call('works.get', { id: 2 });
    expect(editions[0]?.lock?.channelName).toBe('Printworks Direct');
    expect(await focused()).not.toBe('');
  });

  it('leaves a dialog by Escape with the focus where it was', async () => {
    await w.go('/channels');
    await tabTo('Add a channel…');
    await keys('Enter');
    await w.page.locator('dialog[open]').waitFor();
    await keys('Escape');
    await w.page.locator('dialog[open]').waitFor({ state: 'detached' });
    expect(await focused()).toBe('Add a channel…');
  });
});
