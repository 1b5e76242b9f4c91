import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readOwnedNumbers } from '../../../src/exchange/owned-numbers.ts';
import { delimitedRecords, delimiterOf } from '../../../src/exchange/owned-records.ts';
import { blockNumber, hyphenate } from '../../../src/rules/isbn/index.ts';

const block = { digits: '9798969999', publicationDigits: 2 };
const hundred = Array.from({ length: 100 }, (_, i) => blockNumber(block, i));

describe('a list of owned numbers', () => {
  it('may be one column without a header, in any written form, and names a complete block', () => {
    const text = hundred.map((isbn, i) => (i % 2 === 0 ? isbn : (hyphenate(isbn) ?? ''))).join('\r\n');
    const { blocks, problems } = readOwnedNumbers(text);
    expect(problems).toEqual([]);
    expect(blocks).toHaveLength(1);
    expect(blocks[0]).toMatchObject({ complete: true, block: { hyphenatedPrefix: '979-8-969999' } });
    expect(blocks[0]?.numbers.map((number) => number.isbn.isbn13)).toEqual(hundred);
    expect(blocks[0]?.numbers[1]).toMatchObject({ line: 2, use: null, on: null, title: '' });
  });

  it('may have a header and say what is assigned, spent and free, since when and for what', () => {
    const text = [
      'No.;ISBN-13;Title;Status;Assigned on',
      `1;${hundred[0]};"The Salt; an ""Almanac""";assigned;2019-04-02`,
      `2;${hundred[1]};;SPENT;`,
      `3;${hundred[2]};;free;`,
      `4;${hundred[3]};;;`,
      '',
    ].join('\n');
    const { blocks, problems } = readOwnedNumbers(text);
    expect(problems).toEqual([]);
    expect(blocks[0]?.complete).toBe(false);
    expect(blocks[0]?.numbers.map(({ line, use, on, title }) => [line, use, on, title])).toEqual([
      [2, 'assigned', '2019-04-02', 'The Salt; an "Almanac"'],
      [3, 'spent', null, ''],
      [4, 'free', null, ''],
      [5, null, null, ''],
    ]);
  });

  it('counts the ten- and the thirteen-digit form in one line once, and different numbers each', () => {
    const text =
      'ISBN-13\tISBN-10\tHardcover\n978-1-7343145-0-2\t1-7343145-0-X\t9781734314519\n9781734314526\t1734314526\t\n';
    const { blocks, problems } = readOwnedNumbers(text);
    expect(blocks[0]?.numbers.map((number) => number.isbn.publication)).toEqual(['0', '1', '2']);
    expect(problems.map(({ line, column, code }) => [line, column, code])).toEqual([
      [2, 2, expect.stringMatching(/check-digit|swapped-digits/)],
      [3, 2, expect.stringMatching(/check-digit|swapped-digits/)],
    ]);
  });

  it('reports every cell it cannot take over, with line, column and reason, and mends nothing', () => {
    const text = [
      'ISBN,Status,Date',
      `${hundred[0]},used,2020-02-30`,
      '9.79897E+12,,',
      `${hundred[0]},,`,
      `${hundred[1]},perhaps,02/03/2020`,
      '979-89-69999-42-8,,',
      `"${hundred[2]}`,
    ].join('\r\n');
    const { blocks, problems } = readOwnedNumbers(text);
    expect(blocks[0]?.numbers.map(({ isbn }) => isbn.isbn13)).toEqual(hundred.slice(0, 3));
    expect(problems.map(({ line, column, code, repair }) => [line, column, code, repair])).toEqual([
      [2, 3, 'unknown-date', null],
      [3, 1, 'spreadsheet-damage', null],
      [4, null, 'duplicate', null],
      [5, 2, 'unknown-use', null],
      [5, 3, 'unknown-date', null],
      [6, 1, 'hyphens-misplaced', '979-8-969999-42-8'],
    ]);
  });

  it('sorts the numbers into their blocks', () => {
    const { blocks } = readOwnedNumbers(`9781734314519\n${hundred[5]}\n9781734314502\n`);
    expect(
      blocks.map(({ block: { hyphenatedPrefix }, numbers }) => [hyphenatedPrefix, numbers.length]),
    ).toEqual([
      ['978-1-7343145', 2],
      ['979-8-969999', 1],
    ]);
  });

  it('says so when no column holds numbers', () => {
    for (const text of ['', 'Title,Price\nThe Salt,9.99\n', 'x'])
      expect(readOwnedNumbers(text)).toMatchObject({ blocks: [], problems: [{ code: 'no-column' }] });
    expect(readOwnedNumbers(' '.repeat(20_000_001)).problems[0]?.code).toBe('too-large');
  });

  it('never throws, whatever the text', () => {
    const piece = fc.constantFrom(
      '"',
      ',',
      ';',
      '\t',
      '\r\n',
      '\n',
      '9798969999008',
      '9.8E+12',
      'ISBN',
      'a',
      ' ',
      '',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
        const { blocks, problems } = readOwnedNumbers(pieces.join(''));
        expect(blocks.length + problems.length).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 1_000 },
    );
  });
});

describe('delimited records', () => {
  it('come back as they were written by the rules of RFC 4180', () => {
    const cell = fc.stringMatching(/^[ab",;\r\n\t]{0,6}$/);
    const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(cell, cell, fc.constant('z')), { minLength: 1, maxLength: 6 }),
        (records) => {
          const text = records.map((cells) => cells.map(quoted).join(',')).join('\r\n');
          expect([...delimitedRecords(text, ',')].map((record) => record.cells)).toEqual(records);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('know the line each begins on, blank lines and quoted line breaks counted', () => {
    const text = '\uFEFFa,b\n\n"c\r\nd",e\r\nf\rg,';
    expect([...delimitedRecords(text, ',')]).toEqual([
      { line: 1, cells: ['a', 'b'] },
      { line: 3, cells: ['c\r\nd', 'e'] },
      { line: 5, cells: ['f'] },
      { line: 6, cells: ['g', ''] },
    ]);
  });

  it('take the commonest delimiter outside quotes', () => {
    expect(delimiterOf('a;b;"x,y,z,w"\n')).toBe(';');
    expect(delimiterOf('a\tb\tc, d\n')).toBe('\t');
    expect(delimiterOf('alone')).toBe(',');
  });
});
