import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { acts } from '../support/acts.ts';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// Forms check what is typed before anything is sent, say what the rules ask of a field, and ask before what was typed is
// lost.

describe.skipIf(noBrowser)('forms', () => {
  let w: Window;
  let act: ReturnType<typeof acts>;
  beforeAll(async () => {
    w = await openWindow({ today: '2026-11-25', demo: true });
    act = acts(w);
  });
  afterAll(() => w?.close());

  const dialog = () => w.page.locator('dialog[open]').last();
  /** The sentence at a field comes while it is typed and goes when it is mended. */
  async function checks(label: string, wrong: string, sentence: string, right: string): Promise<void> {
    await act.field(label).fill(wrong);
    await dialog().getByText(sentence).waitFor();
    await act.field(label).fill(right);
    await dialog().getByText(sentence).waitFor({ state: 'detached' });
  }
  /** Escape asks; the dialog stays, and goes only when that is meant. */
  async function guards(leave: string, ask: string): Promise<void> {
    await w.page.keyboard.press('Escape');
    await w.page.getByRole('heading', { name: ask }).waitFor();
    await w.press(leave);
    await act.closed();
  }

  it('of a format say what is wrong with a code while it is typed, and what its form means', async () => {
    await w.go('/work/2');
    await w.press('Add a format: The Salt Almanac, 2nd edition');
    await dialog()
      .getByText(/takes a number of its own\. ISBN Users’ Manual, 6th edition/)
      .waitFor();
    await act.field('Product form').selectOption('other');
    await checks('Code: Product form', 'B1', 'Choose a product form.', 'BC');
    expect(await w.faults()).toEqual([]);
    await guards('Leave without saving', 'Leave without saving?');
  });

  it('of a listing’s step hold the day against those that are possible', async () => {
    await w.page
      .getByRole('button', { name: /^Move: / })
      .first()
      .click();
    await act.field('On which day').fill('2027-01-01');
    await dialog().getByText('Choose 25 Nov 2026 or an earlier day.').waitFor();
    await w.press('Keep as it is');
    await act.closed();
  });

  it('of an edition say at each identity field what the rules ask, and from where', async () => {
    await w.press('Add an edition');
    for (const says of [
      /Another title makes another book.*section 5\.2/,
      /each with a role.*List 17/,
      /A translation is another book.*frequent questions/,
    ])
      expect(await dialog().locator('.field-help').filter({ hasText: says }).count()).toBe(1);
    expect(await act.field('Title').getAttribute('aria-describedby')).toMatch(/-help$/);
    await w.page.keyboard.press('Escape');
    await act.closed();
  });

  it('of a channel say what is too long while it is typed', async () => {
    await w.go('/channels');
    await w.press('Add a channel…');
    await checks('Between keywords', ' and ', 'Keep it to three signs at most.', ',');
    await guards('Close without saving', 'Close without saving?');
  });

  it('of the settings, before they are saved', async () => {
    await w.go('/settings');
    const country = w.page.getByLabel('Country of publication');
    await country.fill('i1');
    await w.page.getByText('Write the country as two capital letters, for example GB.').first().waitFor();
    await country.fill('');
    await w.page
      .getByText('Write the country as two capital letters, for example GB.')
      .first()
      .waitFor({ state: 'detached' });
  });

  it('ask before a filter, a calendar file or a bar code that was being chosen is left', async () => {
    await w.go('/catalogue', 'part=formats');
    await w.press(/^Filter/);
    await dialog().getByRole('checkbox', { name: 'Paperback' }).check();
    await guards('Close without saving', 'Close without saving?');
    await w.go('/agenda');
    await w.page
      .getByRole('button', { name: /alendar/ })
      .first()
      .click();
    await act.field('Keep a file up to date').selectOption('tasks');
    await guards('Close without saving', 'Close without saving?');
    await w.go('/work/2');
    await w.page
      .getByRole('button', { name: /^Bar code: / })
      .first()
      .click();
    await w.page.keyboard.press('Escape');
    await act.closed();
    expect(w.complaints).toEqual([]);
  });
});
