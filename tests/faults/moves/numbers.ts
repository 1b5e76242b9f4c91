import type { Maker, Move } from '../../support/history.ts';
import { listingsOf, numberOf, type World } from '../world.ts';

/** Prefixes of invented blocks of a hundred numbers. */
const PREFIXES = ['979-8-969999', '979-8-969998', '979-8-969997'];

/** Closes twelve digits with the check digit of ISO 2108: weights 1 and 3, sum divisible by 10. */
export function closed(twelve: string): string {
  const sum = [...twelve].reduce((total, digit, at) => total + Number(digit) * (at % 2 === 0 ? 1 : 3), 0);
  return `${twelve}${(10 - (sum % 10)) % 10}`;
}

const numberAt = (digits: string, index: number) =>
  closed(digits + String(index).padStart(12 - digits.length, '0'));

const blockOf = (world: World, isbn: string): number | null =>
  [...world.blocks].find(([, block]) => isbn.startsWith(block.digits))?.[0] ?? null;

/** The first free numbers of the oldest block that has so many. */
function nextFree(world: World, count: number): string[] | null {
  for (const { digits } of world.blocks.values()) {
    const free: string[] = [];
    for (let index = 0; index < 10 ** (12 - digits.length) && free.length < count; index += 1)
      if (!world.numbers.has(numberAt(digits, index))) free.push(numberAt(digits, index));
    if (free.length === count) return free;
  }
  return null;
}

const standing = (world: World, ...standings: string[]) =>
  [...world.numbers].filter(([, number]) => standings.includes(number.standing)).map(([isbn]) => isbn);

const taken = (world: World, isbn: string) =>
  world.numbers.get(isbn)?.standing === 'spent' ? 'NUMBER_SPENT' : 'NUMBER_TAKEN';

const set = (
  world: World,
  isbn: string,
  number: { standing: 'reserved' | 'assigned' | 'spent'; formatId: number | null },
) => world.numbers.set(isbn, { blockId: blockOf(world, isbn), ...number });

/** Numbers that no command may take: a wrong check digit, no number at all, a book's of nobody here. */
const INVALID = ['9798969999001', '979-8-969999', 'ISBN', ''];
// Two of nobody's blocks here, and one of a block that may be recorded later.
const OUTSIDE = ['9780306406157', '9791090636071', closed('979896999705')];

const addBlock: Maker = (world, dice, wrong) => {
  const prefix = dice.of(PREFIXES) ?? '';
  const digits = prefix.replaceAll('-', '');
  if (wrong)
    return {
      name: 'blocks.add',
      input: { prefix: dice.oneOf('979-8-9699', 'a block', '978') },
      expect: 'refused',
    };
  if ([...world.blocks.values()].some((block) => block.digits === digits))
    return { name: 'blocks.add', input: { prefix }, expect: 'BLOCK_OVERLAP' };
  return {
    name: 'blocks.add',
    input: { prefix, label: 'Another block' },
    expect: 'ok',
    after: (next, value: { id: number }) => {
      next.blocks.set(value.id, { digits });
      for (const [isbn, number] of next.numbers)
        if (number.blockId === null && isbn.startsWith(digits)) number.blockId = value.id;
    },
  };
};

const reserve: Maker = (world, dice, wrong) => {
  const move = (input: object, expect: Move['expect']): Move => ({
    name: 'numbers.reserve',
    input: { reservedFor: 'a series', ...input },
    expect,
  });
  if (wrong) {
    const isbn = dice.of([...world.numbers.keys()]);
    const wrongs: Move[] = [
      move({ isbn: dice.of(INVALID) }, 'NUMBER_INVALID'),
      move(
        { isbn: OUTSIDE.find((n) => !world.numbers.has(n) && blockOf(world, n) === null) ?? '' },
        'refused',
      ),
      move({ count: 0 }, 'BAD_INPUT'),
      move({ blockId: 9000 }, 'NOT_FOUND'),
      move({ reservedFor: ' ' }, 'BAD_INPUT'),
    ];
    return isbn === undefined || dice.below(2) === 0 ? (dice.of(wrongs) ?? null) : move({ isbn }, 'refused');
  }
  const count = 1 + dice.below(3);
  const picked = nextFree(world, count);
  if (!picked) return move({ count }, 'BLOCK_EMPTY');
  return {
    ...move({ count }, 'ok'),
    after: (next) => {
      for (const isbn of picked) set(next, isbn, { standing: 'reserved', formatId: null });
    },
  };
};

const release: Maker = (world, dice, wrong) => {
  const reserved = standing(world, 'reserved');
  const isbn = wrong
    ? (dice.of([...standing(world, 'assigned', 'spent'), ...INVALID]) ?? '')
    : dice.of(reserved);
  if (isbn === undefined) return null;
  const known = world.numbers.get(isbn);
  if (!known) return { name: 'numbers.release', input: { isbn }, expect: 'NUMBER_INVALID' };
  if (known.standing !== 'reserved')
    return { name: 'numbers.release', input: { isbn }, expect: taken(world, isbn) };
  return {
    name: 'numbers.release',
    input: { isbn },
    expect: 'ok',
    after: (next) => next.numbers.delete(isbn),
  };
};

/** What must come of giving a format this number, or the next free one. */
function expectedOfAssigning(world: World, formatId: number, isbn: string | undefined): Move['expect'] {
  const format = world.formats.get(formatId);
  if (!format) return 'NOT_FOUND';
  if (format.cancelled) return 'FIELD_LOCKED';
  if (numberOf(world, formatId) !== undefined) return 'NUMBER_TAKEN';
  if (isbn === undefined) return nextFree(world, 1) ? 'ok' : 'BLOCK_EMPTY';
  const known = world.numbers.get(isbn);
  return known && known.standing !== 'reserved' ? taken(world, isbn) : 'ok';
}

const assign: Maker = (world, dice, wrong) => {
  const formats = [...world.formats.keys()];
  const open = formats.filter((id) => expectedOfAssigning(world, id, undefined) === 'ok');
  const formatId = wrong ? (dice.of([...formats, 9000]) ?? 9000) : dice.of(open);
  if (formatId === undefined) return null;
  const choice = dice.below(4);
  const pick = choice === 0 ? dice.of(standing(world, 'reserved')) : undefined;
  const other = choice === 1 ? dice.of(wrong ? [...world.numbers.keys()] : OUTSIDE) : undefined;
  const isbn = pick ?? other;
  const expect = expectedOfAssigning(world, formatId, isbn);
  const got = isbn ?? nextFree(world, 1)?.[0] ?? '';
  return {
    name: 'numbers.assign',
    input: { formatId, ...(isbn === undefined ? {} : { isbn }), outsideBlocks: true },
    expect,
    after: (next) => set(next, got, { standing: 'assigned', formatId }),
  };
};

const spend: Maker = (world, dice, wrong) => {
  const move = (isbn: string, expect: Move['expect']): Move => ({
    name: 'numbers.spend',
    input: { isbn, reason: 'misprinted' },
    expect,
  });
  if (wrong) {
    const spent = dice.of(standing(world, 'spent'));
    if (spent !== undefined && dice.below(2) === 0) return move(spent, 'NUMBER_SPENT');
    const outside = OUTSIDE.find((n) => !world.numbers.has(n) && blockOf(world, n) === null);
    return outside !== undefined && dice.below(2) === 0
      ? move(outside, 'NUMBER_OUTSIDE_BLOCKS')
      : move(dice.of(INVALID) ?? '', 'NUMBER_INVALID');
  }
  const isbn = dice.of([...standing(world, 'reserved', 'assigned'), ...(nextFree(world, 1) ?? [])]);
  if (isbn === undefined) return null;
  const formatId = world.numbers.get(isbn)?.formatId ?? null;
  const sent = formatId !== null && listingsOf(world, formatId).some((listing) => listing.sent);
  if (sent) return move(isbn, 'FIELD_LOCKED');
  return { ...move(isbn, 'ok'), after: (next) => set(next, isbn, { standing: 'spent', formatId }) };
};

export const numberMoves = { addBlock, reserve, release, assign, spend };
