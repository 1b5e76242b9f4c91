import { plainText } from './characters.ts';
import { checkDigit13 } from './check-digit.ts';
import { parseIsbn } from './parse.ts';
import { readPrefix } from './prefix.ts';
import { refuse } from './problem.ts';
import { groupAt, lengthAt, locate, type RangeTable, rangeTable } from './range-table.ts';
import { validNumber } from './repair.ts';
import type { BlockResult, BlockShape } from './types.ts';
import { unwrap } from './wrapping.ts';
import { collect, placeOfDigit, type Written } from './written.ts';

/**
 * The block that a registrant prefix (978-1-7343145, with or without hyphens) or any one of its numbers belongs to
 * (STANDARDS A8). The registrant element must be complete: nothing is added or cut silently. Never throws.
 */
export function parseBlock(text: string, table: RangeTable = rangeTable()): BlockResult {
  const plain = plainText(text.slice(0, 400));
  const { from, to, form } = unwrap(plain.text);
  // A hyphen at the end is how prefixes are often printed.
  const end = plain.text[to - 1] === '-' ? to - 1 : to;
  if (form !== null || !/^[-0-9 ]+$/.test(plain.text.slice(from, end))) return blockOfNumber(text, table);
  const written = collect(plain, from, end);
  const { digits } = written;
  if (digits.length > 12 || digits === '') return blockOfNumber(text, table);
  if (!/^97[89]/.test(digits)) return withoutPrefix(text, written, table);
  if (digits.length === 10) return tenDigits(text, written, table);
  return blockOfPrefix(written, table);
}

function blockOfNumber(text: string, table: RangeTable): BlockResult {
  const parsed = parseIsbn(text, table);
  if (!parsed.ok) return parsed;
  const { prefix, group, registrant } = parsed.isbn;
  return { ok: true, block: shapeOf(prefix + group + registrant, table) };
}

function blockOfPrefix(written: Written, table: RangeTable): BlockResult {
  const problem = readPrefix(written, table);
  return problem ?? { ok: true, block: shapeOf(written.digits, table) };
}

/** Ten digits that begin with 978 or 979 are a prefix, or a ten-digit number of group 978-978 or 978-979. */
function tenDigits(text: string, written: Written, table: RangeTable): BlockResult {
  const { digits, dashes } = written;
  const number = validNumber(digits, table);
  const closing = dashes.some(({ before }) => before === 9);
  if (number === null && !closing) return blockOfPrefix(written, table);
  if (closing) return blockOfNumber(text, table);
  const prefix = blockOfPrefix({ ...written, dashes: [] }, table);
  if (!prefix.ok) return blockOfNumber(text, table);
  if (dashes.length >= 2) return blockOfPrefix(written, table);
  return refuse(
    'ambiguous',
    `These ten digits are the prefix ${prefix.block.hyphenatedPrefix} as well as the number ${number}.`,
    {
      hint: 'Write all hyphens, so that it is clear which is meant.',
      position: placeOfDigit(written, 0),
    },
  );
}

/** A number in its ten-digit form, or a prefix from before 2007, when 978 was not written. */
function withoutPrefix(text: string, written: Written, table: RangeTable): BlockResult {
  const { digits } = written;
  const number = parseIsbn(text, table);
  if (digits.length >= 10 || (!number.ok && number.problem.repair !== null))
    return blockOfNumber(text, table);
  const nine = Number(digits.padEnd(9, '0'));
  const place = locate(table, false, nine);
  const group = groupAt(table, place);
  const whole = group === null ? 0 : group.group.length + lengthAt(place);
  const repair =
    group !== null && digits.length === whole && lengthAt(place) > 0
      ? group.head + digits.slice(group.group.length)
      : null;
  return refuse('not-a-book-number', 'The prefix of a block begins with 978 or 979.', {
    hint: repair === null ? 'Type it whole, or any one number of the block.' : `Is it ${repair}?`,
    position: placeOfDigit(written, 0),
    repair,
  });
}

/** The shape of a block whose digits are known to be a complete prefix. */
function shapeOf(digits: string, table: RangeTable): BlockShape {
  const place = locate(table, digits[2] === '9', Number(digits.slice(3).padEnd(9, '0')));
  const group = groupAt(table, place);
  if (group === null) throw new RangeError(`${digits} is no complete prefix`);
  const registrant = digits.slice(group.digits.length);
  const publicationDigits = 12 - digits.length;
  const shape = { digits, publicationDigits };
  const capacity = 10 ** publicationDigits;
  return {
    prefix: group.prefix,
    group: group.group,
    registrant,
    agency: group.agency,
    capacity,
    digits,
    hyphenatedPrefix: group.head + registrant,
    first: blockNumber(shape, 0),
    last: blockNumber(shape, capacity - 1),
    publicationDigits,
  };
}

/**
 * The ISBN-13 of the index-th number of a block, 0-based, check digit computed.
 * Throws RangeError for an index outside the block, which is a programming error.
 */
export function blockNumber(block: Pick<BlockShape, 'digits' | 'publicationDigits'>, index: number): string {
  if (!Number.isInteger(index) || index < 0 || index >= 10 ** block.publicationDigits)
    throw new RangeError(`A block of ${10 ** block.publicationDigits} numbers has no number ${index}`);
  const first12 = block.digits + String(index).padStart(block.publicationDigits, '0');
  return first12 + checkDigit13(first12);
}

/** The 0-based place of a number (thirteen digits, no hyphens) in a block; null where it belongs elsewhere. */
export function indexInBlock(
  block: Pick<BlockShape, 'digits' | 'publicationDigits'>,
  isbn13: string,
): number | null {
  if (!/^[0-9]{13}$/.test(isbn13) || !isbn13.startsWith(block.digits)) return null;
  return Number(isbn13.slice(block.digits.length, 12));
}

/** Whether two blocks share numbers: the digits of one begin with those of the other. */
export function blocksOverlap(a: Pick<BlockShape, 'digits'>, b: Pick<BlockShape, 'digits'>): boolean {
  return a.digits.startsWith(b.digits) || b.digits.startsWith(a.digits);
}
