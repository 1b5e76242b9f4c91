import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';
import { focusedOn } from '../support/focus.ts';
import { everyScreen, NAMES, openScreen, type Screen, sidewaysOf } from '../support/screens.ts';

// What people set in their system or browser: large text (WCAG 2.2, 1.4.4 and 1.4.10), less motion (2.3.3), and
// colours of their own. 1280 × 800 at 200 % is a window of 640 × 400 CSS pixels; 320 is what 1.4.10 asks for.

let w: Window;
let screens: Screen[] = [];

beforeAll(async () => {
  if (noBrowser) return;
  w = await openWindow({ demo: true, today: '2026-11-25' });
  screens = await everyScreen(w);
});
afterAll(() => w?.close());

const open = async (name: string) => {
  const screen = screens.find((one) => one.name === name);
  if (!screen) throw new Error(`There is no screen '${name}'.`);
  await openScreen(w, screen);
};

/** Texts and controls that stick out of the window without a frame of their own that scrolls. */
function cutOff(): Promise<string[]> {
  return w.page.evaluate(() => {
    const framed = (element: Element) => {
      for (let at: Element | null = element; at; at = at.parentElement)
        if (/auto|scroll|hidden|clip/.test(getComputedStyle(at).overflowX)) return true;
      return false;
    };
    return [...document.querySelectorAll<HTMLElement>('h1, h2, h3, p, li, button, input, select, a, label')]
      .filter((each) => each.checkVisibility() && each.getBoundingClientRect().right > innerWidth + 1)
      .filter((each) => !framed(each) && !each.matches('.visually-hidden, .visually-hidden *'))
      .map((each) => `${each.tagName} '${(each.textContent ?? '').slice(0, 40)}'`);
  });
}

describe.skipIf(noBrowser)('large text', () => {
  it.each(NAMES)('%s flows anew at 200 % and at 320 pixels', async (name) => {
    await open(name);
    for (const size of [
      { width: 640, height: 400 },
      { width: 320, height: 256 },
    ]) {
      await w.page.setViewportSize(size);
      expect(await sidewaysOf(w)).toBeLessThanOrEqual(0);
      expect(await cutOff()).toEqual([]);
      await w.picture(`zoom-${name}-${size.width}`);
    }
  });
});

/** Everything that moves longer than 10 ms: where, and for how many seconds. */
function moving(): Promise<string[]> {
  const longest = () => {
    const seconds = (list: string) => Math.max(...list.split(',').map((each) => Number.parseFloat(each)));
    return [...document.querySelectorAll('*')].flatMap((each) => {
      const style = getComputedStyle(each);
      const moves = style.transitionProperty === 'none' ? 0 : seconds(style.transitionDuration);
      const plays = style.animationName === 'none' ? 0 : seconds(style.animationDuration);
      return Math.max(moves, plays) > 0.01 ? [`${each.tagName}.${each.getAttribute('class')}`] : [];
    });
  };
  return w.page.evaluate(longest);
}

describe.skipIf(noBrowser)('motion', () => {
  it('is there where it is wanted, and nowhere where less of it is asked for', async () => {
    await w.page.setViewportSize({ width: 1280, height: 800 });
    await open('work');
    await w.page.emulateMedia({ reducedMotion: 'no-preference' });
    expect((await moving()).length).toBeGreaterThan(0);
    await w.page.emulateMedia({ reducedMotion: 'reduce' });
    expect(await moving()).toEqual([]);
    for (const name of ['catalogue', 'catalogue-glance', 'agenda', 'numbers', 'settings']) {
      await open(name);
      expect(await moving()).toEqual([]);
    }
    await open('channels');
    await w.press('Add a channel…');
    expect(await moving()).toEqual([]);
    await w.page.keyboard.press('Escape');
  });
});

describe.skipIf(noBrowser)('forced colours', () => {
  beforeAll(async () => {
    await w?.page.setViewportSize({ width: 1280, height: 800 });
    await w?.page.emulateMedia({ forcedColors: 'active' });
  });

  it('leaves every standing its word and a shape in a colour that is not the ground’s', async () => {
    for (const name of ['catalogue', 'catalogue-formats', 'work', 'desk', 'audit'] as const) {
      await open(name);
      // The rows of a long table come after the screen itself.
      await w.page.locator('.standing').first().waitFor();
      await w.picture(`forced-${name}`);
      const bare = await w.page.evaluate(() => {
        const ground = getComputedStyle(document.body).backgroundColor;
        return [...document.querySelectorAll('.standing')].flatMap((each) => {
          const shape = each.querySelector('svg');
          const drawn = shape
            ? [...shape.querySelectorAll('*')].some((part) => {
                const { fill, stroke } = getComputedStyle(part);
                return [fill, stroke].some((colour) => colour !== 'none' && colour !== ground);
              })
            : false;
          return drawn && (each.textContent ?? '').trim() !== '' ? [] : [each.outerHTML.slice(0, 120)];
        });
      });
      expect(bare).toEqual([]);
      expect(await w.page.locator('.standing').count(), name).toBeGreaterThan(0);
    }
  });

  it('keeps the focus visible and buttons framed', async () => {
    await open('work');
    for (let count = 0; count < 40; count += 1) {
      await w.page.keyboard.press('Tab');
      const at = await focusedOn(w.page);
      if (!at.lost) expect(at).toMatchObject({ visible: true });
    }
    await w.picture('forced-focus');
    const unframed = await w.page.evaluate(() =>
      [...document.querySelectorAll('.button-plain, .button-primary')]
        .filter((each) => each.checkVisibility())
        .filter((each) => Number.parseFloat(getComputedStyle(each).borderTopWidth) < 1)
        .map((each) => each.textContent),
    );
    expect(unframed).toEqual([]);
  });
});
