import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';
import { focusedOn } from '../support/focus.ts';
import { everyScreen, type NAMES, openScreen, type Screen, sidewaysOf } from '../support/screens.ts';

// Every dialog of the demo, opened by its button's name and the Enter key: nothing for axe to find at 1280 and 390
// pixels, the focus inside and visible, Tab moves on and comes round, Escape closes it and gives the focus back.

type Name = (typeof NAMES)[number];

const DIALOGS: Partial<Record<Name, RegExp[]>> = {
  catalogue: [/^New work$/, /^As of/, /^Keys$/],
  'catalogue-formats': [/^Filter…$/, /^Columns…$/],
  work: [
    /^Edit work$/,
    /^Add an edition$/,
    /^Edit edition: .*2nd edition$/,
    /^Add a format: .*2nd edition$/,
    /^Is it a new edition\?/,
    /^Copyright page: .*2nd edition$/,
    /^Move to another day: release$/,
    /^Drop: release plan$/,
    /^Edit format: Paperback$/,
    /^Make another format: Paperback$/,
    /^Cover size: Paperback$/,
    /^Cancel format: Paperback$/,
    /^Bar code: Paperback$/,
    /^Record a file: Paperback$/,
    /^Add a listing: Paperback$/,
    /^Mark sent: Paperback on Printworks Direct$/,
    /^Move: Paperback on Printworks Direct$/,
    /^Edit terms: Paperback on Printworks Direct$/,
    /^Remove: Paperback on Printworks Direct$/,
    /^Mark leaving: Paperback on Broadside Wholesale$/,
    /^Ask for removal: Paperback on Broadside Wholesale$/,
  ],
  sheet: [/^Mark sent$/],
  costs: [/^Record a cost$/],
  desk: [/^Set the date: returns of Paperback on Broadside/, /^Ask anyway: E-book/, /^Count copies$/],
  numbers: [
    /^Import the agency’s list…$/,
    /^Record a block…$/,
    /^Reserve numbers…$/,
    /^Edit label, note and cost…$/,
  ],
  channels: [/^Add a channel…$/, /^Broadside Wholesale$/, /^Close Broadside Wholesale$/],
  agenda: [/^Calendar file…$/, /^New task$/, /^Done: Finish the text/, /^Wait: /, /^Other day: /, /^Drop: /],
  journal: [/^Undo this change$/],
  settings: [
    /^Edit the steps: Release$/,
    /^Versions of the steps: Release$/,
    /^Edit the text: Reminder$/,
    /^Versions of the text: Reminder$/,
  ],
};

let w: Window;
let screens: Screen[] = [];

function current(name: string): Screen {
  const screen = screens.find((one) => one.name === name);
  if (!screen) throw new Error(`There is no screen '${name}'.`);
  return screen;
}

/** What is wrong with the open dialog at one width, each as one sentence. */
async function wrongs(width: number): Promise<string[]> {
  await w.page.setViewportSize({ width, height: width === 390 ? 844 : 800 });
  const found = (await w.faults('dialog[open]')).map((fault) => `${width}: ${fault}`);
  const sideways = await sidewaysOf(w);
  if (sideways > 0) found.push(`${width}: the page is ${sideways} px wider than the window`);
  const spill = await w.page.evaluate(() => {
    const body = document.querySelector('dialog[open] .dialog-body');
    return body ? body.scrollWidth - body.clientWidth : 0;
  });
  if (spill > 0) found.push(`${width}: the dialog scrolls sideways by ${spill} px`);
  return found;
}

/** Whether Tab leads through the dialog: every stop is visible, within it, and the first comes round again. */
async function walk(): Promise<string[]> {
  const found: string[] = [];
  const seen = new Set<string>();
  for (let count = 0; count < 12; count += 1) {
    await w.page.keyboard.press('Tab');
    const at = await focusedOn(w.page);
    // Between the last stop and the first the browser has its own.
    if (at.lost) continue;
    const inside = await w.page.evaluate(() => document.activeElement?.closest('dialog[open]') !== null);
    if (!inside) found.push(`Tab leaves the dialog for ${at.element} '${at.name}'`);
    if (!at.visible) found.push(`the focus is not seen on ${at.element} '${at.name}'`);
    seen.add(`${at.element} ${at.name}`);
  }
  if (seen.size < 2) found.push('Tab does not move on');
  return found;
}

describe.skipIf(noBrowser).each(Object.entries(DIALOGS))('dialogs of %s', (name, openers) => {
  beforeAll(async () => {
    if (w === undefined) {
      w = await openWindow({ demo: true, today: '2026-11-25' });
      screens = await everyScreen(w);
    }
    await openScreen(w, current(name));
  });

  afterEach(async ({ task }) => {
    // A dialog that failed is not in the way of the next.
    if (task.result?.state !== 'fail') return;
    await w.page.reload();
    await openScreen(w, current(name));
  });

  it.each(openers)('%s', async (opener) => {
    await w.page.setViewportSize({ width: 1280, height: 800 });
    await w.page.getByRole('button', { name: opener }).first().focus();
    const before = await focusedOn(w.page);
    await w.page.keyboard.press('Enter');
    const dialog = w.page.locator('dialog[open]');
    await dialog.waitFor();
    await w.quiet();
    expect(await w.page.evaluate(() => document.activeElement?.closest('dialog') !== null)).toBe(true);
    expect((await focusedOn(w.page)).visible).toBe(true);
    expect([...(await walk()), ...(await wrongs(1280)), ...(await wrongs(390))]).toEqual([]);
    const title = await dialog.getByRole('heading', { level: 2 }).first().textContent();
    expect(title).not.toBe('');
    await w.picture(`dialog-${(title ?? '').replaceAll(/[^a-z0-9]+/gi, '-').toLowerCase()}-390`);
    await w.page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect((await focusedOn(w.page)).name).toBe(before.name);
    expect(w.complaints).toEqual([]);
  });
});

afterAll(() => w?.close());
