import type { CDPSession, Page } from 'playwright-core';
import { openWindow } from '../support/browser.ts';
import { growLarge } from '../support/large.ts';

// The table of formats with 100,000 rows in a browser: how long the page itself works for each frame while it is
// scrolled, walked, sorted and chosen from, and how many frames came late. A frame has 16.7 ms at 60 a second.

const FORMATS = 100_000;
const FRAME_MS = 1000 / 60;

interface Work {
  scriptMs: number;
  styleMs: number;
}

/** What the page has worked until now, whatever else the machine does. */
async function workOf(cdp: CDPSession): Promise<Work> {
  const { metrics } = await cdp.send('Performance.getMetrics');
  const of = (name: string) => 1000 * (metrics.find((metric) => metric.name === name)?.value ?? 0);
  return { scriptMs: of('ScriptDuration'), styleMs: of('LayoutDuration') + of('RecalcStyleDuration') };
}

/** Scrolls by `step` pixels a frame; answers the time from each frame to the next. */
async function scroll(page: Page, step: number, frames: number): Promise<number[]> {
  return page.evaluate(
    async ({ step, frames }) => {
      const frame = document.querySelector('.grid');
      const times: number[] = [];
      let last = performance.now();
      for (let count = 0; count < frames; count += 1) {
        if (frame) frame.scrollTop += step;
        await new Promise(requestAnimationFrame);
        const now = performance.now();
        times.push(now - last);
        last = now;
      }
      return times;
    },
    { step, frames },
  );
}

async function timed(cdp: CDPSession, name: string, act: () => Promise<number[] | number>): Promise<void> {
  const before = await workOf(cdp);
  const began = performance.now();
  const done = await act();
  const took = performance.now() - began;
  const after = await workOf(cdp);
  const count = typeof done === 'number' ? done : done.length;
  const each = (ms: number) => `${(ms / count).toFixed(2)} ms`;
  const times = typeof done === 'number' ? [] : done.toSorted((a, b) => a - b);
  const late =
    times.length === 0
      ? ''
      : `; frames: median ${times[times.length >> 1]?.toFixed(1)} ms, slowest ${times.at(-1)?.toFixed(1)} ms, ` +
        `${times.filter((ms) => ms > 2 * FRAME_MS).length} of ${count} late by one or more`;
  console.log(
    `${name}: script ${each(after.scriptMs - before.scriptMs)}, style and layout ${each(after.styleMs - before.styleMs)}, ` +
      `in all ${each(took)} for each of ${count}${late}`,
  );
}

/** Prints the figures of the table of formats. */
export async function bench(): Promise<void> {
  const w = await openWindow({ today: '2026-11-25' });
  try {
    growLarge(w.launched.file, FORMATS);
    const cdp = await w.page.context().newCDPSession(w.page);
    await cdp.send('Performance.enable');
    const began = performance.now();
    await w.go('/catalogue', 'part=formats');
    await w.page.reload();
    await w.page.locator('.grid-row .standing').first().waitFor({ timeout: 300_000 });
    console.log(`first rows ${(performance.now() - began).toFixed(0)} ms after the page was asked for`);
    await timed(cdp, 'scrolling three rows a frame', () => scroll(w.page, 108, 240));
    await timed(cdp, 'scrolling a page of rows a frame', () => scroll(w.page, 700, 120));
    await timed(cdp, 'flinging a thousand rows a frame', () => scroll(w.page, 36_000, 60));
    await w.page.getByRole('gridcell').nth(1).focus();
    await timed(cdp, 'arrow down', async () => {
      for (let count = 0; count < 100; count += 1) await w.page.keyboard.press('ArrowDown');
      return 100;
    });
    await timed(cdp, 'choosing all', async () => {
      await w.page.keyboard.press('Control+a');
      await w.page.getByText('100,000 formats chosen').waitFor();
      return 1;
    });
    await timed(cdp, 'scrolling with all chosen', () => scroll(w.page, 108, 120));
    await timed(cdp, 'choosing one less', async () => {
      await w.page.keyboard.press('Space');
      await w.page.getByText('99,999 formats chosen').waitFor();
      return 1;
    });
    await timed(cdp, 'sorting by number', async () => {
      await w.page.getByRole('button', { name: 'Number' }).click();
      await w.page.locator('[aria-sort=ascending]', { hasText: 'Number' }).waitFor();
      await w.quiet();
      return 1;
    });
    const broken = await w.page.evaluate(() => {
      const frame = document.querySelector('.grid');
      if (frame) frame.scrollTop = frame.scrollHeight;
      return document.documentElement.scrollWidth - document.documentElement.clientWidth;
    });
    await w.quiet();
    console.log(
      `the page is ${broken} px wider than its window; ${await w.page.getByRole('row').count()} rows are drawn of ${FORMATS.toLocaleString()}`,
    );
  } finally {
    await w.close();
  }
}
