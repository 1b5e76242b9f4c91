import fc from 'fast-check';
import { expect, test } from 'vitest';
import { linesOf, MOST_LINES, markedParts, replaceLine } from '../../renderer/screens/numbers/check-lines.ts';

test('lines are parted at every kind of line end, as typed, without the empty ones', () => {
  expect(linesOf('979-8-969999-00-8\r\n\n  9798969999015 \rISBN 1')).toEqual({
    texts: ['979-8-969999-00-8', '  9798969999015 ', 'ISBN 1'],
    tooLong: 0,
    beyond: 0,
  });
});

test('what the contract would refuse is left out and counted', () => {
  const { texts, tooLong, beyond } = linesOf(`${'9'.repeat(501)}\n${'1\n'.repeat(MOST_LINES + 3)}`);
  expect([texts.length, tooLong, beyond]).toEqual([MOST_LINES, 1, 3]);
});

test('a repair replaces its own line and nothing else', () => {
  expect(replaceLine('a\r\nb\r\nb\n', 'b', 'c')).toBe('a\r\nc\r\nb\n');
  expect(replaceLine('a\nb', 'gone', 'c')).toBe('a\nb');
});

test('the marked parts make up the text again, and a mark is never half a character', () => {
  expect(markedParts('97803064O6157', 8)).toEqual(['97803064', 'O', '6157']);
  expect(markedParts('1📕2', 1)).toEqual(['1', '📕', '2']);
  expect(markedParts('123', 3)).toEqual(['123', '', '']);
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), fc.option(fc.integer({ min: -2, max: 40 })), (text, at) => {
      expect(markedParts(text, at).join('')).toBe(text);
    }),
  );
});
