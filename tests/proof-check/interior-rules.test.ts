import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PageFacts, PdfFacts, TextLine } from '../../src/contract/proof-checks/facts.ts';
import { linesHolding, linesNearly, searched } from '../../src/rules/proof-check/find-text.ts';
import { checkInterior } from '../../src/rules/proof-check/interior.ts';
import { pagesNamed } from '../../src/rules/proof-check/place-line.ts';
import type { ProofRecord } from '../../src/rules/proof-check/record.ts';
import { interiorRecord } from '../support/proof-files/interior.ts';

const box = (yPt: number) => ({ xPt: 54, yPt, widthPt: 200, heightPt: 12 });
const lined = (...texts: string[]): TextLine[] =>
  texts.map((text, i) => ({ page: 4, text, box: box(60 + i * 18), turned: 0 }));

const SHEET = { xPt: 0, yPt: 0, widthPt: 396, heightPt: 612 };
const page = (changes: Partial<PageFacts> = {}): PageFacts => ({
  media: SHEET,
  crop: null,
  bleed: null,
  trim: null,
  rotate: 0,
  userUnit: 1,
  blank: false,
  colour: false,
  bleeds: false,
  images: [],
  textPrint: '',
  lookPrint: null,
  ...changes,
});
const facts = (changes: Partial<PdfFacts> = {}): PdfFacts => ({
  of: 'pdf',
  version: '1.6',
  encrypted: false,
  pdfx: null,
  titleProperty: '',
  pages: Array.from({ length: 24 }, () => page()),
  fonts: [],
  lines: [],
  isbns: [],
  barcodes: [],
  edges: null,
  scripts: 0,
  attachments: 0,
  unread: [],
  ...changes,
});
const line = (check: string, changes: Partial<PdfFacts>, record: Partial<ProofRecord> = {}) =>
  checkInterior(facts(changes), interiorRecord(record)).find((one) => one.check === check);

describe('finding a text', () => {
  /** A text as a page may set it: in capitals, spaced, with hyphens and ends of lines put in. */
  const asSet = fc
    .tuple(fc.boolean(), fc.boolean(), fc.integer({ min: 1, max: 5 }))
    .map(([capitals, spaced, width]) => (text: string): string[] => {
      const cased = capitals ? text.toUpperCase() : text;
      if (spaced) return [cased.replaceAll(/(?<=\S)(?=\S)/gu, ' ')];
      const words = cased.split(' ');
      return words.flatMap((word) =>
        word.length > width + 1 ? [`${word.slice(0, width)}-`, word.slice(width)] : [word],
      );
    });

  test('it is found however it is set', () => {
    fc.assert(
      fc.property(
        asSet,
        fc.constantFrom('The Salt Almanac', 'Fish & Fen', 'L’Étoile du Nord', 'Óskarsdal’s Tide'),
        (set, title) => {
          const lines = lined('Halyard and others', ...set(title), 'Nettlewick');
          expect(linesHolding(searched(lines), title)?.map(({ text }) => text)).toEqual(set(title));
        },
      ),
    );
  });

  test.each([
    ['composed accents and others', 'Maren O\u0301skarsdal', 'Maren Óskarsdal'],
    ['ligatures', 'Tobias Wren\ufb01eld', 'Tobias Wrenfield'],
    ['typographic quotes', '“Keeper’s” Log', '"Keeper\'s" Log'],
    ['a soft hyphen', 'Alma\u00adnac', 'Almanac'],
  ])('with %s', (_, set, sought) => {
    expect(linesHolding(searched(lined(set)), sought)).toHaveLength(1);
  });

  test('a part of a word is not the word, and a slip is near', () => {
    expect(linesHolding(searched(lined('The party')), 'art')).toBeNull();
    expect(linesNearly(searched(lined('by Maren Oskarsdahl, Nettlewick')), 'Maren Oskarsdal')).toHaveLength(
      1,
    );
    expect(linesNearly(searched(lined('by Ilse Quayle')), 'Maren Oskarsdal')).toBeNull();
  });
});

describe('lines', () => {
  test('that agree carry their place', () => {
    const lines = lined(
      'The Salt Almanac',
      'Second edition',
      '© 2027 Maren Oskarsdal',
      'Tobias Wrenfield',
      'Halyard & Fen',
    );
    const isbns = [{ page: 4, raw: '979-8-969999-03-9', isbn13: '9798969999039', box: box(200) }];
    const result = checkInterior(facts({ lines, isbns }), interiorRecord());
    expect(result.filter(({ state }) => state !== 'agreed')).toEqual([]);
    const placed = ['isbn', 'title', 'edition', 'year', 'imprint', 'contributor'].map(
      (name) => `interior.${name}`,
    );
    for (const { check, page, box } of result.filter((one) => placed.includes(one.check))) {
      expect(page, check).toBe(4);
      expect(box, check).toMatchObject({ xPt: 54, widthPt: 200 });
    }
    expect(line('interior.trim', {})).toMatchObject({ state: 'agreed', page: 1, box: SHEET });
  });

  test('without any text or record cannot tell', () => {
    const result = checkInterior(
      facts(),
      interiorRecord({
        pages: null,
        trimWidthUm: null,
        trimHeightUm: null,
        interior: null,
        isbn13: null,
        year: null,
      }),
    );
    expect(result.filter(({ state }) => state === 'differs' || state === 'not found')).toEqual([]);
    expect(result.find(({ check }) => check === 'interior.title')?.advice).toMatch(/No text could be read/);
  });

  test('a tolerance holds to its edge', () => {
    const wide = (widthPt: number) => ({ pages: [page({ media: { ...SHEET, widthPt } })] });
    // 500 µm are 1.417 pt.
    expect(line('interior.trim', wide(396 + 1.41))?.state).toBe('agreed');
    expect(line('interior.trim', wide(396 + 1.43))?.state).toBe('differs');
  });

  test.each([
    ['Second edition', 2, 'agreed'],
    ['2nd ed.', 2, 'agreed'],
    ['Second, revised edition', 2, 'agreed'],
    ['First edition', 2, 'differs'],
    ['Third edition', 2, 'differs'],
    ['All rights reserved', 2, 'not found'],
    ['All rights reserved', 1, 'agreed'],
  ])('“%s” under an edition of ordinal %i', (text, ordinal, state) => {
    const lines = lined('© 2027 Maren Oskarsdal', text);
    expect(line('interior.edition', { lines }, { ordinal, statement: '' })?.state).toBe(state);
  });

  test('running text that speaks of another edition is no statement', () => {
    const text = Array.from({ length: 30 }, (_, i) => `Since the first edition, line ${i}`);
    const lines = [
      ...lined('© 2027 Maren Oskarsdal', 'Second edition'),
      ...lined(...text).map((one) => ({ ...one, page: 7 })),
    ];
    expect(line('interior.edition', { lines })?.state).toBe('agreed');
  });

  test.each([
    [['PDF/X-1a:2001', '1.3', true], 'agreed'],
    [['PDF/X-1a:2001', '1.6', true], 'differs'],
    [['PDF/X-4', '1.6', true], 'agreed'],
    [['PDF/X-4', '1.6', false], 'differs'],
    [[null, '1.2', false], 'differs'],
    [[null, '2.0', false], 'cannot tell'],
  ] as const)('a claim and a version: %j', ([pdfx, version, trimmed], state) => {
    const pages = [page({ trim: trimmed ? SHEET : null })];
    expect(line('interior.version', { pdfx, version, pages })?.state).toBe(state);
  });

  test('pictures off the trim and ornaments do not count, line art needs more', () => {
    const image = { box: box(100), widthPx: 100, heightPx: 100, ppi: 400, colour: 'grey' as const };
    const of = (changes: Partial<typeof image> | { colour: 'black and white' }) =>
      line('interior.pictures', {
        pages: [
          page({ images: [{ ...image, box: { xPt: 54, yPt: 60, widthPt: 90, heightPt: 90 }, ...changes }] }),
        ],
      });
    expect(of({})?.state).toBe('agreed');
    expect(of({ ppi: 290 })?.state).toBe('differs');
    expect(of({ colour: 'black and white' })?.state).toBe('differs');
    expect(of({ ppi: 90, box: { xPt: 500, yPt: 0, widthPt: 90, heightPt: 90 } })?.state).toBe('agreed');
    expect(of({ ppi: 90, box: { xPt: 54, yPt: 60, widthPt: 10, heightPt: 90 } })?.state).toBe('agreed');
  });
});

test('pages are named in ranges', () => {
  expect(pagesNamed([3])).toBe('page 3');
  expect(pagesNamed([3, 7, 8, 9, 12])).toBe('pages 3, 7–9 and 12');
  expect(pagesNamed([1, 2])).toBe('pages 1–2');
  expect(pagesNamed(Array.from({ length: 40 }, (_, i) => i * 2 + 1))).toMatch(/^pages 1, 3, .* and 28 more$/);
});
