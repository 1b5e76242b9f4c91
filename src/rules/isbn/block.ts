import { checkDigit13 } from './check-digit.ts';
import { parseIsbn } from './parse.ts';
import { groupAt, lengthAt, locate, type RangeTable, rangeTable } from './range-table.ts';
import type { BlockResult, BlockShape, IsbnProblem } from './types.ts';

/**
 * The block that a registrant prefix (978-1-7343145, with or without hyphens) or any one of its numbers belongs to.
 * The registrant element must be complete: nothing is added or cut silently.
 */
export function parseBlock(text: string, table: RangeTable = rangeTable()): BlockResult {
  const typed = text.trim();
  if (/^97[89][0-9 -]*$/.test(typed)) {
    const digits = typed.replace(/[ -]/g, '');
    if (digits.length < 13) return fromPrefix(digits, typed, table);
  }
  const parsed = parseIsbn(text, table);
  if (!parsed.ok) return parsed;
  const { prefix, group, registrant } = parsed.isbn;
  return fromPrefix(prefix + group + registrant, '', table);
}

function fromPrefix(digits: string, typed: string, table: RangeTable): BlockResult {
  const nine = Number(digits.slice(3).padEnd(9, '0'));
  const place = locate(table, digits[2] === '9', nine);
  const group = groupAt(table, place);
  const length = lengthAt(place);
  if (group === null || length === 0)
    return refuse({ code: 'range-not-in-use', message: 'This range of numbers is not in use.' });
  const whole = group.digits.length + length;
  if (digits.length < whole)
    return refuse({
      code: 'registrant-incomplete',
      message: `The registrant element is incomplete: in this range it has ${length} digits.`,
    });
  const registrant = digits.slice(group.digits.length, whole);
  const hyphenatedPrefix = group.head + registrant;
  if (digits.length > whole)
    return refuse({
      code: 'too-long',
      message: `The registrant element has ${length} digits here.`,
      repair: hyphenatedPrefix,
    });
  const written = typed.replace(/ /g, '').replace(/-+$/, '');
  if (written.includes('-') && written !== hyphenatedPrefix)
    return refuse({
      code: 'hyphens-misplaced',
      message: 'The hyphens stand in the wrong places.',
      repair: hyphenatedPrefix,
    });
  const publicationDigits = 12 - whole;
  const shape = { digits, publicationDigits };
  const capacity = 10 ** publicationDigits;
  return {
    ok: true,
    block: {
      prefix: group.prefix,
      group: group.group,
      registrant,
      agency: group.agency,
      capacity,
      digits,
      hyphenatedPrefix,
      first: blockNumber(shape, 0),
      last: blockNumber(shape, capacity - 1),
      publicationDigits,
    },
  };
}

function refuse(problem: Partial<IsbnProblem> & Pick<IsbnProblem, 'code' | 'message'>): BlockResult {
  return { ok: false, problem: { hint: null, position: null, repair: null, ...problem } };
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
