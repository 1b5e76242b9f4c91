import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BLANK_CARD } from '../../../src/contract/print-costs.ts';
import { cardName, type KeptCard, printCostOf } from '../../../src/rules/print-cost/card.ts';

const stated = (fixed: number) => ({ kind: 'stated' as const, fixedParts: fixed * 10_000, pageParts: 0 });
let lastId = 0;
const card = (more: Partial<KeptCard> = {}): KeptCard => {
  lastId += 1;
  return { ...BLANK_CARD, id: lastId, channelId: 1, currency: 'EUR', price: stated(lastId), ...more };
};

const BOOK = {
  form: 'BC',
  caseKind: null,
  interiorColour: 'black',
  trimWidthUm: 129_000,
  trimHeightUm: 198_000,
  pages: 240,
};
const NONE = { minor: null, currency: null };
const OF = { channelId: 1, currency: 'EUR', day: '2026-03-02' };
const chosen = (cards: KeptCard[], book = BOOK) => printCostOf(book, NONE, cards, OF);

describe('which card holds', () => {
  it('the one that names the form before the one that names the ink before any', () => {
    const [any, ink, form] = [card(), card({ interiorColour: 'black' }), card({ form: 'BC' })];
    expect(chosen([any]).cardId).toBe(any.id);
    expect(chosen([any, ink]).cardId).toBe(ink.id);
    expect(chosen([any, ink, form]).cardId).toBe(form.id);
  });

  it('the smallest trim that holds the book', () => {
    const small = card({ trimWidthUm: 110_000, trimHeightUm: 180_000 });
    const fits = card({ trimWidthUm: 140_000, trimHeightUm: 216_000 });
    const large = card({ trimWidthUm: 216_000, trimHeightUm: 280_000 });
    expect(chosen([large, fits, small, card()]).cardId).toBe(fits.id);
  });

  it('of one kind the newest that is in force, and the range the pages lie in', () => {
    const old = card();
    const now = card({ validFrom: '2026-01-01', pagesFrom: 1, pagesTo: 300 });
    const soon = card({ validFrom: '2026-04-01' });
    expect(chosen([soon, now, old]).cardId).toBe(now.id);
    expect(chosen([soon, now, old], { ...BOOK, pages: 301 }).cardId).toBe(old.id);
  });

  it('never one of another channel, currency, form, ink or trim', () => {
    const wrong = [
      card({ channelId: 2 }),
      card({ currency: 'USD' }),
      card({ form: 'BB' }),
      card({ interiorColour: 'premium colour' }),
      card({ trimWidthUm: 128_999, trimHeightUm: 300_000 }),
      card({ pagesFrom: 241 }),
      card({ validFrom: '2026-03-03' }),
    ];
    fc.assert(
      fc.property(fc.subarray(wrong), (some) => {
        const cost = chosen(some);
        expect(cost).toMatchObject({ minor: null, from: 'not known', cardId: null });
        expect(cost.why).toMatch(/^[A-Z].*\.$/);
      }),
    );
  });

  it('is the same in whatever order the cards are kept', () => {
    const cards = [card(), card({ form: 'BC' }), card({ interiorColour: 'black' }), card({ pagesTo: 300 })];
    fc.assert(
      fc.property(fc.shuffledSubarray(cards, { minLength: 4 }), (shuffled) => {
        expect(chosen(shuffled).cardId).toBe(chosen(cards).cardId);
      }),
    );
  });
});

describe('where the cost comes from', () => {
  it('the figure typed for the listing comes first, in its own currency alone', () => {
    const own = { minor: 467, currency: 'EUR' };
    const kept = card({ currency: 'USD' });
    expect(printCostOf(BOOK, own, [card()], OF)).toMatchObject({ minor: 467, from: 'own figure' });
    expect(printCostOf(BOOK, own, [kept], { ...OF, currency: 'USD' })).toMatchObject({
      from: 'card',
      cardId: kept.id,
    });
  });

  it('nothing is printed of an e-book', () => {
    expect(chosen([card()], { ...BOOK, form: 'ED' })).toMatchObject({ minor: 0, from: 'nothing printed' });
  });

  it('says what is missing', () => {
    expect(chosen([]).why).toContain('no print-cost card');
    expect(printCostOf({ ...BOOK, pages: null }, NONE, [card()], OF).why).toContain('pages are not recorded');
    expect(
      printCostOf({ ...BOOK, interiorColour: null }, NONE, [card({ interiorColour: 'black' })], OF).why,
    ).toContain('colour of the inside is not recorded');
    expect(
      printCostOf(
        { ...BOOK, trimWidthUm: null },
        NONE,
        [card({ trimWidthUm: 200_000, trimHeightUm: 300_000 })],
        OF,
      ).why,
    ).toContain('trim size is not recorded');
    const one = card({ price: { kind: 'quotes', quotes: [{ pages: 300, amountMinor: 400 }] } });
    expect(chosen([one]).why).toContain('quotes for 300 pages alone');
  });

  it('tells when the pages lie beyond what was quoted', () => {
    const quotes = [100, 200].map((pages) => ({ pages, amountMinor: pages }));
    const one = card({ price: { kind: 'quotes', quotes } });
    expect(chosen([one])).toMatchObject({ minor: 240, beyondQuotes: true });
    expect(chosen([one], { ...BOOK, pages: 150 })).toMatchObject({ minor: 150, beyondQuotes: false });
  });
});

it('is called by what it holds for', () => {
  const named = card({
    form: 'BC',
    interiorColour: 'black',
    trimWidthUm: 152_400,
    trimHeightUm: 228_600,
    pagesFrom: 24,
    pagesTo: 108,
  });
  expect(cardName(named, 'mm')).toBe('Paperback, black, up to 152.4 × 228.6 mm, 24 to 108 pages');
  expect(cardName(named, 'in')).toBe('Paperback, black, up to 6 × 9 in, 24 to 108 pages');
  expect(cardName(card(), 'mm')).toBe('Any printed form');
});
