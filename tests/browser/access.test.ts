import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';
import { everyScreen, openScreen, type Screen, sidewaysOf } from '../support/screens.ts';

// Large letters, reduced motion, the system's own colours, and messages while a dialog is open.

describe.skipIf(noBrowser)('for everybody', () => {
  let w: Window;
  let screens: Screen[] = [];
  beforeAll(async () => {
    w = await openWindow({ demo: true, today: '2026-11-25' });
    screens = await everyScreen(w);
  });
  afterAll(() => w?.close());

  it('every screen fits at 200 %: half as many pixels, or letters twice as large', async () => {
    const found: string[] = [];
    for (const screen of screens) {
      // A window of 1280 × 800 at 200 % holds 640 × 400 pixels (WCAG 2.2, 1.4.10 and 1.4.4).
      await w.page.setViewportSize({ width: 640, height: 400 });
      await openScreen(w, screen);
      const zoomed = await sidewaysOf(w);
      await w.page.setViewportSize({ width: 1280, height: 800 });
      await w.page.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
      });
      const enlarged = await sidewaysOf(w);
      if (enlarged > 0) await w.picture(`enlarged-${screen.name}`);
      await w.page.evaluate(() => {
        document.documentElement.style.fontSize = '';
      });
      if (zoomed > 0) found.push(`${screen.name}: ${zoomed} px too wide at 640 px`);
      if (enlarged > 0) found.push(`${screen.name}: ${enlarged} px too wide with large letters`);
    }
    expect(found).toEqual([]);
  });

  it('nothing moves where less motion is asked for, and something does where it is not', async () => {
    const moving = () =>
      w.page.evaluate(
        () =>
          [...document.querySelectorAll('*')].filter((element) => {
            const style = getComputedStyle(element);
            const longest = (list: string) => Math.max(...list.split(',').map(Number.parseFloat));
            return longest(style.transitionDuration) > 0 || style.animationName !== 'none';
          }).length,
      );
    await w.go('/work/2');
    await w.quiet();
    await w.page.emulateMedia({ reducedMotion: 'reduce' });
    expect(await moving()).toBe(0);
    await w.page.emulateMedia({ reducedMotion: 'no-preference' });
    expect(await moving()).toBeGreaterThan(0);
    await w.page.emulateMedia({ reducedMotion: 'reduce' });
  });

  it('pictures are drawn in the system’s own colours where it sets them', async () => {
    await w.page.emulateMedia({ forcedColors: 'active' });
    await w.go('/work/2');
    await w.page.locator('.drawing-svg .stretch-live').first().waitFor();
    const [fill, highlight, ink, text] = await w.page.evaluate(() => {
      const probe = document.body.appendChild(document.createElement('i'));
      const colourOf = (name: string) => {
        probe.style.color = name;
        return getComputedStyle(probe).color;
      };
      const styleOf = (selector: string) => {
        const element = document.querySelector(selector);
        return element ? getComputedStyle(element).fill : '';
      };
      const seen = [styleOf('.drawing-svg .stretch-live'), colourOf('Highlight')];
      seen.push(styleOf('.drawing-svg text'), colourOf('CanvasText'));
      probe.remove();
      return seen;
    });
    await w.page.locator('.drawing').first().scrollIntoViewIfNeeded();
    await w.picture('forced-colours-life');
    expect(fill).toBe(highlight);
    expect(ink).toBe(text);
    await w.go('/numbers');
    await w.page.locator('.cell').first().waitFor();
    await w.picture('forced-colours-numbers');
    await w.page.emulateMedia({ forcedColors: 'none' });
  });

  it('a message is read out within the dialog that is open, which hides all else', async () => {
    await w.go('/work/2');
    await w.page
      .getByRole('button', { name: /^Bar code: / })
      .first()
      .click();
    const within = w.page.locator('dialog[open] [role=status][aria-live]');
    await Promise.all([w.page.waitForEvent('download'), w.press('Save as SVG')]);
    await expect.poll(async () => (await within.allTextContents()).join()).toMatch(/goes to your downloads/);
    await w.page.keyboard.press('Escape');
    await w.page.locator('dialog[open]').waitFor({ state: 'detached' });
    expect(w.complaints).toEqual([]);
  });
});
