import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';
import { type Focused, focusedOn } from '../support/focus.ts';

// The main job by keys alone, from an empty catalogue to a listing that is sent. After every key the focus is on
// something, and it is seen; the database is read at the end.

const TODAY = '2026-03-02';
let w: Window;

beforeAll(async () => {
  if (noBrowser) return;
  w = await openWindow({ today: TODAY });
});
afterAll(() => w?.close());
afterEach(async ({ task }) => {
  if (task.result?.state === 'fail') await w?.picture('keyboard-failed');
});

/** Where the focus has settled: a step that is being recorded may move it a moment later. */
async function settled(): Promise<Focused> {
  await expect.poll(async () => (await focusedOn(w.page)).lost, { timeout: 5_000 }).toBe(false);
  return focusedOn(w.page);
}

/** Presses one key and sees to it that the focus is on something and is seen. */
async function key(name: string): Promise<Focused> {
  await w.page.keyboard.press(name);
  const at = await settled();
  if (!at.visible)
    throw new Error(`After ${name} nobody sees that ${at.element} '${at.name}' has the focus.`);
  return at;
}

/** Moves by Tab until the focus is on what is called so. */
async function tabTo(wanted: RegExp): Promise<void> {
  for (let count = 0; count < 80; count += 1) {
    // From the last stop Tab leads to the browser's own, which the page sees as no focus.
    await w.page.keyboard.press('Tab');
    const at = await focusedOn(w.page);
    if (at.lost) continue;
    if (!at.visible) throw new Error(`Nobody sees that ${at.element} '${at.name}' has the focus.`);
    if (wanted.test(at.name)) return;
  }
  throw new Error(`Tab never reaches ${wanted}.`);
}

/** Chooses in a list by typing how the choice begins. */
async function choose(label: RegExp, words: string): Promise<void> {
  await tabTo(label);
  await w.page.keyboard.type(words);
}

async function fill(label: RegExp, text: string): Promise<void> {
  await tabTo(label);
  await w.page.keyboard.type(text);
}

const opened = () => w.page.locator('dialog[open]').waitFor();
async function closed(): Promise<void> {
  await w.page.locator('dialog[open]').waitFor({ state: 'detached' });
  await w.quiet();
  expect((await settled()).visible).toBe(true);
}
async function goTo(letter: string, heading: string): Promise<void> {
  await w.page.keyboard.press('g');
  await w.page.keyboard.press(letter);
  await w.page.getByRole('heading', { name: heading, level: 1 }).waitFor();
  await w.quiet();
  expect(await settled()).toMatchObject({ name: heading, visible: true });
}

describe.skipIf(noBrowser)('the main job by keys alone', () => {
  it('records a block', async () => {
    await goTo('n', 'Numbers');
    await tabTo(/^Record your first block/);
    await key('Enter');
    await opened();
    await w.page.keyboard.type('979-8-969999');
    await key('Enter');
    await closed();
    await w.page.getByText('100 of 100 free').first().waitFor();
  });

  it('adds a channel', async () => {
    await goTo('h', 'Channels');
    await tabTo(/^Add (a|your first) channel/);
    await key('Enter');
    await opened();
    await w.page.keyboard.type('Printworks Direct');
    await choose(/^What it takes/, 'Print');
    await tabTo(/^Add the channel/);
    await key('Enter');
    await closed();
    await w.page.getByRole('button', { name: 'Printworks Direct', exact: true }).waitFor();
  });

  it('makes a work', async () => {
    await goTo('c', 'Catalogue');
    await tabTo(/^New work$/);
    await key('Enter');
    await opened();
    await w.page.keyboard.type('The Salt Almanac');
    await fill(/^Name 1/, 'Maren Oskarsdal');
    await tabTo(/^Record the work$/);
    await key('Enter');
    await closed();
    await w.page.getByRole('heading', { name: 'The Salt Almanac', level: 1 }).waitFor();
  });

  it('adds a format and gives it a number', async () => {
    await tabTo(/^Add a format: /);
    await key('Enter');
    await opened();
    await w.page.keyboard.type('Paperback');
    await fill(/^Pages/, '288');
    await tabTo(/^Add the format$/);
    await key('Enter');
    await closed();
    await tabTo(/^Take a number: Paperback$/);
    await key('Enter');
    await opened();
    await tabTo(/^Take this number for ever$/);
    await key('Enter');
    await closed();
  });

  it('lists it on the channel and marks it sent', async () => {
    await tabTo(/^Add a listing: Paperback$/);
    await key('Enter');
    await opened();
    await w.page.keyboard.type('Printworks');
    await tabTo(/^(List|Add) /);
    await key('Enter');
    await closed();
    await tabTo(/^Mark sent: Paperback on Printworks Direct$/);
    await key('Enter');
    await opened();
    await tabTo(/^Record sent/);
    await key('Enter');
    await closed();
  });

  it('has recorded all of it', async () => {
    const { editions } = await w.call('works.get', { id: 1 });
    expect(editions).toHaveLength(1);
    expect(editions[0]?.formats).toMatchObject([
      {
        name: 'Paperback',
        pages: 288,
        hyphenated: '979-8-969999-00-8',
        listings: [{ channelName: 'Printworks Direct', standing: 'sent', firstSentOn: TODAY }],
      },
    ]);
    expect(editions[0]?.lock?.channelName).toBe('Printworks Direct');
    expect(await w.call('catalogue.check', {})).toMatchObject({ ok: true });
    expect(w.complaints).toEqual([]);
  });
});
