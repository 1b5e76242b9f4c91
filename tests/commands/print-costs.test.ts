import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { InputOf } from '../../src/contract/index.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
let channelId: number;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
  channelId = catalogue.call('channels.create', { name: 'Printworks Direct' }).channelId;
});
afterEach(() => catalogue.close());

const QUOTES: InputOf<'printCosts.add'>['price'] = {
  kind: 'quotes',
  quotes: [
    { pages: 300, amountMinor: 480 },
    { pages: 100, amountMinor: 235 },
  ],
};
const add = (more: Partial<InputOf<'printCosts.add'>> = {}) =>
  catalogue.call('printCosts.add', { channelId, currency: 'GBP', price: QUOTES, ...more }).cardId;
const cards = () => catalogue.call('printCosts.list', {}).cards;
const newest = () => catalogue.call('journal.list', {}).entries[0];

describe('a print-cost card', () => {
  it('is kept with its quotes and tells the line through them', () => {
    add({ form: 'BC', interiorColour: 'black', note: 'quote of March' });
    expect(cards()).toMatchObject([
      {
        channelName: 'Printworks Direct',
        name: 'Paperback, black',
        note: 'quote of March',
        price: { kind: 'quotes', quotes: [{ pages: 100 }, { pages: 300 }] },
        fitted: { how: 'exact', fixedParts: 1_125_000, pageParts: 12_250, warnings: [] },
      },
    ]);
  });

  it('is changed whole, and writes nothing where nothing differs', () => {
    const id = add();
    const was = newest()?.commandSeq;
    expect(catalogue.call('printCosts.update', { id, currency: 'GBP' }).changed).toEqual([]);
    expect(newest()?.commandSeq).toBe(was);
    catalogue.call('printCosts.update', { id, currency: 'EUR' });
    expect(cards()[0]).toMatchObject({
      currency: 'EUR',
      price: { quotes: [{ pages: 100 }, { pages: 300 }] },
    });
    const price = { kind: 'stated' as const, fixedParts: 900_000, pageParts: 12_500 };
    catalogue.call('printCosts.update', { id, price });
    expect(cards()[0]?.price).toEqual(price);
    catalogue.call('printCosts.update', { id, price: QUOTES });
    expect(cards()[0]?.fitted.how).toBe('exact');
  });

  it('is undone with its quotes', () => {
    const id = add();
    catalogue.call('printCosts.remove', { id });
    expect(cards()).toEqual([]);
    catalogue.call('journal.undo', { commandSeq: newest()?.commandSeq ?? 0 });
    expect(cards()[0]?.fitted.how).toBe('exact');
  });

  it('has no twin, which would leave open which one holds', () => {
    add({ form: 'BC' });
    const twin = catalogue.refusal('printCosts.add', {
      channelId,
      currency: 'GBP',
      form: 'BC',
      price: QUOTES,
    });
    expect(twin).toMatchObject({ code: 'ALREADY_EXISTS', field: 'validFrom' });
    expect(twin.message).toContain('Paperback, GBP');
    add({ form: 'BC', validFrom: '2026-04-01' });
    expect(cards()).toHaveLength(2);
  });

  it('refuses what cannot be, at the field', () => {
    const refused = (more: Partial<InputOf<'printCosts.add'>>) =>
      catalogue.refusal('printCosts.add', { channelId, currency: 'GBP', price: QUOTES, ...more });
    expect(refused({ channelId: 99 })).toMatchObject({ code: 'NOT_FOUND', field: 'channelId' });
    expect(refused({ trimWidthUm: 1 })).toMatchObject({ field: 'trimHeightUm' });
    expect(refused({ pagesFrom: 9, pagesTo: 8 })).toMatchObject({ field: 'pagesTo' });
    expect(refused({ caseKind: 'cloth', form: 'BC' })).toMatchObject({ field: 'caseKind' });
    expect(refused({ price: { kind: 'quotes', quotes: [] } }).field).toBe('price.quotes');
    expect(refused({ price: { kind: 'quotes', quotes: [{ pages: 0, amountMinor: 1 }] } }).message).toContain(
      'at least one page',
    );
    expect(catalogue.refusal('printCosts.remove', { id: 7 }).code).toBe('NOT_FOUND');
    expect(cards()).toEqual([]);
  });

  it('goes with its channel', () => {
    add();
    catalogue.call('channels.remove', { id: channelId });
    expect(cards()).toEqual([]);
  });

  it('is shown as it was on a past day', () => {
    const id = add();
    catalogue.setToday('2026-03-10');
    catalogue.call('printCosts.update', { id, price: { kind: 'stated', fixedParts: 1, pageParts: 1 } });
    add({ form: 'BC' });
    const then = catalogue.call('printCosts.list', { asOf: '2026-03-05' }).cards;
    expect(then).toMatchObject([{ id, fitted: { how: 'exact' } }]);
  });

  it('is tried without being kept', () => {
    expect(catalogue.call('printCosts.fit', { currency: 'GBP', price: QUOTES })).toMatchObject({
      how: 'exact',
    });
    expect(cards()).toEqual([]);
  });
});
