import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { noBrowser, openWindow, type Window } from '../support/browser.ts';

// The Money page of an edition of the demo: cards, what a copy keeps, the picture, and a change of price.

const TODAY = '2026-03-02';
let w: Window;
let place = '';
let past = '';
let formatId = 0;
let currency = '';

beforeAll(async () => {
  if (noBrowser) return;
  w = await openWindow({ today: TODAY, demo: true });
  const { works } = await w.call('works.list', {});
  const work = works.find((one) => one.title === 'The Salt Almanac')?.id ?? 0;
  const [second, first] = (await w.call('works.get', { id: work })).editions;
  const paper = second?.formats.find(({ form }) => form === 'BC');
  formatId = paper?.id ?? 0;
  currency = paper?.prices[0]?.currency ?? '';
  for (const { id, channelName } of paper?.listings ?? []) {
    await w.call('listings.update', { id, printCost: null });
    if (channelName === 'Printworks Direct') await w.call('listings.move', { id, to: 'sent' });
  }
  place = `/work/${work}/money/${second?.id ?? 0}`;
  past = `/work/${work}/money/${first?.id ?? 0}`;
});
afterAll(async () => {
  await w?.close();
});
afterEach(async ({ task }) => {
  if (task.result?.state === 'fail') await w?.picture('money-failed');
});

const label = (name: string) => w.page.getByLabel(name, { exact: true });
const cardOf = async () => (await w.call('printCosts.list', {})).cards[0];

describe.skipIf(noBrowser)('the Money page', () => {
  it('says of every listing what is not known, and has no fault', async () => {
    await w.go(place);
    await w.page.getByRole('table', { name: 'What a copy keeps on each listing' }).waitFor();
    expect(await w.page.getByText('has no print-cost card in this currency').count()).toBeGreaterThan(0);
    await w.quiet();
    expect(await w.faults()).toEqual([]);
  });

  it('keeps a card by the keyboard, shows what follows from its quotes, and loses nothing when it is refused', async () => {
    await w.press('Add a print-cost card');
    await label('Channel').selectOption({ label: 'Printworks Direct' });
    await label('Currency').selectOption(currency);
    await label('Pages of quote 1').fill('100');
    await label('One copy, quote 1').fill('2.35');
    await label('Pages of quote 2').fill('300');
    await label('One copy, quote 2').fill('4.80');
    await w.page.getByText('The quotes lie on this line exactly.').waitFor();
    await w.press('Add a quote');
    await label('Pages of quote 3').fill('400');
    await label('One copy, quote 3').fill('4.00');
    await w.page.getByText('A thicker book costs less').waitFor();
    await w.quiet();
    expect(await w.faults('dialog[open]')).toEqual([]);
    await w.picture('money-card');
    await w.press('Remove quote 3');
    await label('Widest trim').fill('200');
    await label('Widest trim').press('Enter');
    await w.page.getByText('A trim size needs both width and height.').waitFor();
    expect(await label('Pages of quote 2').inputValue()).toBe('300');
    await label('Widest trim').fill('');
    await label('Widest trim').press('Enter');
    await w.page.getByRole('table', { name: 'Print-cost cards' }).getByText('Printworks Direct').waitFor();
    expect(await cardOf()).toMatchObject({
      channelName: 'Printworks Direct',
      currency,
      price: {
        kind: 'quotes',
        quotes: [
          { pages: 100, amountMinor: 235 },
          { pages: 300, amountMinor: 480 },
        ],
      },
    });
  });

  it('then tells what a copy keeps, and on whose word', async () => {
    await w.page.getByText('card: Any printed form').first().waitFor();
    await w.quiet();
    await w.picture('money-page');
    expect(await w.faults()).toEqual([]);
  });

  it('draws the channels over price, pages and discount, with the same as words', async () => {
    for (const [over, name] of [
      ['pages', 'other page counts'],
      ['discount', 'other discounts'],
      ['price', 'other list prices'],
    ] as const) {
      await label('What changes').selectOption(over);
      const figure = w.page.getByRole('figure', { name: new RegExp(`What a copy keeps .*${name}`) });
      await figure.locator('.drawing-svg path.curve').first().waitFor();
      await figure.getByText('The same as words').click();
      await figure.getByText(/Printworks Direct: a copy keeps today/).waitFor();
      await w.quiet();
      await w.picture(`money-${over}`);
      expect(await w.faults('figure')).toEqual([]);
      await figure.getByText('The same as words').click();
    }
    expect(await w.page.getByRole('button', { name: /^Save as SVG: What a copy keeps/ }).count()).toBe(1);
  });

  it('shows what a new price does before it is changed, with the tasks that follow', async () => {
    await w.press('Change a price');
    await label('Format').selectOption({ label: 'Paperback' });
    await label(`New price in ${currency}`).fill('1.99');
    await w.page.getByText('A copy would be sold at a loss on Printworks Direct').waitFor();
    await label(`New price in ${currency}`).fill('21.99');
    await w.page.getByRole('table', { name: 'What it does on every channel' }).waitFor();
    await w.quiet();
    expect(await w.faults('dialog[open]')).toEqual([]);
    await w.picture('money-price');
    const before = (await w.call('prices.preview', { formatId, prices: [{ currency, amountMinor: 2_199 }] }))
      .tasks;
    await w.press('Change the price');
    await w.page.getByRole('dialog').waitFor({ state: 'detached' });
    const { tasks } = await w.call('tasks.list', {});
    expect(before).toHaveLength(1);
    expect(tasks.filter(({ title }) => title.includes('the new price of'))).toHaveLength(1);
  });

  it('fits a narrow window and is read only on a past day', async () => {
    await w.page.setViewportSize({ width: 390, height: 800 });
    await w.go(place);
    await w.page.getByRole('heading', { name: 'What printing costs' }).waitFor();
    await w.quiet();
    expect(await w.page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
    await w.picture('money-narrow');
    await w.go(past, 'asOf=2025-03-01');
    await w.page.getByRole('heading', { name: 'What printing costs' }).waitFor();
    expect(await w.page.getByRole('button', { name: 'Change a price' }).count()).toBe(0);
    expect(await w.page.getByRole('button', { name: 'Add a print-cost card' }).count()).toBe(0);
    await w.page.setViewportSize({ width: 1280, height: 800 });
  });

  it('ends prices as the settings say, which refuse at their field what is no ending', async () => {
    await w.go('/settings');
    await w.page.getByRole('heading', { name: 'How prices end' }).waitFor();
    await label('Currency to add').selectOption(currency);
    await w.press('Add its endings');
    await label(`Endings in ${currency}`).fill('.99 x');
    await w.press('Save the settings');
    await w.page.getByText('Write an ending as its last digits').waitFor();
    await label(`Endings in ${currency}`).fill('.99 .95');
    await w.press('Save the settings');
    await w.page.getByText('The settings are saved.').first().waitFor();
    expect((await w.call('settings.get', {})).priceEndings).toEqual([{ currency, endings: ['99', '95'] }]);
    await w.go(place);
    await w.page
      .getByText(/with your endings/)
      .first()
      .waitFor();
    expect(w.complaints).toEqual([]);
  });
});
