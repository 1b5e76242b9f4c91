import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

const CHANNEL = 'Nettlewick Bookshop';

async function clean(w: Window, picture: string): Promise<void> {
  await w.picture(picture);
  expect(await w.faults()).toEqual([]);
  const [wide, window] = await w.page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  expect(wide).toBeLessThanOrEqual(window ?? 0);
  expect(w.complaints).toEqual([]);
}

const csv = (name: string, lines: readonly string[]) => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(lines.join('\n')),
});

/** A report that has one damaged number, one strange listing, and nothing of what sells here. */
const FIRST = ['EAN,Item,Out', '9798969999770,A Stranger,03/04/2026', '9798969999015.0,Other,', ',Total,'];
/** One that has everything as the record has it; only the numbers are told. */
const later = async (w: Window): Promise<string[]> => {
  const { works } = await w.call('works.list', {});
  const editions = await Promise.all(works.map(({ id }) => w.call('works.get', { id })));
  const selling = editions
    .flatMap((work) => work.editions.flatMap(({ formats }) => formats))
    .filter(({ listings }) =>
      listings.some((one) => one.channelName === CHANNEL && one.standing === 'selling'),
    );
  return ['EAN', ...selling.map(({ isbn13 }) => isbn13 ?? '')];
};

describe.skipIf(noBrowser).each([
  { width: 1280, height: 800, dark: false },
  { width: 390, height: 844, dark: true },
])('reports of a channel at $width × $height, dark: $dark', (size) => {
  let w: Window;
  beforeAll(async () => {
    w = await openWindow({ ...size, demo: true, today: '2026-11-25' });
  });
  afterAll(() => w?.close());

  it('sets a report against the record, column by column, and keeps nothing before it is seen', async () => {
    await w.go('/channels');
    await w.page.getByRole('link', { name: `Reports… of ${CHANNEL}` }).click();
    await w.page.getByRole('heading', { level: 1, name: 'Reports' }).waitFor();
    await w.page.getByLabel('Report', { exact: true }).setInputFiles(csv('november.csv', FIRST));
    await w.page.getByText('3 rows below the header').waitFor();
    await w.page.getByLabel('What Out holds').selectOption('onSaleDate');
    const compare = w.page.getByRole('button', { name: 'See where they differ' });
    expect(await compare.getAttribute('aria-disabled')).toBe('true');
    await w.page.getByLabel('How Out is written').selectOption('dmy');
    await clean(w, `report-columns-${size.width}`);
    await compare.click();
    await w.page.getByRole('heading', { name: 'Where they differ' }).waitFor();
    await w.page.getByRole('heading', { name: 'Listed there, not here' }).waitFor();
    await w.page.getByText('A Stranger is listed at Nettlewick Bookshop').waitFor();
    await w.page.getByRole('heading', { name: 'Selling here, not there' }).waitFor();
    const keep = w.page.getByRole('button', { name: 'Keep this report' });
    expect(await keep.getAttribute('aria-disabled')).toBe('true');
    await clean(w, `report-compared-${size.width}`);
    await w.page.getByLabel(/^Leave out 2 rows/).check();
    await keep.click();
    await w.page.getByText('The report is kept.').first().waitFor();
    await w.page.getByRole('heading', { name: 'What differs' }).waitFor();
  });

  it('makes a task of a difference in one click', async () => {
    await w.page
      .getByRole('button', { name: /^Make a task: A Stranger/ })
      .first()
      .click();
    await w.page.getByRole('link', { name: 'Find out why Nettlewick Bookshop lists A Stranger' }).waitFor();
    await clean(w, `report-findings-${size.width}`);
    const { tasks } = await w.call('tasks.list', {});
    expect(tasks.filter(({ title }) => title.endsWith('lists A Stranger'))).toHaveLength(1);
  });

  it('closes what the next report no longer tells, and ends its task', async () => {
    const lines = await later(w);
    expect(lines.length).toBeGreaterThan(1);
    await w.go('/channels');
    await w.page.getByRole('link', { name: `Reports… of ${CHANNEL}` }).click();
    await w.page.getByLabel('Report', { exact: true }).setInputFiles(csv('december.csv', lines));
    await w.page.getByText('As in an earlier file.').waitFor();
    await w.press('See where they differ');
    await w.page.getByText('no difference from the record').waitFor();
    await w.press('Keep this report');
    await w.page.getByText('1 task ended').waitFor();
    await w.page.getByText('No difference is open.').waitFor();
    await w.page.getByText(/^Mended \(/).click();
    await clean(w, `report-mended-${size.width}`);
    const { tasks } = await w.call('tasks.list', { standings: ['done'] });
    expect(tasks.some(({ title }) => title.endsWith('lists A Stranger'))).toBe(true);
  });

  it('is for reading only on a past day', async () => {
    await w.go('/channels/1/reports', 'asOf=2026-11-24');
    await w.page.getByText('You are looking at 24 Nov 2026').first().waitFor();
    expect(await w.page.getByLabel('Report', { exact: true }).count()).toBe(0);
  });
});
