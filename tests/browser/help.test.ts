import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { TOPIC_IDS, TOPICS } from '../../renderer/screens/help/topics.ts';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// The help: every page at three widths, light and dark; its search; and the ways to it from the screens, by keyboard.

let w: Window;

beforeAll(async () => {
  if (noBrowser) return;
  w = await openWindow({ demo: true, today: '2026-11-25' });
});
afterAll(async () => {
  await w?.close();
});
afterEach(async ({ task }) => {
  if (task.result?.state === 'fail') await w?.picture('help-failed');
});

const heading = (name: string) => w.page.getByRole('heading', { name, level: 1, exact: true }).waitFor();
const fitsTheWindow = () => w.page.evaluate(() => document.documentElement.scrollWidth <= innerWidth);

describe.skipIf(noBrowser)('the help', () => {
  // Axe looks at both themes at the widest and the narrowest; between them the width alone can differ.
  it.each([
    [1280, 'light', true],
    [768, 'light', false],
    [768, 'dark', false],
    [390, 'dark', true],
  ] as const)('is clean on every page at %i px, %s', async (width, colorScheme, withAxe) => {
    await w.page.setViewportSize({ width, height: 844 });
    await w.page.emulateMedia({ colorScheme });
    for (const topic of [undefined, ...TOPIC_IDS]) {
      await w.go(topic === undefined ? '/help' : `/help/${topic}`);
      await heading(topic === undefined ? 'Help' : TOPICS[topic].title);
      await w.picture(`help-${topic ?? 'contents'}-${width}-${colorScheme}`);
      expect([topic, await fitsTheWindow()]).toEqual([topic, true]);
      if (withAxe) expect([topic, await w.faults()]).toEqual([topic, []]);
    }
    expect(w.complaints).toEqual([]);
  });

  it('is clean with its tables of rules open', async () => {
    for (const topic of ['editions', 'audit'] as const) {
      await w.go(`/help/${topic}`);
      await w.page.locator('.help summary').first().click();
      await w.picture(`help-${topic}-rules-390`);
      expect(await w.faults()).toEqual([]);
      expect(await fitsTheWindow()).toBe(true);
    }
    const { rules } = await w.call('audit.rules', {});
    expect(await w.page.locator('.help tbody tr').count()).toBe(rules.length);
  });

  it('shows the rules of locks as they are applied', async () => {
    await w.page.setViewportSize({ width: 1280, height: 800 });
    await w.page.emulateMedia({ colorScheme: 'light' });
    await w.go('/help/locks');
    const { points } = await w.call('locks.rules', {});
    for (const fields of points.flatMap(({ edition, format, listing }) => [edition, format, listing]))
      if (fields.length > 0) await w.page.getByText(fields.join(', '), { exact: true }).first().waitFor();
  });

  it('opens by F1 and by g p, is searched, and leads to a section', async () => {
    await w.go('/catalogue');
    await w.page.keyboard.press('F1');
    await heading('Help');
    await w.page.keyboard.press('/');
    await w.page.keyboard.type('returns last day');
    await w.page.getByText('One section holds what you typed.').waitFor();
    await w.page.getByRole('link', { name: 'What remains' }).press('Enter');
    await heading('Retiring an edition');
    await expect.poll(() => w.page.evaluate(() => document.activeElement?.textContent)).toBe('What remains');
    await w.go('/catalogue');
    await w.page.keyboard.press('g');
    await w.page.keyboard.press('p');
    await heading('Help');
  });

  it('is reached by keyboard from where a matter is dealt with', async () => {
    for (const [path, link, title] of [
      ['/numbers', 'About numbers', 'Numbers'],
      ['/audit', 'About the audit', 'The audit and the journal'],
      ['/work/2/desk/2', 'About retiring an edition', 'Retiring an edition'],
      ['/work/2', 'Why does this lock?', 'What locks, and why'],
    ] as const) {
      await w.go(path);
      await w.page.getByRole('link', { name: link }).first().press('Enter');
      await heading(title);
    }
  });

  it('is read in a dialog without leaving it', async () => {
    await w.go('/work/2');
    await w.press(/^Plan the (release|retirement)/);
    const fold = w.page.locator('dialog[open] summary').last();
    await fold.press('Enter');
    await w.page
      .locator('dialog[open]')
      .getByText(/More under Help/)
      .waitFor();
    expect(await w.faults()).toEqual([]);
    await w.picture('help-in-a-dialog');
  });
});
