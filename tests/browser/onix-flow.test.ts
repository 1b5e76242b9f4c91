import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';
import { SEED_MESSAGE } from '../support/onix/messages.ts';

async function clean(w: Window, picture: string): Promise<void> {
  await w.picture(picture);
  expect(await w.faults()).toEqual([]);
  const [wide, window] = await w.page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  expect(wide).toBeLessThanOrEqual(window ?? 0);
  expect(w.complaints).toEqual([]);
}

/** The message over and over, each time with other numbers and titles: enough products to be called off. */
function longMessage(times: number): string {
  const [head = '', ...products] = SEED_MESSAGE.split(/(?=<Product>)/);
  const body = products.join('').replace('</ONIXMessage>', '');
  const copies = Array.from({ length: times }, (_, at) =>
    body.replaceAll('Marsh Bells', `Marsh Bells ${at}`).replaceAll('979896999', '978000000'),
  );
  return `${head}${copies.join('')}</ONIXMessage>`;
}

describe.skipIf(noBrowser).each([
  { width: 1280, height: 800, dark: true },
  { width: 390, height: 844, dark: false },
])('an ONIX message on its way in at $width × $height, dark: $dark', (size) => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ ...size, demo: true, today: '2026-11-25' });
  });
  afterAll(() => w?.close());

  const choose = (message: string) =>
    w.page
      .getByLabel('File', { exact: true })
      .setInputFiles({ name: 'message.xml', mimeType: 'application/xml', buffer: Buffer.from(message) });
  const entries = async () => (await w.call('catalogue.info', {})).journalEntries;

  it('can be called off while it is read, and says so', async () => {
    const before = await entries();
    await w.go('/catalogue/import');
    await choose(longMessage(3_000));
    await w.page.getByText(/^Reading the file: [\d,]+ products read/).waitFor();
    await w.press('Cancel');
    await w.page.getByText('message.xml was not read; choose it again to go on.').waitFor();
    await w.quiet();
    expect(await entries()).toBe(before);
    expect(await w.page.getByRole('heading', { name: 'What is in it' }).count()).toBe(0);
  });

  it('shows how its products are grouped, and takes them over as the person has it', async () => {
    await w.go('/catalogue/import');
    await choose(SEED_MESSAGE);
    await w.page.getByText('ONIX 3.0 from Broadside Wholesale: 3 products.').waitFor();
    await w.page.getByRole('heading', { name: /^Marsh Bells, 2nd edition/ }).waitFor();
    await w.page.getByRole('heading', { name: /^Marsh Bells, 1st edition/ }).scrollIntoViewIfNeeded();
    expect(await w.page.getByText('is no amount of that currency').count()).toBe(0);
    await clean(w, `onix-grouped-${size.width}`);
    await w.page.getByLabel('Where row 3 goes').selectOption({ label: 'A work of its own' });
    await w.page.getByText('Chosen by you.').waitFor();
    await w.page.getByLabel(/^Row 1, Marsh Bells/).uncheck();
    await clean(w, `onix-regrouped-${size.width}`);
    await w.press('Take 2 over');
    await w.page.getByText('The message is taken over.').waitFor();
    const { works } = await w.call('works.list', { search: 'Marsh Bells' });
    expect(works).toHaveLength(2);
    const numbers = works.flatMap(({ formats }) => formats.map(({ hyphenated }) => hyphenated)).sort();
    expect(numbers).toEqual(['979-8-969999-51-0', '979-8-969999-52-7']);
  });

  it('that was taken over already offers what is new alone', async () => {
    await w.go('/catalogue/import');
    await choose(SEED_MESSAGE);
    await w.page.getByText(/1 new, 2 the same/).waitFor();
    await clean(w, `onix-again-${size.width}`);
    await w.press('Take 1 over');
    await w.page.getByText('The message is taken over.').waitFor();
  });
});
