import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { acts } from '../support/acts.ts';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// How the forms help: roles found by typing, rows dragged, messy values pasted.

let w: Window;
let act: ReturnType<typeof acts>;
let work: number;

beforeAll(async () => {
  if (noBrowser) return;
  w = await openWindow({ today: '2026-03-02', demo: true });
  act = acts(w);
  const { works } = await w.call('works.list', {});
  work = works.find(({ title }) => title === 'The Salt Almanac')?.id ?? 0;
  const { channels } = await w.call('channels.list', {});
  const shelf = channels.find(({ name }) => name === 'Lanternshelf');
  await w.call('channels.update', { id: shelf?.id ?? 0, titleLimit: 10 });
});
afterAll(async () => {
  await w?.close();
});
afterEach(async ({ task }) => {
  if (task.result?.state === 'fail') await w?.picture('forms-failed');
});

/** Pastes as the system's clipboard would, over whatever the focused input holds. */
async function paste(label: string, text: string): Promise<void> {
  const field = act.field(label);
  await field.focus();
  if ((await field.getAttribute('type')) === 'text') await field.selectText();
  await field.evaluate((input, pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', pasted);
    input.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  }, text);
}
const key = (name: string) => w.page.keyboard.press(name);
const values = (label: RegExp) =>
  w.page
    .locator('dialog[open]')
    .getByLabel(label)
    .evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value));

describe.skipIf(noBrowser)('the form of an edition', () => {
  it('reads a pasted list of people into rows, and lets it be as pasted', async () => {
    await w.go(`/work/${work}`);
    await w.press('Add an edition');
    await paste('Name 1', 'Oskarsdal, Maren; Wrenfield, Tobias (illustrator)');
    expect(await values(/^Name \d/)).toEqual(['Maren Oskarsdal', 'Tobias Wrenfield']);
    expect(await values(/^Role \d/)).toEqual(['Author (A01)', 'Illustrator (A12)']);
    await w.page.getByText('is read as 2 people').waitFor();
    await w.press('Leave it as pasted');
    expect(await values(/^Name \d/)).toEqual(['Oskarsdal, Maren; Wrenfield, Tobias (illustrator)']);
    await paste('Name 1', 'Maren Oskarsdal, Tobias Wrenfield');
    await w.press('2 people: Maren Oskarsdal; Tobias Wrenfield');
    expect(await values(/^Name \d/)).toEqual(['Maren Oskarsdal', 'Tobias Wrenfield']);
  });

  it('finds a role by typing, with the keyboard alone', async () => {
    const role = act.field('Role 2');
    await role.focus();
    await role.fill('trans');
    expect(await role.getAttribute('aria-expanded')).toBe('true');
    await key('ArrowDown');
    await key('ArrowUp');
    await role.fill('translator w');
    await w.picture('forms-roles');
    await key('Escape');
    expect(await w.page.locator('dialog[open]').count()).toBe(1);
    await role.fill('trans');
    await key('Enter');
    expect(await role.inputValue()).toBe('Translator (B06)');
    await role.fill('b97');
    await key('Tab');
    await w.page.getByText('Not a code we have a label for').waitFor();
    await role.fill('lighthouse');
    await key('Tab');
    await w.page.getByText(/Choose a role from the list/).waitFor();
    expect(await w.faults()).toEqual([]);
  });

  it('puts a contributor elsewhere by dragging', async () => {
    const handles = w.page.locator('dialog[open] .row-handle');
    const from = await handles.nth(1).boundingBox();
    const to = await handles.nth(0).boundingBox();
    if (!from || !to) throw new Error('There are no handles.');
    await w.page.mouse.move(from.x + 5, from.y + 5);
    await w.page.mouse.down();
    await w.page.mouse.move(to.x + 5, to.y + 20);
    await w.page.mouse.move(to.x + 5, to.y - 20);
    await w.picture('forms-drag');
    await w.page.mouse.up();
    expect(await values(/^Name \d/)).toEqual(['Tobias Wrenfield', 'Maren Oskarsdal']);
    expect(await values(/^Role \d/)).toEqual(['lighthouse', 'Author (A01)']);
    await w.page.locator('dialog[open] [role=status]', { hasText: 'is now number 1 of 2' }).waitFor();
  });

  it('counts against the tightest channel and checks a subject code while it is typed', async () => {
    await w.page.getByText('16 of 10 characters (Lanternshelf), 6 too many').waitFor();
    await w.press('Add a subject');
    await act.field('Code of the main subject').fill('fb 1');
    await w.page.getByText(/A Thema code is capital letters/).waitFor();
    await act.field('Code of the main subject').fill('fba');
    await w.page.getByText(/A Thema code is capital letters/).waitFor({ state: 'detached' });
    await w.press('Keep as it is');
    await w.press('Leave without saving');
    await act.closed();
  });
});

describe.skipIf(noBrowser)('other forms', () => {
  it('ask before a typed note is dropped', async () => {
    await w.page
      .getByRole('button', { name: /^New edition or reprint/ })
      .first()
      .click();
    const note = w.page.locator('dialog[open]').locator('textarea').first();
    await note.fill('A new map');
    await w.press('Close');
    await w.page.getByText('What you typed here is then lost.').waitFor();
    await w.press('Close without saving');
    await act.closed();
  });

  it('take a saved change back at a press', async () => {
    const before = (await w.call('works.get', { id: work })).title;
    await w.press('Edit work');
    await act.field('Name of the work').fill('The Salt Almanack');
    await w.press(/^Save/);
    await act.closed();
    expect((await w.call('works.get', { id: work })).title).toBe('The Salt Almanack');
    await w.page.getByRole('button', { name: 'Undo this change' }).click();
    await w.page.locator('.status-line', { hasText: 'The change is undone.' }).waitFor();
    expect((await w.call('works.get', { id: work })).title).toBe(before);
  });

  it('ask which day 03/04/2026 is, and show what £9.99 was taken for', async () => {
    await w.go(`/work/${work}`);
    await w.page
      .getByRole('button', { name: /^Edit format/ })
      .first()
      .click();
    await paste('On-sale date', '03/04/2026');
    await w.page.locator('dialog[open]').getByRole('button', { name: '3 Apr 2026' }).click();
    expect(await act.field('On-sale date').inputValue()).toBe('2026-04-03');
    await w.press('Add a price');
    const price = w.page
      .locator('dialog[open]')
      .getByLabel(/^Price \d$/)
      .last();
    await paste(`Price ${(await values(/^Price \d$/)).length}`, '£9.99');
    expect(await price.inputValue()).toBe('9.99');
    await w.page.locator('.understood', { hasText: /“£9\.99” is read as GBP.9\.99\./ }).waitFor();
    expect(await w.faults()).toEqual([]);
    expect(w.complaints).toEqual([]);
  });

  it('tell the origin and the sales rights in Settings', async () => {
    await w.go('/settings');
    await w.page.getByLabel('Country of publication').fill('ie');
    await w.page.getByLabel('Where your books may be sold').selectOption('only');
    await w.page.getByLabel('Countries where they may be sold').fill('ie, gb');
    await w.page.getByText('Ireland, United Kingdom.').waitFor();
    await w.press('Save the settings');
    await w.page.locator('.status-line', { hasText: 'The settings are saved.' }).waitFor();
    expect(await w.call('settings.get', {})).toMatchObject({
      countryOfPublication: 'IE',
      salesRights: { scope: 'only', countries: ['IE', 'GB'] },
    });
  });
});
