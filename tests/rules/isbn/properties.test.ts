import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  blockNumber,
  blocksOverlap,
  hyphenate,
  type Isbn,
  indexInBlock,
  parseBlock,
  parseIsbn,
  toIsbn10,
  toIsbn13,
} from '../../../src/rules/isbn/index.ts';
import { complete, fieldsOf } from './numbers.ts';

/** Any valid number of a range in use. */
const isbn: fc.Arbitrary<Isbn> = fc
  .tuple(fc.constantFrom('978', '978', '9798', '97912'), fc.integer({ min: 0, max: 999_999_999 }))
  .map(([prefix, rest]) => parseIsbn(complete((prefix + String(rest).padStart(9, '0')).slice(0, 12))))
  .filter((read) => read.ok)
  .map((read) => read.isbn);

function replaceAt(text: string, at: number, character: string): string {
  return text.slice(0, at) + character + text.slice(at + 1);
}

describe('check digits', () => {
  it('find every single wrong digit, in both forms', () => {
    fc.assert(
      fc.property(isbn, fc.nat({ max: 12 }), fc.integer({ min: 1, max: 9 }), ({ isbn13, isbn10 }, at, by) => {
        const wrong = replaceAt(isbn13, at, String((Number(isbn13[at]) + by) % 10));
        expect(parseIsbn(wrong).ok, wrong).toBe(false);
        if (isbn10 === null || at > 8) return;
        const wrong10 = replaceAt(isbn10, at, String((Number(isbn10[at]) + by) % 10));
        expect(parseIsbn(wrong10).ok, wrong10).toBe(false);
      }),
      { numRuns: 3_000 },
    );
  });

  it('find every swap of neighbours in ten digits, and in thirteen those whose digits do not differ by five', () => {
    fc.assert(
      fc.property(isbn, fc.nat({ max: 11 }), ({ isbn13, isbn10 }, at) => {
        const swap = (text: string): string =>
          text.slice(0, at) + (text[at + 1] ?? '') + (text[at] ?? '') + text.slice(at + 2);
        const apart = Math.abs(Number(isbn13[at]) - Number(isbn13[at + 1]));
        if (apart !== 0 && apart !== 5) {
          const read = parseIsbn(swap(isbn13));
          expect(read.ok).toBe(false);
          // A swap that alone mends the number is offered; it may be another than the one that was made.
          if (!read.ok && read.problem.code === 'swapped-digits') expect(read.problem.repair).not.toBeNull();
        }
        if (isbn10 !== null && at < 8 && isbn10[at] !== isbn10[at + 1])
          expect(parseIsbn(swap(isbn10)).ok).toBe(false);
      }),
      { numRuns: 3_000 },
    );
  });
});

describe('forms of one number', () => {
  it('turn into each other and back', () => {
    fc.assert(
      fc.property(isbn, (number) => {
        const { isbn13, isbn10, hyphenated } = number;
        expect(hyphenated.replaceAll('-', '')).toBe(isbn13);
        expect(hyphenate(isbn13)).toBe(hyphenated);
        expect(toIsbn10(isbn13)).toBe(isbn10);
        if (isbn10 !== null) expect(toIsbn13(isbn10)).toBe(isbn13);
        const hyphenated10 = isbn10 === null ? hyphenated : hyphenated.slice(4, -1) + isbn10.slice(-1);
        const written = [
          hyphenated,
          hyphenated.replaceAll('-', ' '),
          isbn10 ?? isbn13,
          hyphenated10,
          `0${isbn13}`,
        ];
        const labelled = [
          `urn:isbn:${isbn13}`,
          `ISBN ${hyphenated}`,
          `ISBN ${written[2]}`,
          `${isbn13} 90000`,
        ];
        for (const text of [...written, hyphenated10.replaceAll('-', ' '), ...labelled]) {
          const read = parseIsbn(text);
          expect(read.ok && fieldsOf(read.isbn), text).toEqual(fieldsOf(number));
        }
      }),
      { numRuns: 2_000 },
    );
  });

  it('accept a hyphen only between elements', () => {
    fc.assert(
      fc.property(isbn, fc.integer({ min: 1, max: 12 }), ({ isbn13, hyphenated }, at) => {
        const read = parseIsbn(`${isbn13.slice(0, at)}-${isbn13.slice(at)}`);
        const ends: number[] = [];
        for (const element of hyphenated.split('-')) ends.push((ends.at(-1) ?? 0) + element.length);
        if (ends.includes(at)) expect(read.ok && read.isbn.hyphenated).toBe(hyphenated);
        else
          expect(read).toMatchObject({
            ok: false,
            problem: { code: 'hyphens-misplaced', position: at, repair: hyphenated },
          });
      }),
      { numRuns: 2_000 },
    );
  });

  it('come back from twelve digits of a rounded quantity only when nothing else rounds to it', () => {
    fc.assert(
      fc.property(isbn, ({ isbn13, hyphenated }) => {
        const read = parseIsbn((Math.round(Number(isbn13) / 10) / 1e11).toFixed(11).concat('E+12'));
        expect(read.ok || read.problem.code).toBe('spreadsheet-damage');
        if (!read.ok && read.problem.repair !== null) expect(read.problem.repair).toBe(hyphenated);
      }),
      { numRuns: 2_000 },
    );
  });
});

describe('blocks', () => {
  it('number their places and find them again', () => {
    fc.assert(
      fc.property(
        isbn,
        fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
        ({ isbn13 }, share) => {
          const read = parseBlock(isbn13);
          if (!read.ok) throw new Error(read.problem.message);
          const { block } = read;
          const index = Math.floor(share * block.capacity);
          const number = blockNumber(block, index);
          expect(indexInBlock(block, number)).toBe(index);
          expect(parseBlock(number)).toEqual(read);
          expect(parseBlock(block.hyphenatedPrefix)).toEqual(read);
          expect(indexInBlock(block, isbn13)).not.toBeNull();
          expect([block.first, block.last]).toEqual([
            blockNumber(block, 0),
            blockNumber(block, block.capacity - 1),
          ]);
        },
      ),
      { numRuns: 2_000 },
    );
  });

  it('share numbers only with themselves', () => {
    fc.assert(
      fc.property(isbn, isbn, (a, b) => {
        const [one, two] = [parseBlock(a.isbn13), parseBlock(b.isbn13)];
        if (!one.ok || !two.ok) throw new Error('not a block');
        expect(blocksOverlap(one.block, two.block)).toBe(indexInBlock(one.block, b.isbn13) !== null);
        expect(blocksOverlap(one.block, one.block)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
