import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// What is read out without the focus moving there: progress, results and counts, as a screen reader gets them, which
// is every change of a live region's text.

let w: Window;

/** Keeps every text that a live region came to hold, whichever element of it changed. */
async function listen(): Promise<void> {
  await w.page.evaluate(() => {
    const said: string[] = [];
    Object.assign(window, { said });
    const hear = () => {
      for (const region of document.querySelectorAll('[role="status"], [role="alert"], [aria-live]')) {
        const text = (region.textContent ?? '').trim();
        if (text !== '' && !said.includes(text)) said.push(text);
      }
    };
    hear();
    said.length = 0;
    new MutationObserver(hear).observe(document.body, {
      childList: true,
      subtree: true,
      characterData: true,
    });
  });
}

const said = async () =>
  w.page.evaluate(() => (window as unknown as { said: string[] }).said).then((texts) => texts.join('\n'));
const hears = (words: RegExp) => expect.poll(said).toMatch(words);

describe.skipIf(noBrowser)('what is read out', () => {
  beforeAll(async () => {
    w = await openWindow({ demo: true, today: '2026-11-25' });
  });
  afterAll(() => w?.close());

  it('tells how many were found in the window and in the lists', async () => {
    await w.go('/catalogue');
    await listen();
    await w.page.getByRole('combobox', { name: 'Find anything in this catalogue' }).fill('salt');
    await hears(/\d+ found|One found/);
    await w.page.keyboard.press('Escape');
    await w.page.getByRole('searchbox', { name: 'Search works' }).fill('knots');
    await hears(/Works 1 to 1 of 1/);
    await w.go('/catalogue', 'part=formats');
    await listen();
    await w.page.getByRole('searchbox', { name: 'Search formats' }).fill('salt');
    await hears(/\d formats? of 8/);
  });

  it('tells how far an export is, and that it is saved', async () => {
    await w.go('/catalogue/export');
    await listen();
    await w.press('Write the file');
    await hears(/Writing/);
    await hears(/is saved\./);
  });

  it('tells how far an import is, what would come of it, and what came of it', async () => {
    await w.go('/catalogue/import');
    await listen();
    const sheet = 'Title,Form,ISBN,Price\nMarsh Bells,pbk,979-8-969999-50-3,£9.99\n';
    await w.page
      .getByLabel('File', { exact: true })
      .setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(sheet) });
    await w.page.getByRole('button', { name: 'See what would come of it' }).click();
    const outcome = w.page.locator('p:focus');
    await outcome.waitFor();
    expect(await outcome.textContent()).toMatch(/^1 new\. It would make 1 work/);
    await w.press(/^Record \d+ row/);
    await w.page.getByRole('heading', { name: 'Recorded' }).waitFor();
    await hears(/what the columns hold is remembered/i);
  });

  it('tells how far the audit is, and what it found', async () => {
    await w.go('/audit');
    await listen();
    await w.press('Judge everything anew');
    await hears(/Judging/);
    await hears(/Judged \d works by \d+ rules anew: nothing came out otherwise\./);
  });

  it('tells that something was refused, at once', async () => {
    await w.go('/channels');
    await w.press('Add a channel…');
    await listen();
    const dialog = w.page.locator('dialog[open]');
    await dialog.getByLabel(/^Name/).fill('Lanternshelf');
    await w.press(/^(Add|Save).* channel/);
    await hears(/Lanternshelf/);
  });
});
