import { describe, expect, it } from 'vitest';
import { BLANK_EDITION } from '../../../src/contract/editions.ts';
import { BLANK_FORMAT } from '../../../src/contract/formats.ts';
import {
  type ComparedEdition,
  type ComparedFormat,
  differencesOf,
  SHAVED_UM,
} from '../../../src/rules/edition-advice/differences.ts';
import { ruleOn } from '../../../src/rules/edition-advice/index.ts';

const paperback: ComparedFormat = {
  ...BLANK_FORMAT,
  id: 1,
  form: 'BC',
  trimWidthUm: 129_000,
  trimHeightUm: 198_000,
  pages: 288,
  interiorColour: 'black',
  paper: 'cream 80 gsm',
  finish: 'matte',
  prices: [{ currency: 'GBP', amountMinor: 999, tax: 'including' }],
  channels: ['Printworks Direct'],
};
const ebook: ComparedFormat = { ...BLANK_FORMAT, id: 2, form: 'ED', formDetail: 'E101', channels: [] };
const first: ComparedEdition = {
  ...BLANK_EDITION,
  title: 'The Salt Almanac',
  subtitle: 'A Year on the Marsh',
  imprint: 'Halyard & Fen',
  contributors: [{ role: 'A01', name: 'Maren Oskarsdal' }],
  formats: [paperback, ebook],
};
const next = (part: Partial<ComparedEdition> = {}): ComparedEdition => ({
  ...first,
  number: 2,
  statement: '2nd edition',
  formats: first.formats.map((format) => ({ ...format, id: format.id + 10 })),
  ...part,
});
const nextPaperback = (part: Partial<ComparedFormat>) =>
  next({
    formats: [
      { ...paperback, ...part, id: 11 },
      { ...ebook, id: 12 },
    ],
  });
const told = (now: ComparedEdition) =>
  differencesOf(first, now).changes.map(({ change, formatIds, detail }) => ({ change, formatIds, detail }));
const person = (role: string, name = 'Tobias Wrenfield') => ({ role, name });
const withPeople = (...people: { role: string; name: string }[]) =>
  told(next({ contributors: [...first.contributors, ...people] })).map(({ change }) => change);

describe('the difference of two editions', () => {
  it('is nothing where only the number, the statement and the order of names differ', () => {
    expect(differencesOf(first, next())).toEqual({ changes: [], addedIds: [] });
    const two = [person('A01', 'Maren Oskarsdal'), person('A12', 'Ilse Quayle')];
    const old = { ...first, contributors: two };
    expect(differencesOf(old, next({ contributors: two.toReversed() })).changes).toEqual([]);
  });

  it('tells title, subtitle, language, imprint, series and data from the records', () => {
    const now = next({
      title: 'The New Salt Almanac',
      subtitle: '',
      language: 'ger',
      imprint: 'Fen Books',
      series: 'Tidewater',
      description: 'Longer now.',
      keywords: ['salt'],
    });
    expect(told(now)).toEqual([
      { change: 'title', formatIds: null, detail: 'The Salt Almanac → The New Salt Almanac' },
      { change: 'subtitle', formatIds: null, detail: 'A Year on the Marsh → none' },
      { change: 'language', formatIds: null, detail: 'eng → ger' },
      { change: 'imprint', formatIds: null, detail: 'Halyard & Fen → Fen Books' },
      { change: 'series', formatIds: null, detail: 'none → Tidewater' },
      { change: 'data', formatIds: null, detail: 'description, keywords' },
    ]);
  });

  it.each([
    ['A23', 'matter-added'],
    ['A12', 'matter-added'],
    ['B02', 'reworked'],
    ['B06', 'reworked'],
    ['A01', 'credits'],
    ['B01', 'credits'],
    ['E07', 'narration'],
    ['A36', 'cover'],
  ])('reads a newly named %s as %s', (role, change) => {
    expect(withPeople(person(role))).toEqual([change]);
  });

  it('sees a dropped name and a changed one, and gathers those of one kind in one line', () => {
    const now = next({ contributors: [person('A01', 'M. Oskarsdal'), person('A23')] });
    expect(told(now)).toEqual([
      {
        change: 'credits',
        formatIds: null,
        detail: 'new: M. Oskarsdal (author), no longer: Maren Oskarsdal (author)',
      },
      { change: 'matter-added', formatIds: null, detail: 'new: Tobias Wrenfield (foreword)' },
    ]);
  });

  it('tells a shaved trim from another one, on the measure', () => {
    expect(told(nextPaperback({ trimWidthUm: 129_000 - SHAVED_UM }))[0]?.change).toBe('trim-shaved');
    expect(told(nextPaperback({ trimHeightUm: 198_000 + SHAVED_UM + 1 }))[0]?.change).toBe('trim');
    expect(told(nextPaperback({ trimHeightUm: 198_000 + SHAVED_UM + 1 }))[0]?.formatIds).toEqual([11]);
  });

  it('tells what differs of each format', () => {
    const now = nextPaperback({
      pages: 320,
      interiorColour: 'standard colour',
      paper: 'white 90 gsm',
      prices: [{ currency: 'GBP', amountMinor: 1099, tax: 'including' }],
      channels: ['Printworks Direct', 'Broadside Wholesale'],
    });
    expect(told(now)).toEqual([
      { change: 'interior-colour', formatIds: [11], detail: 'black → standard colour' },
      { change: 'paper', formatIds: [11], detail: 'cream 80 gsm → white 90 gsm' },
      { change: 'pages', formatIds: [11], detail: '288 → 320' },
      { change: 'price', formatIds: [11], detail: '' },
      { change: 'channel', formatIds: [11], detail: 'Broadside Wholesale' },
    ]);
  });

  it('takes what is not recorded yet for no difference', () => {
    expect(told(nextPaperback({ pages: null, paper: '', interiorColour: null, finish: null }))).toEqual([]);
    expect(told(nextPaperback({ trimWidthUm: null, trimHeightUm: null }))).toEqual([]);
  });

  it('sees another file format, large print, and a form that follows none', () => {
    const now = next({
      formats: [
        { ...paperback, id: 11, largePrint: true },
        { ...ebook, id: 12, formDetail: 'E107' },
        { ...BLANK_FORMAT, id: 13, form: 'BB', caseKind: 'jacket', channels: [] },
      ],
    });
    const { changes, addedIds } = differencesOf(first, now);
    expect(changes.map(({ change, detail }) => [change, detail])).toEqual([
      ['large-print', 'ordinary print → large print'],
      ['file-format', 'E-book (EPUB) → E-book (PDF)'],
    ]);
    expect(addedIds).toEqual([13]);
  });

  it('says of everything it tells that the records told it', () => {
    const now = nextPaperback({ pages: 300, prices: [] });
    const { changes } = differencesOf(first, { ...now, title: 'Other', series: 'Tidewater' });
    expect(changes.length).toBe(4);
    for (const change of changes) {
      expect(change.told).toBe('record');
      expect(ruleOn(change.change).recorded, change.change).toBe(true);
    }
  });
});
