import { expect, it } from 'vitest';
import {
  type Isbn,
  type ParseResult,
  parseBlock,
  parseIsbn,
  tryIsbn,
} from '../../../src/rules/isbn/index.ts';
import { anyNumber, sequence } from './numbers.ts';

const ALPHABETS = [
  '0123456789',
  '0123456789-',
  '9788979 -0123456789',
  '0123456789Xx -–\u00A0\u200B',
  '0123456789.,E+x?()[]:;/_"\'=ISBNOlurn',
  '٠١٢٣٤٥٦٧٨٩９７８0123456789\uD835\uDFD7\uD800\uDFFF\u0000\n\t\u202E',
].map((alphabet) => alphabet.split(''));

/** Numbers to spoil, made once: their check digits would take longer than all the rest. */
const numbers = Array.from(
  { length: 20_000 },
  (
    (next) => () =>
      anyNumber(next)
  )(sequence(13)),
);

/** A random text: a handful of characters of one alphabet, or a valid number with up to three characters spoilt. */
function randomText(next: () => number): string {
  const pick = <T>(from: readonly T[]): T | undefined => from[Math.floor(next() * from.length)];
  const alphabet = pick(ALPHABETS) ?? [];
  if (next() < 0.5) {
    let text = '';
    for (let left = Math.floor(next() * 24); left > 0; left -= 1) text += pick(alphabet);
    return text;
  }
  let text = pick(numbers) ?? '';
  for (let left = Math.floor(next() * 4); left > 0; left -= 1) {
    const at = Math.floor(next() * text.length);
    text = text.slice(0, at) + (pick(alphabet) ?? '') + text.slice(at + (next() < 0.5 ? 1 : 0));
  }
  return text;
}

function sameNumber(read: ParseResult, isbn: Isbn): boolean {
  return read.ok && read.isbn.isbn13 === isbn.isbn13 && read.isbn.hyphenated === isbn.hyphenated;
}

it('never throws over a million random texts; what is read stays the same when it is written and read again', () => {
  const next = sequence(2_108);
  let accepted = 0;
  let repaired = 0;
  for (let i = 0; i < 1_000_000; i += 1) {
    const text = randomText(next);
    const read = parseIsbn(text);
    if (read.ok) {
      accepted += 1;
      const { isbn } = read;
      const again = [isbn.hyphenated, isbn.isbn13, isbn.isbn10 ?? isbn.isbn13].map((form) => parseIsbn(form));
      if (!again.every((one) => sameNumber(one, isbn))) expect.fail(`unstable: ${JSON.stringify(text)}`);
    } else {
      const { position, repair } = read.problem;
      if (position !== null && !(position >= 0 && position <= text.length))
        expect.fail(`place ${position} is outside ${JSON.stringify(text)}`);
      if (repair === null) continue;
      repaired += 1;
      const mended = parseIsbn(repair);
      if (!mended.ok || mended.isbn.hyphenated !== repair)
        expect.fail(`bad repair of ${JSON.stringify(text)}`);
    }
  }
  console.log(`1,000,000 random texts: ${accepted} read, ${repaired} refused with a repair offered`);
  expect(accepted).toBeGreaterThan(50_000);
  expect(repaired).toBeGreaterThan(10_000);
});

it('tryIsbn agrees with parseIsbn, and parseBlock never throws, over 50,000 random texts', () => {
  const next = sequence(979);
  for (let i = 0; i < 50_000; i += 1) {
    const text = randomText(next);
    const read = parseIsbn(text);
    const tried = tryIsbn(text);
    if (read.ok ? tried?.isbn.isbn13 !== read.isbn.isbn13 || tried.form !== read.form : tried !== null)
      expect.fail(`tryIsbn disagrees on ${JSON.stringify(text)}`);
    const block = parseBlock(text);
    if (block.ok && !parseBlock(block.block.hyphenatedPrefix).ok)
      expect.fail(`unstable block of ${JSON.stringify(text)}`);
  }
});
