import { checkDigit13, type Isbn, rangeTable } from '../../../src/rules/isbn/index.ts';

/** A repeatable sequence of numbers in [0, 1) (xorshift), for runs too long for a property library. */
export function sequence(seed: number): () => number {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

/** Twelve digits with their check digit. */
export function complete(first12: string): string {
  return first12 + checkDigit13(first12);
}

/** Thirteen check-valid digits with prefix 978 or 979, in use or not. */
export function anyNumber(next: () => number): string {
  const prefix = next() < 0.8 ? '978' : '979';
  return complete(prefix + String(Math.floor(next() * 1e9)).padStart(9, '0'));
}

/** The first and last number of every rule of the table, with what the rule says; length 0 is not in use. */
export function edgeNumbers(): { isbn13: string; group: string; length: number }[] {
  return rangeTable().groups.flatMap((group) =>
    group.rules.flatMap(([from, to, length]) => {
      const width = 9 - group.group.length;
      const fill = (seven: number, pad: string): string =>
        String(seven).padStart(7, '0').slice(0, width).padEnd(width, pad);
      return [fill(from, '0'), fill(to, '9')].map((rest) => ({
        isbn13: complete(group.digits + rest),
        group: group.head.slice(0, -1),
        length,
      }));
    }),
  );
}

/** All fields of a record as a plain object: some of them are getters, which toEqual does not compare. */
export function fieldsOf(isbn: Isbn): Isbn {
  const { isbn13, prefix, group, registrant, publication, check, hyphenated, agency, isbn10 } = isbn;
  return { isbn13, prefix, group, registrant, publication, check, hyphenated, agency, isbn10 };
}
