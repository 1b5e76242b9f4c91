import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// Every screen of the demo at two widths, light and dark: nothing for axe to find, nothing wider than the window, no
// complaint of the page; and the pictures to look at in test-output/.

const SCREENS = [
  '/catalogue',
  '/work/2',
  '/numbers',
  '/channels',
  '/agenda',
  '/audit',
  '/journal',
  '/settings',
];

describe.skipIf(noBrowser).each([
  { width: 1280, height: 800, dark: false },
  { width: 390, height: 844, dark: true },
])('at $width × $height, dark: $dark', (size) => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ ...size, demo: true, today: '2026-11-25' });
    await w.call('plans.release', { editionId: 3, day: '2027-02-01' });
  });
  afterAll(() => w?.close());

  it.each(SCREENS)('%s is clean', async (path) => {
    await w.go(path);
    await w.page.waitForLoadState('networkidle').catch(() => {});
    await w.page.locator('.waiting').waitFor({ state: 'detached' });
    await w.picture(`screen${path.replaceAll('/', '-')}-${size.width}${size.dark ? '-dark' : ''}`);
    expect(await w.faults()).toEqual([]);
    const [wide, window] = await w.page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
    expect(wide).toBeLessThanOrEqual(window ?? 0);
    expect(w.complaints).toEqual([]);
  });

  it('says on every screen that the demo’s numbers are invented', async () => {
    for (const path of SCREENS) {
      await w.go(path);
      expect(
        await w.page.getByText('its numbers are invented and must never be printed').first().isVisible(),
      ).toBe(true);
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
