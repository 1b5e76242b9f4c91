import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { InputOf } from '../../src/contract/index.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

const TODAY = '2026-03-02';
let catalogue: TestCatalogue;
let editionId: number;
let formatId: number;
let printworks: number;
let broadside: number;
const listings: number[] = [];

beforeEach(() => {
  catalogue = openTestCatalogue(TODAY);
  catalogue.call('blocks.add', { prefix: '979-8-969999' });
  editionId = catalogue.call('works.create', { title: 'The Salt Almanac' }).editionId;
  formatId = catalogue.call('formats.create', {
    editionId,
    form: 'BC',
    pages: 240,
    interiorColour: 'black',
    prices: [
      { currency: 'EUR', amountMinor: 1_499 },
      { currency: 'USD', amountMinor: 1_699, tax: 'excluding' },
    ],
  }).formatId;
  catalogue.call('numbers.assign', { formatId });
  printworks = catalogue.call('channels.create', { name: 'Printworks Direct', leadDays: 3 }).channelId;
  broadside = catalogue.call('channels.create', { name: 'Broadside Wholesale', leadDays: 10 }).channelId;
  listings.length = 0;
  for (const channelId of [printworks, broadside])
    listings.push(catalogue.call('listings.create', { formatId, channelId, discountBp: 4_000 }).listingId);
});
afterEach(() => catalogue.close());

const card = (channelId: number, currency = 'USD') =>
  catalogue.call('printCosts.add', {
    channelId,
    currency,
    price: { kind: 'stated', fixedParts: 900_000, pageParts: 12_500 },
  });
const rows = () => catalogue.call('money.ofEdition', { editionId }).rows;
const send = (id: number | undefined) => catalogue.call('listings.move', { id: id ?? 0, to: 'sent' });
const change = (input: Omit<InputOf<'prices.change'>, 'formatId'>) => ({ formatId, ...input });
const to1899 = [{ currency: 'USD', amountMinor: 1_899 }];
const priceNow = () => catalogue.call('works.get', { id: 1 }).editions[0]?.formats[0]?.prices;

describe('the money of an edition', () => {
  it('has a row for every listing and currency, and takes nothing from another channel or currency', () => {
    card(printworks);
    expect(rows().map((row) => [row.channelName, row.currency, row.keptMinor, row.printCost.from])).toEqual([
      ['Broadside Wholesale', 'EUR', null, 'not known'],
      ['Broadside Wholesale', 'USD', null, 'not known'],
      ['Printworks Direct', 'EUR', null, 'not known'],
      ['Printworks Direct', 'USD', 629, 'card'],
    ]);
  });

  it('puts a figure typed for the listing before the card', () => {
    card(broadside);
    catalogue.call('listings.update', {
      id: listings[1] ?? 0,
      printCost: { amountMinor: 467, currency: 'USD' },
    });
    expect(rows()[1]).toMatchObject({ keptMinor: 552, printCost: { from: 'own figure', minor: 467 } });
  });

  it('ends its lowest prices as the settings say, and those refuse what is no ending', () => {
    card(printworks);
    catalogue.call('settings.update', { priceEndings: [{ currency: 'USD', endings: ['99', '95'] }] });
    // 3.90 ÷ 0.6
    expect(rows()[3]).toMatchObject({ lowestMinor: 650, lowestEnding: [{ minor: 695 }, { minor: 699 }] });
    const refused = (priceEndings: InputOf<'settings.update'>['priceEndings']) =>
      catalogue.refusal('settings.update', { priceEndings }).message;
    expect(refused([{ currency: 'USD', endings: ['.99'] }])).toContain('last digits');
    expect(refused([1, 2].map(() => ({ currency: 'USD', endings: ['99'] })))).toContain('each currency once');
  });

  it('is the same on the page of costs, in the picture and in the audit', () => {
    card(printworks);
    expect(catalogue.call('costs.ofEdition', { editionId }).earnings[3]?.keptMinor).toBe(629);
    catalogue.call('formats.update', { id: formatId, prices: [{ currency: 'USD', amountMinor: 600 }] });
    const bars = catalogue.call('pictures.money', {}).channels.flatMap(({ bars }) => bars);
    expect(bars.map(({ printCostMinor, keptMinor }) => [printCostMinor, keptMinor])).toEqual([
      [390, -30],
      [null, null],
    ]);
    const found = () =>
      catalogue.call('audit.run', {}).findings.filter(({ rule }) => rule === 'copy-sold-at-a-loss');
    expect(found()).toHaveLength(1);
    expect(found()[0]?.message).toContain('the lowest price without a loss is USD 6.50');
    catalogue.call('printCosts.remove', { id: 1 });
    expect(found()).toEqual([]);
  });

  it('is compared over price, pages and discount', () => {
    card(printworks);
    const over = (what: 'price' | 'pages' | 'discount') =>
      catalogue.call('money.compare', { formatId, currency: 'USD', over: what });
    expect(over('price').curves.map(({ channelName, now }) => [channelName, now?.keptMinor])).toEqual([
      ['Broadside Wholesale', null],
      ['Printworks Direct', 629],
    ]);
    expect(over('pages')).toMatchObject({ from: 24, to: 480, pages: 240 });
    expect(over('discount').curves[1]?.points[0]).toEqual({ x: 0, keptMinor: 1_309 });
    expect(catalogue.refusal('money.compare', { formatId, currency: 'GBP', over: 'price' }).field).toBe(
      'currency',
    );
  });
});

describe('a new price', () => {
  it('is previewed on every listing and changes nothing', () => {
    card(printworks);
    send(listings[0]);
    const before = catalogue.call('journal.list', {}).entries[0]?.seq;
    const preview = catalogue.call('prices.preview', change({ prices: to1899 }));
    expect(preview.rows).toMatchObject([
      { channelName: 'Broadside Wholesale', way: 'with the sheet', keptThenMinor: null, earliestOn: null },
      {
        channelName: 'Printworks Direct',
        way: 'ask',
        listNowMinor: 1_699,
        listThenMinor: 1_899,
        keptNowMinor: 629,
        keptThenMinor: 749,
        belowCost: false,
        earliestOn: '2026-03-05',
        days: 3,
      },
    ]);
    expect(preview.from).toBe('2026-03-05');
    expect(preview.tasks).toEqual([
      {
        listingId: listings[0],
        title: 'Give Printworks Direct the new price of The Salt Almanac · Paperback: USD 16.99 → USD 18.99',
        dueOn: TODAY,
      },
    ]);
    expect(catalogue.call('journal.list', {}).entries[0]?.seq).toBe(before);
  });

  it('is one day for all channels: the slowest sets it, and each is told its lead time before', () => {
    for (const id of listings) send(id);
    const preview = catalogue.call('prices.preview', change({ prices: to1899 }));
    expect(preview.from).toBe('2026-03-16');
    expect(preview.tasks.map(({ dueOn }) => dueOn)).toEqual([TODAY, '2026-03-11']);
  });

  it('is changed with its tasks in one command, which is undone as one', () => {
    for (const id of listings) send(id);
    const done = catalogue.call('prices.change', change({ prices: to1899 }));
    expect(done).toMatchObject({ changed: ['USD'], taskIds: [expect.any(Number), expect.any(Number)] });
    expect(priceNow()).toMatchObject([
      { currency: 'EUR', amountMinor: 1_499, tax: 'including' },
      { currency: 'USD', amountMinor: 1_899, tax: 'excluding' },
    ]);
    const tasks = () => catalogue.call('tasks.list', {}).tasks;
    expect(tasks()).toHaveLength(2);
    expect(tasks()[0]).toMatchObject({ workId: 1, formatId, note: expect.stringContaining('2026-03-16') });
    const [newest] = catalogue.call('journal.list', {}).entries;
    catalogue.call('journal.undo', { commandSeq: newest?.commandSeq ?? 0 });
    expect(priceNow()?.[1]?.amountMinor).toBe(1_699);
    expect(tasks()).toEqual([]);
  });

  it('warns of a loss, of a channel that cannot keep the day, and of what is printed', () => {
    card(printworks);
    for (const id of listings) send(id);
    const { rows: effects, notes } = catalogue.call(
      'prices.preview',
      change({ prices: [{ currency: 'USD', amountMinor: 500 }], from: '2026-03-10' }),
    );
    expect(effects.map(({ belowCost }) => belowCost)).toEqual([false, true]);
    expect(notes).toEqual([
      'A copy would be sold at a loss on Printworks Direct.',
      'Broadside Wholesale cannot have it by 2026-03-10, by the lead time that is recorded.',
      expect.stringContaining('add-on has to follow'),
    ]);
  });

  it('is refused where there is nothing to change, no such price, a past day, or an ended format', () => {
    const refused = (input: Omit<InputOf<'prices.change'>, 'formatId'>) => [
      catalogue.refusal('prices.change', change(input)),
      catalogue.refusal('prices.preview', change(input)),
    ];
    const both = (code: string, field: string) => [
      { code, field },
      { code, field },
    ];
    expect(refused({ prices: [{ currency: 'USD', amountMinor: 1_699 }] })).toMatchObject(
      both('STEP_REFUSED', 'prices'),
    );
    expect(refused({ prices: [{ currency: 'GBP', amountMinor: 1 }] })).toMatchObject(
      both('STEP_REFUSED', 'prices'),
    );
    expect(refused({ prices: [...to1899, ...to1899] })).toMatchObject(both('STEP_REFUSED', 'prices'));
    expect(refused({ prices: to1899, from: '2026-03-01' })).toMatchObject(both('STEP_REFUSED', 'from'));
    catalogue.call('formats.cancel', { id: formatId, reason: 'not wanted' });
    expect(refused({ prices: to1899 })).toMatchObject(both('FIELD_LOCKED', 'prices'));
    expect(catalogue.call('tasks.list', {}).tasks).toEqual([]);
  });
});
