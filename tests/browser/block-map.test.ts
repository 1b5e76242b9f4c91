import { readFileSync } from 'node:fs';
import type { Download } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// The map of a number block as a file and on paper: every number is there, and the sheet says what it is of.

const bytesOf = async (download: Download) => readFileSync((await download.path()) ?? '');
const count = (text: string, what: RegExp) => text.match(what)?.length ?? 0;

describe.skipIf(noBrowser)('the map of a number block', () => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ demo: true, today: '2026-11-25' });
    await w.page.evaluate(() => {
      window.print = () => {};
    });
  });
  afterAll(() => w?.close());

  async function download(button: RegExp): Promise<Download> {
    const [file] = await Promise.all([
      w.page.waitForEvent('download'),
      w.page.getByRole('button', { name: button }).click(),
    ]);
    return file;
  }

  it('is saved as SVG that stands alone and names block, day and what is free', async () => {
    await w.go('/numbers');
    const file = await download(/^Save as SVG: Block/);
    expect(file.suggestedFilename()).toBe('block-979-8-969999-2026-11-25.svg');
    const text = (await bytesOf(file)).toString('utf8');
    const { blocks } = await w.call('blocks.list', {});
    expect(text).toContain('Block 979-8-969999');
    expect(text).toContain(`${blocks[0]?.counts.free} of 100 free`);
    expect(text).toContain('its numbers are invented and must never be printed');
    expect(text).not.toMatch(/href=|class=|var\(--/);
    // One group that is moved into place for every number and every line of the legend.
    expect(count(text, /<g transform="translate/g)).toBe(100 + 4);
    expect(w.complaints).toEqual([]);
  });

  it('is saved as PNG twice as fine', async () => {
    const file = await download(/^Save as PNG: Block/);
    const bytes = await bytesOf(file);
    expect(bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
    expect(bytes.readUInt32BE(16)).toBe(2 * 480);
  });

  it('is printed alone on its page, in the colours of paper also from a dark window', async () => {
    await w.page.emulateMedia({ colorScheme: 'dark' });
    await w.press(/^Print: Block/);
    await w.page.emulateMedia({ media: 'print' });
    const image = w.page.locator('.print-sheet img');
    await image.waitFor();
    expect(await image.getAttribute('alt')).toMatch(/^Block 979-8-969999/);
    expect(decodeURIComponent((await image.getAttribute('src')) ?? '')).toContain(
      'fill="rgb(252, 252, 250)"',
    );
    expect(await w.page.locator('.window').isVisible()).toBe(false);
    expect(await w.page.evaluate(() => getComputedStyle(document.documentElement).colorScheme)).toBe('light');
    await w.picture('block-map-printed');
    await w.page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    await w.page.emulateMedia({ media: 'screen', colorScheme: 'light' });
    expect(await image.count()).toBe(0);
    expect(await w.page.locator('.window').isVisible()).toBe(true);
  });

  it('of a large block is drawn by the thousand, and each thousand by itself', async () => {
    const { id } = await w.call('blocks.add', { prefix: '979-8-8800' });
    await w.go('/numbers', `block=${id}`);
    const whole = (await bytesOf(await download(/^Save as SVG: Block/))).toString('utf8');
    expect(count(whole, /<g transform="translate/g)).toBe(10 + 3);
    await w.go('/numbers', `block=${id}&page=2`);
    const part = await download(/^Save as SVG: Block/);
    expect(part.suggestedFilename()).toMatch(/2000-to-2999-2026-11-25\.svg$/);
    const text = (await bytesOf(part)).toString('utf8');
    expect(count(text, /<g transform="translate/g)).toBe(1000 + 4);
    expect(text).toContain('Numbers 2000 to 2999');
    await w.picture('block-map-thousand');
    expect(await w.faults('.drawing-save')).toEqual([]);
    expect(w.complaints).toEqual([]);
  });
});
