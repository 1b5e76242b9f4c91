import { afterAll, expect, test } from 'vitest';
import type { CheckLine } from '../../../src/contract/proof-checks/facts.ts';
import { checkFile } from '../../../src/rules/proof-check/index.ts';
import type { ProofRecord } from '../../../src/rules/proof-check/record.ts';
import {
  cover,
  coverPdf,
  coverRecord,
  type DrawnCode,
  type DrawnCover,
} from '../../support/proof-files/cover.ts';
import { readBytes } from '../../support/proof-files/laid.ts';
import { sheetOf } from '../../support/proof-files/paint.ts';
import { makeJpeg } from '../../support/proof-files/pictures.ts';
import { type Planted, Tally } from '../../support/proof-files/tally.ts';

interface Case {
  drawn?: Partial<DrawnCover>;
  code?: Partial<DrawnCode>;
  record?: Partial<ProofRecord>;
  expected: Planted;
}

const one = (check: string, state: 'differs' | 'not found' = 'differs'): Planted => ({
  [`cover.${check}`]: state,
});

const PLANTED: Readonly<Record<string, Case>> = {
  'the hardcover’s number in the bar code': {
    code: { isbn13: '9798969999039' },
    expected: one('barcode.isbn'),
  },
  'the first edition’s number in the bar code': {
    code: { isbn13: '9798969999008' },
    expected: one('barcode.isbn'),
  },
  'a stranger’s number in the bar code': { code: { isbn13: '9780306406157' }, expected: one('barcode.isbn') },
  'last year’s price in the bar code': {
    code: { addOn: { kind: 'price', amountMinor: 1_795, currency: 'USD' } },
    expected: one('barcode.price'),
  },
  'a price in a currency that has none': {
    code: { addOn: { kind: 'price', amountMinor: 2_495, currency: 'CAD' } },
    expected: one('barcode.price'),
  },
  'a bar code of 70 per cent': { code: { magnification: 70 }, expected: one('barcode.size') },
  'a bar code cut to half its height': { code: { height: 0.5 }, expected: one('barcode.size') },
  'a quiet zone of four modules': { code: { ground_modules: 4 }, expected: one('barcode.quiet') },
  'white bars on a dark ground': {
    code: { ink: '#ffffff', ground: '#101010' },
    expected: one('barcode.colour'),
  },
  'red bars': { code: { ink: '#e00000' }, expected: one('barcode.colour') },
  'a bar code across the fold': { code: { movedMm: [20, 0] }, expected: one('barcode.place') },
  'a bar code half a millimetre from the cut': {
    code: { movedMm: [0, 7.5] },
    expected: one('barcode.place'),
  },
  'no bar code': { drawn: { code: null }, expected: one('barcode', 'not found') },
  'the spine of 240 pages': { drawn: { pages: 240, spinePt: 9 }, expected: one('size') },
  'the jacket of the hardcover': { drawn: { kind: 'jacket' }, expected: one('size') },
  'no bleed': { drawn: { page: 'bare' }, expected: one('bleed') },
  'a ground that ends at the cut': { drawn: { groundEndsAtCut: true }, expected: one('bleed') },
  'the hardcover’s number in type': { drawn: { typed: 'ISBN 979-8-969999-03-9' }, expected: one('isbn') },
  'a number in type with a wrong check digit': {
    drawn: { typed: 'ISBN 979-8-969999-02-3' },
    expected: one('isbn'),
  },
  'no number in type': { drawn: { typed: null }, expected: one('isbn', 'not found') },
  'another title': {
    drawn: { front: ['Knots for', 'Small Hands', 'Maren Oskarsdal'], spine: 'Maren Oskarsdal' },
    expected: one('title', 'not found'),
  },
  'a slip in the author’s name': {
    drawn: { front: ['The Salt', 'Almanac', 'Maren Oskarsdahl'], spine: 'The Salt Almanac' },
    expected: one('contributors'),
  },
  'the third edition': { drawn: { back: ['A year of tides.', 'Third edition'] }, expected: one('edition') },
  'spine text that runs over a fold': { drawn: { spineMovedMm: 7 }, expected: one('spine') },
  'spine text on 48 pages': {
    record: { pages: 48 },
    drawn: { pages: 48, spinePt: 4 },
    expected: one('spine'),
  },
  'text at the cut': { drawn: { stray: { text: 'Halyard & Fen', xMm: 1, yMm: 120 } }, expected: one('safe') },
  'a second page': { drawn: { morePages: 1 }, expected: one('pages') },
  'a picture of 72 pixels to the inch': {
    drawn: { picture: { bytes: makeJpeg(sheetOf(200, 150, [200, 180, 90]), 72), widthMm: 70 } },
    expected: one('resolution'),
  },
  'a font that is not put in': { drawn: { bareFont: true }, expected: one('fonts') },
};

const CLEAN: Readonly<Record<string, Omit<Case, 'expected'>>> = {
  'a paperback with boxes': {},
  'a paperback without boxes': { drawn: { page: 'plain' } },
  'a paperback with crop marks': { drawn: { page: 'with marks' } },
  'a white paperback without add-on': { drawn: { ground: null, ink: '#000000' }, code: { addOn: null } },
  'a bar code of 150 per cent without price': { code: { magnification: 150, addOn: { kind: 'none' } } },
  'a jacket': { record: { sheet: 'jacket', form: 'BB' } },
  'a case': { record: { sheet: 'case', form: 'BB' }, drawn: { page: 'plain' } },
  'a thin paperback without spine text': { record: { pages: 48 }, drawn: { pages: 48, spine: null } },
  'a book from right to left': { record: { rightToLeft: true } },
  'a picture of 300 pixels to the inch': {
    drawn: { picture: { bytes: makeJpeg(sheetOf(900, 600, [200, 180, 90]), 300), widthMm: 70 } },
  },
};

const tally = new Tally('Covers');

async function linesOf({ drawn, code, record: changes }: Omit<Case, 'expected'>): Promise<CheckLine[]> {
  const record = coverRecord(changes);
  const pdf = await coverPdf(cover(record, drawn, code));
  const { facts } = await readBytes(pdf, 'cover');
  return checkFile('cover', facts, record);
}

const raised = (lines: readonly CheckLine[]) =>
  Object.fromEntries(
    lines
      .filter(({ state }) => state === 'differs' || state === 'not found')
      .map(({ check, state }) => [check, state]),
  );

test.each(Object.entries(PLANTED))('is found: %s', async (name, { expected, ...made }) => {
  const lines = await linesOf(made);
  tally.take(name, lines, expected);
  expect(
    raised(lines),
    JSON.stringify(
      lines.filter(({ state }) => state !== 'agreed'),
      null,
      1,
    ),
  ).toEqual(expected);
});

test.each(Object.entries(CLEAN))('raises nothing: %s', async (name, made) => {
  const lines = await linesOf(made);
  tally.take(name, lines, {});
  expect(
    raised(lines),
    JSON.stringify(
      lines.filter(({ state }) => state !== 'agreed'),
      null,
      1,
    ),
  ).toEqual({});
  expect(lines.find(({ check }) => check === 'cover.size')?.state).toBe('agreed');
});

afterAll(() => {
  tally.print();
  expect(tally.missed).toEqual([]);
  expect(tally.falseAlarms).toEqual([]);
});
