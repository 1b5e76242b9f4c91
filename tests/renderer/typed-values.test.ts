import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatDay, isDay } from '../../renderer/lib/dates.ts';
import { formatLength, parseLength, typedLength } from '../../renderer/lib/length.ts';
import { formatMoney, minorDigits, parseMoney, typedMoney } from '../../renderer/lib/money.ts';

const LOCALES = ['en', 'de', 'fr', 'de-CH', 'sv', 'en-IN'];

describe('money', () => {
  test('what is written can be read again, in every locale and number of decimals', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...LOCALES),
        fc.constantFrom('EUR', 'JPY', 'KWD'),
        fc.nat({ max: 10 ** 9 }),
        (locale, currency, amount) => {
          expect(parseMoney(typedMoney(amount, currency, locale), currency, locale)).toBe(amount);
        },
      ),
    );
  });

  test('the grouped reading form can be typed too', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('en', 'de', 'fr', 'de-CH', 'sv'),
        fc.nat({ max: 10 ** 9 }),
        (locale, amount) => {
          const read = formatMoney(amount, 'EUR', locale).replace(/^EUR/, '');
          expect(parseMoney(read, 'EUR', locale)).toBe(amount);
        },
      ),
    );
  });

  test.each([
    ['12.5', 'en', 1250],
    ['12,50', 'de', 1250],
    ['1.234,5', 'de', 123_450],
    ['1 234,50', 'fr', 123_450],
    ['.5', 'en', 50],
    ['12.', 'en', 1200],
  ])('%s in %s is %i minor units', (text, locale, amount) => {
    expect(parseMoney(text, 'EUR', locale)).toBe(amount);
  });

  test.each([
    ['12,50', 'en'],
    ['12.50', 'de'],
    ['1,2,3', 'en'],
    ['12.505', 'en'],
    ['-3', 'en'],
    ['', 'en'],
    ['.', 'en'],
    ['12 EUR', 'en'],
    ['99999999999999999', 'en'],
  ])('%s in %s is refused rather than guessed', (text, locale) => {
    expect(parseMoney(text, 'EUR', locale)).toBeUndefined();
  });

  test('minor units follow the currency', () => {
    expect([minorDigits('EUR'), minorDigits('JPY'), minorDigits('KWD'), minorDigits('not a code')]).toEqual([
      2, 0, 3, 2,
    ]);
    expect(formatMoney(1450, 'EUR', 'en')).toBe('EUR\u00a014.50');
  });
});

describe('length', () => {
  test('whole micrometres survive in millimetres', () => {
    fc.assert(
      fc.property(fc.constantFrom(...LOCALES), fc.nat({ max: 2_000_000 }), (locale, um) => {
        expect(parseLength(typedLength(um, 'mm', locale), 'mm', locale)).toBe(um);
      }),
    );
  });

  test('inches are kept to within their fourth decimal', () => {
    fc.assert(
      fc.property(fc.nat({ max: 2_000_000 }), (um) => {
        const again = parseLength(typedLength(um, 'in', 'en'), 'in', 'en');
        expect(Math.abs((again ?? Number.NaN) - um)).toBeLessThanOrEqual(2);
      }),
    );
  });

  test.each([
    ['5.5', 139_700],
    ['5 1/2', 139_700],
    ['5-1/2', 139_700],
    ['1/2', 12_700],
    ['6', 152_400],
  ])('%s in is %i µm', (text, um) => {
    expect(parseLength(text, 'in', 'en')).toBe(um);
  });

  test.each(['1/0', '5 1/', 'five', '-5'])('%s is no length in inches', (text) => {
    expect(parseLength(text, 'in', 'en')).toBeUndefined();
  });

  test('the reading form carries its unit', () => {
    expect(formatLength(129_000, 'mm', 'de')).toBe('129\u00a0mm');
    expect(formatLength(139_700, 'in', 'en')).toBe('5.5\u00a0in');
  });
});

describe('days', () => {
  test.each(['2024-02-30', '2023-02-29', '2024-2-1', 'today', '2024-13-01', ''])('%s is no day', (text) => {
    expect(isDay(text)).toBe(false);
  });

  test('a day is read the same in every time zone of the machine', () => {
    expect(isDay('2024-02-29')).toBe(true);
    expect(formatDay('2024-05-01', 'en-GB')).toBe('1 May 2024');
    expect(formatDay('not a day')).toBe('not a day');
  });
});
