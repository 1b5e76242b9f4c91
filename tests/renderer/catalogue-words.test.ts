import { expect, test } from 'vitest';
import { type FormatRow, shortEdition, type WorkRow } from '../../renderer/screens/catalogue/words.ts';

const format = (editionId: number, editionLabel: string): FormatRow => ({
  id: editionId * 10,
  editionId,
  editionLabel,
  name: 'Paperback',
  standing: 'live',
  hyphenated: null,
});

const work = (editions: number, formats: FormatRow[]): WorkRow => ({
  id: 1,
  title: 'The Salt Almanac',
  contributors: '',
  editions,
  formats,
});

const second = format(2, 'The Salt Almanac, 2nd edition');
const plain = format(1, 'The Salt Almanac');

test('an edition without a number is the first one where it is the earliest of several', () => {
  expect(shortEdition(work(2, [second, plain]), plain)).toBe('first edition');
  expect(shortEdition(work(2, [second, plain]), second)).toBe('2nd edition');
});

test('it is not called first where it is not, or may not be, the earliest', () => {
  expect(shortEdition(work(2, [plain, format(3, 'The Salt Almanac, 1st edition')]), plain)).toBe(
    'no edition number',
  );
  expect(shortEdition(work(3, [second, plain]), plain)).toBe('no edition number');
});

test('the only edition goes unnamed, and another title is given in full', () => {
  expect(shortEdition(work(1, [plain]), plain)).toBe('');
  expect(shortEdition(work(1, []), format(1, 'Salt'))).toBe('Salt');
});
