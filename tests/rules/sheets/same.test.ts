import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BLANK_CHANNEL } from '../../../src/contract/channels.ts';
import { BLANK_EDITION, type Edition } from '../../../src/contract/editions.ts';
import { BLANK_FORMAT, type Format } from '../../../src/contract/formats.ts';
import type { Listing } from '../../../src/contract/listings.ts';
import { SHEET_ITEMS } from '../../../src/contract/submissions.ts';
import type { SheetFacts } from '../../../src/rules/sheets/facts.ts';
import { differencesFrom, Recorded, sentSheetOf, surelySame } from '../../../src/rules/sheets/sheet.ts';

// The quick look at a sheet that was sent against the thorough one.

const name = fc.constantFrom('', 'Salt', 'Tide');
const some = <T>(one: fc.Arbitrary<T>) => fc.array(one, { maxLength: 2 });
const edition = fc.record({
  title: name,
  series: name,
  number: fc.option(fc.integer({ min: 1, max: 2 })),
  language: fc.constantFrom('eng', 'ger'),
  imprint: name,
  description: name,
  contributors: some(fc.record({ role: fc.constantFrom('A01', 'A12'), name })),
  subjects: some(fc.record({ scheme: fc.constantFrom('own', 'thema'), code: name, heading: name })),
  keywords: some(name),
  audience: fc.constantFrom('general', 'children'),
  ageFrom: fc.option(fc.constantFrom(5, 6)),
});
const format = fc.record({
  form: fc.constantFrom('BC', 'ED', 'AJ'),
  isbn13: fc.option(fc.constantFrom('9798969999008', '9798969999015')),
  pages: fc.option(fc.constantFrom(96, 98)),
  durationMinutes: fc.option(fc.constantFrom(60, 61)),
  onSaleDate: fc.option(fc.constantFrom('2026-01-02', '2026-01-03')),
  publicationDate: fc.option(fc.constantFrom('2026-01-02', '2026-01-03')),
  prices: some(
    fc.record({
      currency: fc.constantFrom('EUR', 'GBP'),
      amountMinor: fc.constantFrom(999, 1_099),
      tax: fc.constantFrom('including', 'excluding'),
    }),
  ),
});
const listing = fc.record({
  discountBp: fc.option(fc.constantFrom(4_000, 4_500)),
  returns: fc.option(fc.constantFrom('Y', 'N')),
  onSaleDate: fc.option(fc.constantFrom('2026-01-02', '2026-01-04')),
});

const facts = fc
  .record({
    edition,
    format,
    listing,
    sheetItems: fc.uniqueArray(fc.constantFrom(...SHEET_ITEMS), { maxLength: 8 }),
    keywordSeparator: fc.constantFrom(',', ';'),
    publisher: name,
  })
  .map(
    (given): SheetFacts => ({
      edition: { ...BLANK_EDITION, lock: null, ...given.edition } as Edition,
      format: { ...BLANK_FORMAT, hyphenated: null, lock: null, ...given.format } as Format,
      listing: { firstSentOn: null, ...given.listing } as Listing,
      channel: {
        ...BLANK_CHANNEL,
        name: 'Lanternshelf',
        sheetItems: given.sheetItems,
        keywordSeparator: given.keywordSeparator,
      },
      publisher: given.publisher,
    }),
  );

test('what is recorded as it was sent is surely the same, on whatever channel and by whatever house', () => {
  fc.assert(
    fc.property(facts, facts, (sent, other) => {
      const now = { ...sent, channel: other.channel, publisher: other.publisher };
      expect(surelySame(sentSheetOf(sent), new Recorded(now), now)).toBe(true);
      expect(differencesFrom(sentSheetOf(sent), now)).toEqual([]);
    }),
    { seed: 3, numRuns: 300 },
  );
});

test('a sheet that is surely the same differs in nothing', () => {
  let same = 0;
  let differing = 0;
  const changed = fc.constantFrom('edition', 'format', 'listing');
  const property = fc.property(facts, facts, changed, fc.nat(20), (sent, other, of, at) => {
    const fields = Object.keys(other[of]);
    const field = fields[at % fields.length] ?? '';
    const now = { ...sent, [of]: { ...sent[of], [field]: Reflect.get(other[of], field) } };
    const differences = differencesFrom(sentSheetOf(sent), now);
    if (surelySame(sentSheetOf(sent), new Recorded(now), now)) {
      expect(differences).toEqual([]);
      same += 1;
    }
    if (differences.length > 0) differing += 1;
  });
  fc.assert(property, { seed: 4, numRuns: 2_000 });
  expect(same).toBeGreaterThan(200);
  expect(differing).toBeGreaterThan(100);
});

test.each([null, {}, { items: null }, { items: [{}] }, { items: [{ of: 'title' }] }])(
  'a kept sheet of the shape %j is looked at closer',
  (kept) => {
    const [now] = fc.sample(facts, { seed: 5, numRuns: 1 });
    expect(now && surelySame(kept, new Recorded(now), now)).toBe(false);
  },
);
