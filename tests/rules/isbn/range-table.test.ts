import { describe, expect, it } from 'vitest';
import bundled from '../../../resources/isbn-ranges.json' with { type: 'json' };
import {
  hyphenate,
  loadRangeTable,
  parseBlock,
  parseIsbn,
  RangeTableError,
  rangeTable,
  splitIsbn,
} from '../../../src/rules/isbn/index.ts';
import { complete, edgeNumbers } from './numbers.ts';

describe('the bundled range table', () => {
  it('says where it comes from', () => {
    const table = rangeTable();
    expect(table.source).toBe('International ISBN Agency');
    expect(table.serial).toMatch(/^[0-9a-f-]{36}$/);
    expect(table.date).toMatch(/^20[0-9]{2}-[0-9]{2}-[0-9]{2}$/);
    expect(table.groups.length).toBeGreaterThanOrEqual(287);
  });

  it('reads, splits and hyphenates both ends of every rule as the rule says', () => {
    const edges = edgeNumbers();
    expect(edges.length).toBeGreaterThan(3_700);
    for (const { isbn13, group, length } of edges) {
      const read = parseIsbn(isbn13);
      const parts = splitIsbn(isbn13);
      const hyphenated = hyphenate(isbn13);
      if (length === 0) {
        expect(read.ok || read.problem.code, isbn13).toBe('range-not-in-use');
        expect([parts, hyphenated], isbn13).toEqual([null, null]);
        continue;
      }
      if (!read.ok || parts === null) throw new Error(`${isbn13} is refused`);
      expect(`${parts.prefix}-${parts.group}`).toBe(group);
      expect(parts.registrant, isbn13).toHaveLength(length);
      const { prefix, registrant, publication, check } = read.isbn;
      expect([prefix, read.isbn.group, registrant, publication, check].join('-')).toBe(hyphenated);
      expect(Object.values(parts).slice(0, 5).join('-')).toBe(hyphenated);
      expect(read.isbn.hyphenated).toBe(hyphenated);
      const block = parseBlock(`${group}-${registrant}`);
      expect(block.ok && block.block.capacity, isbn13).toBe(10 ** publication.length);
    }
  });

  it('takes what the message does not mention as not in use', () => {
    // 978-970 has no rule for 0000000-0099999 in the message of 2026-08-22.
    expect(splitIsbn(complete('978970009999'))).toBeNull();
    expect(splitIsbn(complete('978970010000'))?.registrant).toBe('01');
  });
});

type Broken = typeof bundled & Record<string, unknown>;

/** The bundled data with one thing changed. */
function changed(change: (data: Broken) => void): Broken {
  const data = structuredClone(bundled) as Broken;
  change(data);
  return data;
}

const english = ['978-0', 'English language'];

describe('loadRangeTable', () => {
  it.each<[string, (data: Broken) => void, RegExp]>([
    ['no groups', (data) => data.groups.splice(0), /malformed at groups/],
    ['an unknown field', (data) => Object.assign(data, { extra: 1 }), /malformed/],
    [
      'a length above seven',
      (data) => data.groups.splice(0, 1, [...english, [[0, 9_999_999, 8]]]),
      /malformed at groups/,
    ],
    [
      'an eight-digit end',
      (data) => data.groups.splice(0, 1, [...english, [[0, 10_000_000, 2]]]),
      /malformed at groups/,
    ],
    ['a date that is none', (data) => Object.assign(data, { date: '2026-02-30' }), /malformed at date/],
    [
      'a backward range',
      (data) => data.groups.splice(0, 1, [...english, [[5_000_000, 4_999_999, 2]]]),
      /978-0 runs backwards/,
    ],
    [
      'an overlap',
      (data) =>
        data.groups.splice(0, 1, [
          ...english,
          [
            [0, 1_999_999, 2],
            [1_900_000, 2_999_999, 3],
          ],
        ]),
      /1900000-2999999 of 978-0 overlaps/,
    ],
    [
      'a range that cuts an element',
      (data) => data.groups.splice(0, 1, [...english, [[0, 1_950_000, 2]]]),
      /cuts through/,
    ],
    [
      'no room for a publication',
      (data) => data.groups.push(['978-99999', 'Nowhere', [[0, 9_999_999, 4]]]),
      /length 4, above 3/,
    ],
    [
      'a group of the wrong length',
      (data) => data.groups.push(['978-01', 'Nowhere', [[0, 9_999_999, 2]]]),
      /does not fit/,
    ],
    [
      'a group of an unused range',
      (data) => data.groups.push(['979-9', 'Nowhere', [[0, 9_999_999, 2]]]),
      /does not fit/,
    ],
    ['a group twice', (data) => data.groups.push(data.groups[0] ?? []), /978-0 appears twice/],
    ['a prefix twice', (data) => data.prefixes.push(data.prefixes[0] ?? []), /978 appears twice/],
  ])('refuses %s', (_, change, message) => {
    const load = (): unknown => loadRangeTable(changed(change));
    expect(load).toThrow(RangeTableError);
    expect(load).toThrow(message);
  });

  it('refuses what is no table at all', () => {
    for (const data of [null, undefined, 'x', 7, []])
      expect(() => loadRangeTable(data)).toThrow(RangeTableError);
  });

  it('lets another table decide', () => {
    const only = changed((data) => {
      data.groups.splice(0, Number.POSITIVE_INFINITY, [...english, [[0, 9_999_999, 5]]]);
    });
    const table = loadRangeTable(only);
    expect(hyphenate('9780306406157', table)).toBe('978-0-30640-615-7');
    const other = parseIsbn('9783161484100', table);
    expect(other.ok || other.problem.code).toBe('range-not-in-use');
  });
});
