import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { blockNumber } from '../../src/rules/isbn/index.ts';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

async function clean(w: Window, picture: string): Promise<void> {
  await w.picture(picture);
  expect(await w.faults()).toEqual([]);
  const [wide, window] = await w.page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  expect(wide).toBeLessThanOrEqual(window ?? 0);
  expect(w.complaints).toEqual([]);
}

const csv = (name: string, content: string) => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(content),
});

/** Enough rows for the work on them to be called off; the numbers are invented. */
const LONG = [
  'Title,Author,Form,ISBN',
  ...Array.from({ length: 12_000 }, (_, at) => {
    const isbn = blockNumber({ digits: '978014', publicationDigits: 6 }, at);
    return `Long Winter ${at},Person ${at % 90},Paperback,${isbn}`;
  }),
].join('\n');

describe.skipIf(noBrowser).each([
  { width: 1280, height: 800, dark: true },
  { width: 390, height: 844, dark: false },
])('a table on its way in at $width × $height, dark: $dark', (size) => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ ...size, demo: true, today: '2026-11-25' });
  });
  afterAll(() => w?.close());

  const choose = (file: ReturnType<typeof csv>) =>
    w.page.getByLabel('File', { exact: true }).setInputFiles(file);
  const entries = async () => (await w.call('catalogue.info', {})).journalEntries;

  it('can be called off while it is sent, and is read when it is chosen again', async () => {
    await w.go('/catalogue/import');
    let held = true;
    await w.page.route('**/files.put', async (route) => {
      if (held) await new Promise((go) => setTimeout(go, 1_500));
      await route.continue();
    });
    await choose(csv('spring.csv', LONG));
    await w.page.getByText('Sending the file').waitFor();
    await w.press('Cancel');
    held = false;
    await w.page.getByText('spring.csv was not read; choose it again to go on.').waitFor();
    await clean(w, `import-called-off-${size.width}`);
    await choose(csv('spring.csv', LONG));
    await w.page.getByText('12,000 rows below the header').waitFor();
    expect(await w.page.getByText('was not read').count()).toBe(0);
  });

  it('can be called off while it is tried and while it is recorded, and leaves nothing behind', async () => {
    const before = await entries();
    await w.press('See what would come of it');
    await w.page.getByText(/^Working: [\d,]+ of [\d,]+ /).waitFor();
    await clean(w, `import-working-${size.width}`);
    await w.press('Cancel');
    await w.page.getByText('Called off; nothing was changed.').first().waitFor();
    await w.press('See what would come of it');
    await w.press(/^Record 12,000 rows/);
    await w.page.getByText(/^Working: [\d,]+ of [\d,]+ works recorded/).waitFor();
    // The message of the first call-off is gone, and the way to call this off is in sight.
    expect(await w.page.getByText('Called off; nothing was changed.').count()).toBe(0);
    const [top = 0, foot = 0] = await w.page
      .getByRole('button', { name: 'Cancel' })
      .evaluate((button) => [button.getBoundingClientRect().top, button.getBoundingClientRect().bottom]);
    expect(top).toBeGreaterThanOrEqual(0);
    expect(foot).toBeLessThanOrEqual(size.height);
    await w.press('Cancel');
    await w.page.getByText('Called off; nothing was changed.').first().waitFor();
    await w.quiet();
    expect(await entries()).toBe(before);
    // What was tried still stands, so that it can be recorded after all.
    await w.page.getByRole('button', { name: /^Record 12,000 rows/ }).waitFor();
  });

  it('gives refused rows as a file that is mended and fed back', async () => {
    await w.go('/catalogue/import');
    const lines = [
      'Title,Lettering,Form,ISBN,Publication date',
      'Marsh Bells,Ilse Quayle,Paperback,979-8-969999-50-3,2027-03-04',
      'Tide Tables,Ilse Quayle,parchment,,2027-03-05',
    ];
    await choose(csv('autumn.csv', lines.join('\n')));
    await w.page.getByLabel('What Lettering holds').selectOption('contributors');
    await w.page.getByLabel('Role of Lettering').fill('letter');
    await clean(w, `import-role-${size.width}`);
    await w.page.getByRole('option', { name: /^Letterer/ }).click();
    expect(await w.page.getByLabel('Role of Lettering').inputValue()).toBe('Letterer (A48)');
    await w.press('See what would come of it');
    await w.page.getByRole('heading', { name: 'What is refused' }).waitFor();
    const [download] = await Promise.all([w.page.waitForEvent('download'), w.press('Save the refused rows')]);
    expect(download.suggestedFilename()).toBe('autumn-refused.csv');
    const refused = readFileSync(await download.path(), 'utf8');
    expect(refused).toContain('parchment');
    expect(refused).not.toContain('Marsh Bells');
    await w.page.getByLabel('Record the good rows only').check();
    await w.press(/^Record 1 row/);
    await w.page.getByRole('heading', { name: 'Recorded' }).waitFor();
    await clean(w, `import-half-${size.width}`);
    await choose(csv('autumn-refused.csv', refused.replace('parchment', 'hardcover')));
    await w.page.getByText('1 row below the header').waitFor();
    expect(await w.page.getByLabel('Role of Lettering').inputValue()).toBe('Letterer (A48)');
    await w.press('See what would come of it');
    await w.press(/^Record 1 row/);
    await w.page.getByRole('heading', { name: 'Recorded' }).waitFor();
    const { works } = await w.call('works.list', { search: 'Tide Tables' });
    const work = await w.call('works.get', { id: works[0]?.id ?? 0 });
    expect(work.editions[0]?.contributors).toEqual([{ role: 'A48', name: 'Ilse Quayle' }]);
  });
});
