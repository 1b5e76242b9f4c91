import { describe, expect, it } from 'vitest';
import { blockNumber, blockSizes, indexInBlock, parseBlock } from '../../../src/rules/isbn/index.ts';

describe('parseBlock', () => {
  it.each([
    '979-8-969999',
    '979-8-969999-',
    '979 8 969999',
    '9798969999',
    'ISBN 979-8-969999',
    '979–8–969999',
    '979-8969999',
    '979-8-969999-00-8',
    '9798969999992',
    'ISBN 979-8-969999-50-3 (paperback)',
  ])('reads the block of 100 from %j', (text) => {
    expect(parseBlock(text)).toEqual({
      ok: true,
      block: {
        prefix: '979',
        group: '8',
        registrant: '969999',
        agency: 'United States',
        capacity: 100,
        digits: '9798969999',
        hyphenatedPrefix: '979-8-969999',
        first: '9798969999008',
        last: '9798969999992',
        publicationDigits: 2,
      },
    });
  });

  it('reads a block from a ten-digit number', () => {
    expect(parseBlock('0-306-40615-2')).toMatchObject({ ok: true, block: { hyphenatedPrefix: '978-0-306' } });
  });

  it.each([
    ['979-8-96', 'registrant-incomplete', 8, null, /has 6 digits in group 979-8/],
    ['979-8', 'registrant-incomplete', 5, null, /3, 4, 5, 6 or 7 digits/],
    ['979', 'registrant-incomplete', 3, null, /group and registrant are missing/],
    ['978-6', 'registrant-incomplete', 5, null, /group and registrant are missing/],
    [
      '979-8-00',
      'range-not-in-use',
      4,
      null,
      /979-8 \(United States\) has no registrants that begin with 00/,
    ],
    ['979-3', 'range-not-in-use', 4, null, /No group of prefix 979 begins with 3/],
    ['978-1-73431-45', 'hyphens-misplaced', 11, '978-1-7343145', /wrong place/],
    ['978-0-3064', 'too-long', 9, '978-0-306', /1 digit too long/],
    ['978-0-306-40615', 'too-long', 10, '978-0-306', /5 digits too long/],
    ['1-7343145', 'not-a-book-number', 0, '978-1-7343145', /978 or 979/],
    ['0-30', 'not-a-book-number', 0, null, /978 or 979/],
    ['979-8-969999-00-1', 'check-digit', 16, null, /call for 8/],
    ['', 'empty', null, null, /Nothing/],
    ['our block', 'no-number', null, null, /no ISBN/],
  ])('refuses %j', (text, code, position, repair, message) => {
    const read = parseBlock(text);
    expect(read).toMatchObject({ ok: false, problem: { code, position, repair } });
    expect(read.ok || read.problem.message).toMatch(message);
  });

  it('asks for hyphens where ten digits are a prefix and a number alike', () => {
    // One in eleven of the five-digit registrants of 979-10 is also a ten-digit number of group 979 under 978.
    const both = Array.from({ length: 100_000 }, (_, i) => `97910${String(i).padStart(5, '0')}`).find(
      (text) => {
        const read = parseBlock(text);
        return !read.ok && read.problem.code === 'ambiguous';
      },
    );
    if (both === undefined) throw new Error('no such digits');
    const prefix = `${both.slice(0, 3)}-${both.slice(3, 5)}-${both.slice(5)}`;
    expect(parseBlock(prefix)).toMatchObject({ ok: true, block: { digits: both } });
  });
});

describe('numbers of a block', () => {
  const block = { digits: '9798969999', publicationDigits: 2 };

  it('refuses places outside the block', () => {
    for (const index of [-1, 100, 1.5, Number.NaN])
      expect(() => blockNumber(block, index)).toThrow(RangeError);
  });

  it('finds no place for numbers of other blocks', () => {
    expect(indexInBlock(block, '9780306406157')).toBeNull();
    expect(indexInBlock(block, '979-8-969999-00-8')).toBeNull();
    expect(indexInBlock(block, '9798969999428')).toBe(42);
  });
});

describe('block sizes', () => {
  it('lists those of the United States group of 979 (STANDARDS A8)', () => {
    expect(blockSizes('979', '8').map((size) => size.capacity)).toEqual([10, 100, 1_000, 10_000, 100_000]);
    // 979-8: 030–034 and 200–239; 9850000–9999999.
    expect(blockSizes('979', '8').at(-1)?.registrants).toBe(45);
    expect(blockSizes('979', '8')[0]?.registrants).toBe(150_000);
  });

  it('knows none for a group that is not in the table', () => {
    expect(blockSizes('979', '9')).toEqual([]);
  });
});
