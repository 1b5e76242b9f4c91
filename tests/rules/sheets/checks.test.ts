import { describe, expect, it, test } from 'vitest';
import { BLANK_CHANNEL } from '../../../src/contract/channels.ts';
import type { Edition } from '../../../src/contract/editions.ts';
import { BLANK_EDITION } from '../../../src/contract/editions.ts';
import type { Format } from '../../../src/contract/formats.ts';
import { BLANK_FORMAT } from '../../../src/contract/formats.ts';
import type { Listing } from '../../../src/contract/listings.ts';
import type { Markup, SheetItemName } from '../../../src/contract/submissions.ts';
import type { SheetChannel, SheetFacts } from '../../../src/rules/sheets/facts.ts';
import { forbiddenMarkup, hasMarkup } from '../../../src/rules/sheets/markup.ts';
import { sheetItems } from '../../../src/rules/sheets/sheet.ts';

const subject = (code: string) => ({ scheme: 'own' as const, code, heading: '' });

function facts(
  edition: Partial<Edition>,
  channel: Partial<SheetChannel> = {},
  format: Partial<Format> = {},
): SheetFacts {
  return {
    edition: {
      ...BLANK_EDITION,
      title: 'The Salt Almanac',
      description: 'A year on the marsh.',
      contributors: [{ role: 'A01', name: 'Maren Oskarsdal' }],
      lock: null,
      ...edition,
    } as Edition,
    format: {
      ...BLANK_FORMAT,
      form: 'BC',
      isbn13: '9798969999008',
      hyphenated: '979-8-969999-00-8',
      lock: null,
      prices: [{ currency: 'GBP', amountMinor: 999, tax: 'including' }],
      ...format,
    } as Format,
    listing: { firstSentOn: null, discountBp: null, returns: null, onSaleDate: null } as Listing,
    channel: { ...BLANK_CHANNEL, name: 'Lanternshelf', ...channel },
    publisher: 'Halyard & Fen',
  };
}

const problems = (given: SheetFacts) =>
  sheetItems(given).flatMap((item) => item.problems.map((problem) => [item.of, problem]));

const cases: [string, SheetFacts, SheetItemName, string][] = [
  [
    'a long title',
    facts({ title: 'Twelve chars' }, { titleLimit: 11 }),
    'title',
    '12 characters; Lanternshelf takes 11.',
  ],
  [
    'a long subtitle',
    facts({ subtitle: 'ééé' }, { subtitleLimit: 2 }),
    'subtitle',
    '3 characters; Lanternshelf takes 2.',
  ],
  [
    'a long description',
    facts({ description: 'abcd' }, { descriptionLimit: 3 }),
    'description',
    '4 characters',
  ],
  [
    'a subject too many',
    facts({ subjects: ['A', 'B'].map(subject) }, { subjectLimit: 1 }),
    'subjects',
    'takes 1; this one is left out there',
  ],
  [
    'more subjects than customary',
    facts({ subjects: ['A', 'B', 'C', 'D'].map(subject) }),
    'subjects',
    'Three subjects are customary; there are 4',
  ],
  [
    'a keyword too many',
    facts({ keywords: ['a', 'b'] }, { keywordLimit: 1 }),
    'keywords',
    '2 keywords; Lanternshelf takes 1.',
  ],
  [
    'a keyword that holds the separator',
    facts({ keywords: ['salt; marsh'] }),
    'keywords',
    '“salt; marsh” holds the sign ;',
  ],
  ['markup in a title', facts({ title: 'The <i>Salt</i> Almanac' }), 'title', 'only plain text belongs here'],
  [
    'markup where none is taken',
    facts({ description: '<p>A year.</p>' }, { descriptionMarkup: 'none' }),
    'description',
    'takes no markup; take <p> and the like out',
  ],
  ['nothing where something is needed', facts({ description: ' ' }), 'description', 'Nothing is recorded'],
  ['no price', facts({}, {}, { prices: [] }), 'prices', 'Nothing is recorded'],
  ['no number', facts({}, {}, { isbn13: null, hyphenated: null }), 'isbn', 'Nothing is recorded'],
  ['nobody who wrote it', facts({ contributors: [] }), 'contributors', 'Nothing is recorded'],
];

describe('a sheet', () => {
  it('that keeps to every limit has no problem', () => {
    const channel = { titleLimit: 16, descriptionLimit: 20, subjectLimit: 1, keywordLimit: 1 };
    expect(problems(facts({ subjects: [subject('A')], keywords: ['a'] }, channel))).toEqual([]);
  });

  it.each(cases)('tells of %s, and of nothing else', (_name, given, of, says) => {
    const found = problems(given);
    expect(found).toHaveLength(1);
    expect(found[0]).toEqual([of, expect.stringContaining(says)]);
  });
});

const markup: [string, Markup, string | null][] = [
  ['Plain words, 3 < 4 and 5 > 2.', 'none', null],
  ['Salt & pepper', 'none', null],
  ['Salt &amp; pepper', 'none', '&amp;'],
  ['<p>One.</p><p>Two.</p>', 'none', '<p>'],
  ['<p>One.<br>Two <em>three</em>.</p>', 'simple HTML', null],
  ['<p>One.<br/>Two.</p>', 'simple HTML', null],
  ['<ul><li>One</li></ul>', 'simple HTML', null],
  ['<h2>One</h2>', 'simple HTML', '<h2>'],
  ['<p class="x">One</p>', 'simple HTML', '<p class="x">'],
  ['<a href="https://example.org">One</a>', 'simple HTML', '<a href="https://example.org">'],
  ['<p>One', 'simple HTML', '<p>'],
  ['<b><i>One</b></i>', 'simple HTML', '</b>'],
  ['One</p>', 'simple HTML', '</p>'],
  ['<script>alert(1)</script>', 'any', null],
];

test.each(markup)('%s in a channel that takes %s', (text, taken, names) => {
  const said = forbiddenMarkup(text, taken, 'Lanternshelf');
  if (names === null) expect(said).toBeNull();
  else expect(said).toContain(names);
});

test('comparisons and ampersands are no markup', () => {
  expect(['a < b', 'R&D', 'x <- y', 'AT&T; and more'].map(hasMarkup)).toEqual([false, false, false, true]);
});
