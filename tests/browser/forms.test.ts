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
});
