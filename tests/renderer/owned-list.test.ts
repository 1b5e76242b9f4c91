import { expect, test } from 'vitest';
import {
  doneInWords,
  foundInWords,
  mendLine,
  type OwnedList,
  usesOf,
} from '../../renderer/screens/numbers/owned/list.ts';
import { readOwnedNumbers } from '../../src/exchange/owned-numbers.ts';

const RIGHT = '979-8-969999-00-8';
const WRONG = '979-8-969999-00-5';

test('a wrong number is mended on its own line, whatever ends the lines', () => {
  for (const end of ['\n', '\r\n', '\r']) {
    const text = ['ISBN;Title', `${RIGHT};${WRONG}`, `${WRONG};The Salt Almanac`, ''].join(end);
    expect(mendLine(text, 3, WRONG, RIGHT)).toBe(
      ['ISBN;Title', `${RIGHT};${WRONG}`, `${RIGHT};The Salt Almanac`, ''].join(end),
    );
  }
});

test('a line that does not hold the text is left alone', () => {
  const text = `ISBN\n${RIGHT}\n${WRONG}`;
  expect(mendLine(text, 2, WRONG, RIGHT)).toBeUndefined();
  expect(mendLine(text, 4, WRONG, RIGHT)).toBeUndefined();
  expect(mendLine(text, 2, '', RIGHT)).toBeUndefined();
  expect(mendLine(text, 3, WRONG, RIGHT)).toBe(`ISBN\n${RIGHT}\n${RIGHT}`);
});

test('what the reader offers mends the place that the reader names', () => {
  const text = `ISBN,Status\n979-8-969999-01-5,free\n979-8-969999-02-2,free\n979-8-969999-0O-8,assigned\n`;
  const [problem] = readOwnedNumbers(text).problems;
  if (!problem?.repair) throw new Error('The reader offered no repair.');
  const mended = mendLine(text, problem.line, problem.text, problem.repair);
  expect(readOwnedNumbers(mended ?? '').problems).toEqual([]);
});

const number = (use: OwnedList['blocks'][number]['numbers'][number]['use']) => ({
  line: 1,
  hyphenated: RIGHT,
  use,
  on: null,
  title: '',
});

test('numbers are counted by what the list says of them', () => {
  const numbers = [number('free'), number(null), number('spent'), number('free'), number('assigned')];
  expect(usesOf({ numbers })).toEqual({ free: 2, assigned: 1, spent: 1, unsaid: 1 });
});

test('what was found and what was done is told in words', () => {
  const problem = { line: 2, column: 1, text: WRONG, message: '', repair: null };
  expect(foundInWords({ blocks: [], problems: [problem] })).toBe(
    'No number is understood; 1 place needs a look.',
  );
  expect(doneInWords({ blocksAdded: 0, reserved: 0, spent: 0, leftAlone: 0 })).toEqual(['No block is new.']);
  expect(doneInWords({ blocksAdded: 1, reserved: 2, spent: 1, leftAlone: 3 })).toEqual([
    '1 block is recorded.',
    '2 numbers are reserved under the title in the list.',
    '1 number is recorded as spent.',
    '3 numbers stay as they were: free, or in use here already.',
  ]);
});
