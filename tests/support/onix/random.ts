import fc from 'fast-check';
import type { EditionFields } from '../../../src/contract/editions.ts';
import type { FormatFields } from '../../../src/contract/formats.ts';
import { FORMAT_STANDINGS } from '../../../src/contract/terms.ts';
import type { OnixHouse, OnixRecord } from '../../../src/exchange/onix/product.ts';

// Random records of every kind the catalogue can hold, from a seed: texts with marks, quotes, brackets, control
// characters and scripts from right to left, all forms, standings, dates around today, prices of every size.

const word = fc.constantFrom(
  'Salt',
  'Almanac',
  'Fen',
  '<b>',
  '&amp;',
  '&',
  '"',
  '>',
  ']]>',
  'ß',
  'חול',
  'مد',
  '潮',
  '\u0000',
  '\ud83c\udf0a',
  '\r',
  "d'Or",
  '—',
);
const phrase = fc.array(word, { minLength: 1, maxLength: 5 }).map((words) => `T ${words.join(' ')}`.trim());
const maybe = (arbitrary: fc.Arbitrary<string>) => fc.oneof(fc.constant(''), arbitrary);
const marked = fc.constantFrom(
  '<p>One <em>two</em></p><ul><li>a</li><li>b &amp; c</li></ul>',
  '<p>Broken <em>mark</p>',
  '<ul></ul>',
  '<script>alert(1)</script>',
  'Line one\nline two\n\nNext paragraph & more <3',
  '<p onclick="x()">No</p>',
  'plain',
  '<ol>text<li>x</li></ol>',
  '<p>a<br/>b</p> tail',
);
const day = fc
  .integer({ min: -4000, max: 1500 })
  .map((days) => new Date(Date.UTC(2026, 10, 25) + days * 86_400_000).toISOString().slice(0, 10));
const role = fc.constantFrom('A01', 'A12', 'A23', 'B01', 'B06', 'E07', 'Z99');
const subject: fc.Arbitrary<EditionFields['subjects'][number]> = fc.oneof(
  fc.record({
    scheme: fc.constant('thema' as const),
    code: fc.constantFrom('FB', 'FBA', '1DDU', '3MP', '4Z-AA-', '5AB', '6AB'),
    heading: fc.constant(''),
  }),
  fc.record({
    scheme: fc.constant('bisac' as const),
    code: fc.constant('FIC000000'),
    heading: maybe(phrase),
  }),
  fc.record({ scheme: fc.constant('own' as const), code: phrase, heading: maybe(phrase) }),
);

const edition: fc.Arbitrary<EditionFields> = fc
  .record({
    title: phrase,
    subtitle: maybe(phrase),
    number: fc.option(fc.integer({ min: 1, max: 999 })),
    statement: maybe(phrase),
    contributors: fc.array(fc.record({ role, name: phrase }), { maxLength: 4 }),
    language: fc.constantFrom('eng', 'ger', 'fre', 'heb'),
    imprint: maybe(phrase),
    series: maybe(phrase),
    seriesNumber: maybe(fc.constantFrom('1', 'II', '3 & 4')),
    description: fc.oneof(fc.constant(''), phrase, marked),
    keywords: fc.array(phrase, { maxLength: 4 }),
    subjects: fc.array(subject, { maxLength: 5 }),
    audience: fc.constantFrom('general', 'children', 'young adult', 'education', 'professional'),
    ages: fc.tuple(fc.option(fc.integer({ min: 0, max: 60 })), fc.option(fc.integer({ min: 60, max: 120 }))),
  })
  .map(({ ages, ...rest }) => ({ ...rest, ageFrom: ages[0], ageTo: ages[1] }) as EditionFields);

const price = fc.record({
  currency: fc.constantFrom('EUR', 'GBP', 'USD', 'JPY', 'KWD'),
  amountMinor: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 99_999_999 })),
  tax: fc.constantFrom('including' as const, 'excluding' as const),
});

const format: fc.Arbitrary<OnixRecord['format']> = fc
  .record({
    form: fc.constantFrom('BC', 'BB', 'BE', 'BH', 'ED', 'AJ', 'AC', 'EC'),
    formDetail: fc.option(fc.constantFrom('E101', 'E107', 'A103', 'B504', 'B105')),
    caseKind: fc.option(fc.constantFrom('laminate' as const, 'cloth' as const, 'jacket' as const)),
    size: fc.option(fc.tuple(fc.integer({ min: 1, max: 2_000_000 }), fc.integer({ min: 1, max: 2_000_000 }))),
    pages: fc.option(fc.integer({ min: 1, max: 20_000 })),
    durationMinutes: fc.option(fc.integer({ min: 1, max: 100_000 })),
    largePrint: fc.boolean(),
    publicationDate: fc.option(day),
    onSaleDate: fc.option(day),
    prices: fc.uniqueArray(price, { maxLength: 4, selector: (one) => one.currency }),
  })
  .map(({ size, ...rest }) => ({
    interiorColour: null,
    paper: '',
    finish: null,
    insideCoverPrint: false,
    rightToLeft: false,
    ...rest,
    caseKind: rest.form === 'BB' ? rest.caseKind : null,
    trimWidthUm: size?.[0] ?? null,
    trimHeightUm: size?.[1] ?? null,
  })) satisfies fc.Arbitrary<Omit<FormatFields, 'note'>>;

const related = fc.array(
  fc.record({
    codes: fc.constantFrom<string[]>(['03'], ['05'], ['06'], ['06', '27'], ['06', '13']),
    isbn13: fc.integer({ min: 1000, max: 2000 }).map((n) => validIsbn(n)),
  }),
  { maxLength: 3 },
);

/** A 13-digit number with its check digit (ISO 2108: weights 1 and 3). */
export function validIsbn(count: number): string {
  const first = `978000${String(count).padStart(6, '0')}`;
  const sum = [...first].reduce((total, digit, at) => total + Number(digit) * (at % 2 === 0 ? 1 : 3), 0);
  return `${first}${(10 - (sum % 10)) % 10}`;
}

const record = fc.record({
  workId: fc.integer({ min: 1, max: 500 }),
  edition,
  format,
  standing: fc.constantFrom(...FORMAT_STANDINGS),
  endedOn: fc.option(day),
  returns: fc.option(fc.constantFrom('Y', 'N', 'C', 'S')),
  related,
  successor: fc.boolean(),
  otherFormat: fc.boolean(),
});

export const house: fc.Arbitrary<OnixHouse> = fc.record({
  publisher: maybe(phrase),
  sender: phrase,
  lengthUnit: fc.constantFrom('mm', 'in'),
  country: fc.constantFrom('', 'GB', 'US'),
  rights: fc.constantFrom(
    { scope: 'unstated', countries: [] },
    { scope: 'world', countries: [] },
    { scope: 'only', countries: ['GB', 'IE'] },
    { scope: 'except', countries: ['US'] },
    { scope: 'except', countries: [] },
  ),
  today: fc.constant('2026-11-25'),
  demo: fc.boolean(),
}) as fc.Arbitrary<OnixHouse>;

/** A catalogue: a house and some records, each of a number of its own. */
export const catalogue = fc.record({ house, records: fc.array(record, { minLength: 1, maxLength: 2 }) });
export type RandomCatalogue = { house: OnixHouse; records: OnixRecord[] };

/** Random catalogues from a seed; numbers are given in order through all of them. */
export function randomCatalogues(count: number, seed: number): RandomCatalogue[] {
  let number = 1000;
  return fc.sample(catalogue, { numRuns: count, seed }).map(({ house: of, records }) => ({
    house: of,
    records: records.map((one) => {
      number += 1;
      const relations = one.related.filter(({ isbn13 }) => isbn13 !== validIsbn(number));
      const successor = one.successor && relations.some(({ codes }) => codes.includes('05'));
      const otherFormat = one.otherFormat && relations.some(({ codes }) => codes.includes('06'));
      return {
        ...one,
        successor,
        otherFormat,
        related: relations,
        isbn13: validIsbn(number),
        kept: [],
      } as OnixRecord;
    }),
  }));
}
