import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDate } from '../../renderer/lib/paste/dates.ts';
import { readMoney } from '../../renderer/lib/paste/money.ts';
import { readWholeNumber } from '../../renderer/lib/paste/whole-number.ts';

describe('a pasted date', () => {
  it.each([
    ['2026-03-12', '2026-03-12'],
    ['2026/03/12', '2026-03-12'],
    ['2026.3.12', '2026-03-12'],
    ['20260312', '2026-03-12'],
    ['2026-03-12T10:30:00Z', '2026-03-12'],
    ['2026年3月12日', '2026-03-12'],
    ['12.3.2026', '2026-03-12'],
    ['03.04.2026', '2026-04-03'],
    ['31/12/2026', '2026-12-31'],
    ['12/31/2026', '2026-12-31'],
    ['05/05/2026', '2026-05-05'],
    ['3 March 2026', '2026-03-03'],
    ['March 3rd, 2026', '2026-03-03'],
    ['Tuesday, 3 March 2026', '2026-03-03'],
    ['3-Mar-2026', '2026-03-03'],
    ['3. März 2026', '2026-03-03'],
    ['3 mars 2026', '2026-03-03'],
    ['1er février 2026', '2026-02-01'],
    ['3 de marzo de 2026', '2026-03-03'],
    ['29 February 2028', '2028-02-29'],
    [' 3 Sept 2026 ', '2026-09-03'],
  ])('%j is %s', (text, day) => {
    expect(readDate(text)).toEqual({ kind: 'sure', day });
  });

  it.each([
    ['03/04/2026', ['2026-04-03', '2026-03-04']],
    ['3-4-2026', ['2026-04-03', '2026-03-04']],
  ])('%j is asked about', (text, days) => {
    expect(readDate(text)).toEqual({ kind: 'either', days });
  });

  it.each([
    '30 February 2026',
    '32/13/2026',
    '12.3.26',
    '3 March',
    'March 2026',
    '3 March 26',
    'soon',
    '',
    '2026',
    '1/2/3/2026',
  ])('%j is not guessed', (text) => {
    expect(readDate(text).kind).toBe('unread');
  });

  it('is read again from every writing that the runtime gives it in ten languages', () => {
    const day = fc.date({ min: new Date('1950-01-01'), max: new Date('2099-12-31'), noInvalidDate: true });
    const language = fc.constantFrom('en-GB', 'en-US', 'de', 'fr', 'es', 'it', 'nl', 'sv', 'da', 'nb', 'pt');
    fc.assert(
      fc.property(day, language, (date, locale) => {
        const written = new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' }).format(date);
        expect(readDate(written)).toEqual({ kind: 'sure', day: date.toISOString().slice(0, 10) });
      }),
    );
  });
});

describe('a pasted amount', () => {
  it.each([
    ['£9.99', 'EUR', 'GBP', 999],
    ['9,99 €', 'GBP', 'EUR', 999],
    ['EUR 9.99', 'EUR', 'EUR', 999],
    ['9.99 eur', 'GBP', 'EUR', 999],
    ['1.234,50', 'EUR', 'EUR', 123_450],
    ['1,234.50', 'EUR', 'EUR', 123_450],
    ['CHF 1’234.50', 'EUR', 'CHF', 123_450],
    ['1 234,50 €', 'EUR', 'EUR', 123_450],
    ['12,-', 'EUR', 'EUR', 1200],
    ['9,9', 'EUR', 'EUR', 990],
    ['1,234', 'GBP', 'GBP', 123_400],
    ['¥1,200', 'JPY', 'JPY', 1200],
    ['$12', 'AUD', 'AUD', 1200],
    ['US$ 12.00', 'EUR', 'USD', 1200],
    ['1.234.567', 'EUR', 'EUR', 123_456_700],
  ])('%j where %s is usual is %s %i', (text, usual, currency, amountMinor) => {
    expect(readMoney(text, usual, 'en-GB')).toEqual({ kind: 'sure', money: { amountMinor, currency } });
  });

  it.each<[string, string, [string, number][]]>([
    ['1.234', 'EUR', [['EUR', 123_400]]],
    [
      '$12',
      'EUR',
      [
        ['USD', 1200],
        ['CAD', 1200],
        ['AUD', 1200],
        ['NZD', 1200],
      ],
    ],
    [
      '1.234',
      'KWD',
      [
        ['KWD', 1234],
        ['KWD', 1_234_000],
      ],
    ],
  ])('%j where %s is usual is asked about', (text, usual, choices) => {
    expect(readMoney(text, usual, 'en-GB')).toEqual({
      kind: 'either',
      choices: choices.map(([currency, amountMinor]) => ({ amountMinor, currency })),
    });
  });

  it.each(['-9.99', 'about ten', '9.99 or 8.99', '9.99,5', '', '£', '9.9999'])(
    '%j is not guessed',
    (text) => {
      expect(readMoney(text, 'EUR', 'en-GB').kind).toBe('unread');
    },
  );
});

describe('a pasted whole number', () => {
  it.each([
    ['320', 320],
    ['320 pp.', 320],
    ['c. 96 pages', 96],
    ['1,234', 1234],
    ['1.234.567', 1_234_567],
    ['1 234', 1234],
    ['１２', 12],
    ['12,5', undefined],
    ['1,234.567', undefined],
    ['12-15', undefined],
    ['', undefined],
  ])('%j is %s', (text, value) => {
    expect(readWholeNumber(text)).toBe(value);
  });
});
