import { expect, test } from 'vitest';
import { CSV_HEAD, csvRecords } from '../../renderer/screens/numbers/csv.ts';
import type { NumberRow } from '../../src/contract/numbers.ts';

const row = (more: Partial<NumberRow>): NumberRow => ({
  isbn13: '9798969999008',
  hyphenated: '979-8-969999-00-8',
  standing: 'free',
  blockId: 1,
  index: 0,
  formatId: null,
  usedFor: '',
  workId: null,
  since: null,
  spentReason: null,
  replacedBy: null,
  ...more,
});

test('numbers are written hyphenated, so that a spreadsheet keeps them as text', () => {
  expect(CSV_HEAD).toBe('\uFEFFISBN,Standing,Used for,Since,Why spent\r\n');
  expect(csvRecords([row({})])).toBe('979-8-969999-00-8,free,,,\r\n');
});

test('fields are quoted as RFC 4180 asks, and nothing can run as a formula', () => {
  const records = csvRecords([
    row({ standing: 'assigned', usedFor: 'Salt, "Sea" and Fen', since: '2019-01-14' }),
    row({ standing: 'spent', usedFor: '=1+1', spentReason: 'two\nlines' }),
    row({ standing: 'reserved', usedFor: '@spring' }),
  ]);
  expect(records).toBe(
    [
      '979-8-969999-00-8,assigned,"Salt, ""Sea"" and Fen",2019-01-14,',
      '979-8-969999-00-8,spent,\'=1+1,,"two\nlines"',
      "979-8-969999-00-8,reserved,'@spring,,",
      '',
    ].join('\r\n'),
  );
});
