import { describe, expect, it } from 'vitest';
import {
  blockNumber,
  checkDigit10,
  checkDigit13,
  hyphenate,
  indexInBlock,
  parseBlock,
  parseIsbn,
  splitIsbn,
  toIsbn10,
  toIsbn13,
} from '../../src/rules/isbn/index.ts';
import { fieldsOf } from '../rules/isbn/numbers.ts';

/** STANDARDS A7: computed from the range file, with the ISBN manual's own examples. */
const HYPHENATED = [
  '978-0-306-40615-7',
  '978-3-16-148410-0',
  '978-1-873671-00-9',
  '978-92-95055-12-4',
  '978-0-00-723283-3',
  '978-1-4028-9462-6',
  '978-1-59327-950-9',
  '978-0-13-609181-3',
  '978-1-7343145-0-2',
  '979-8-88645-002-6',
  '979-8-9850000-0-9',
  '979-12-200-1234-8',
];

/** STANDARDS A6: published pairs of ISBN-10 and ISBN-13. */
const PAIRS = [
  ['0306406152', '9780306406157'],
  ['316148410X', '9783161484100'],
  ['1402894627', '9781402894626'],
  ['0876543212', '9780876543214'],
  ['080442957X', '9780804429573'],
  ['033028987X', '9780330289870'],
] as const;

/** STANDARDS A8: a block of ten in full. */
const BLOCK_OF_TEN = ['0-2', '1-9', '2-6', '3-3', '4-0', '5-7', '6-4', '7-1', '8-8', '9-5'].map(
  (end) => `978-1-7343145-${end}`,
);

describe('published ISBN values', () => {
  it('computes the check digits of the agency (A4, A5)', () => {
    expect(checkDigit13('978030640615')).toBe('7');
    expect(checkDigit10('030640615')).toBe('2');
    // A4: a swap of neighbours that differ by five goes unseen; both are valid.
    expect(parseIsbn('9780306406157').ok).toBe(true);
    expect(parseIsbn('9780306401657').ok).toBe(true);
  });

  it.each(PAIRS)('converts %s and %s into each other (A6)', (ten, thirteen) => {
    expect(toIsbn13(ten)).toBe(thirteen);
    expect(toIsbn10(thirteen)).toBe(ten);
    const fromTen = parseIsbn(ten);
    const fromThirteen = parseIsbn(thirteen);
    expect(fromTen.ok && fieldsOf(fromTen.isbn)).toEqual(fromThirteen.ok && fieldsOf(fromThirteen.isbn));
  });

  it('has no ISBN-10 for prefix 979 (A6)', () => {
    expect(toIsbn10('9798886450026')).toBeNull();
  });

  it.each(HYPHENATED)('hyphenates %s (A7)', (hyphenated) => {
    const digits = hyphenated.replaceAll('-', '');
    expect(hyphenate(digits)).toBe(hyphenated);
    for (const written of [digits, hyphenated]) {
      const parsed = parseIsbn(written);
      expect(parsed.ok && parsed.isbn.hyphenated).toBe(hyphenated);
      expect(parsed.ok && parsed.isbn.isbn13).toBe(digits);
    }
    const parts = splitIsbn(digits);
    expect(parts && [parts.prefix, parts.group, parts.registrant, parts.publication, parts.check]).toEqual(
      hyphenated.split('-'),
    );
  });

  it('refuses a fitting check digit in a range that is not in use (A7)', () => {
    const parsed = parseIsbn('9791200000006');
    expect(parsed.ok || parsed.problem.code).toBe('range-not-in-use');
  });

  it('knows a group defined after 2005 (A7: 978-600)', () => {
    expect(parseIsbn('9786000000004').ok).toBe(true);
  });

  it('lists the block of ten (A8)', () => {
    const parsed = parseBlock('978-1-7343145');
    if (!parsed.ok) throw new Error(parsed.problem.message);
    expect(parsed.block.capacity).toBe(10);
    const numbers = Array.from({ length: 10 }, (_, i) => blockNumber(parsed.block, i));
    expect(numbers.map((number) => hyphenate(number))).toEqual(BLOCK_OF_TEN);
    expect(numbers.map((number) => indexInBlock(parsed.block, number))).toEqual([
      0, 1, 2, 3, 4, 5, 6, 7, 8, 9,
    ]);
  });

  it.each([
    ['978-0-19', 1_000_000],
    ['978-0-306', 100_000],
    ['978-1-4028', 10_000],
    ['979-8-88645', 1_000],
    ['979-8-969999', 100],
    ['978-1-7343145', 10],
  ])('gives block %s the capacity %i (A8)', (prefix, capacity) => {
    const parsed = parseBlock(prefix);
    expect(parsed.ok && parsed.block.capacity).toBe(capacity);
    expect(parsed.ok && parsed.block.hyphenatedPrefix).toBe(prefix);
  });

  it.each([
    ['030', '034', 3],
    ['200', '239', 3],
    ['1700', '1999', 4],
    ['2400', '8849', 4],
    ['88500', '90999', 5],
    ['950000', '969999', 6],
    ['9850000', '9999999', 7],
  ])('gives registrants %s to %s of 979-8 their %i digits (A8)', (first, last, length) => {
    for (const registrant of [first, last]) {
      const parsed = parseBlock(`979-8-${registrant}`);
      expect(parsed.ok && parsed.block.capacity).toBe(10 ** (8 - length));
    }
  });

  it.each(['000', '029', '035', '169', '910000', '949999', '970000', '9849999'])(
    'has no registrant %s in 979-8 (A8: the rest has length 0)',
    (registrant) => {
      const parsed = parseBlock(`979-8-${registrant}`);
      expect(parsed.ok || parsed.problem.code).toBe('range-not-in-use');
    },
  );
});
