import type { NumberRow } from '../contract/numbers.ts';
import { Refusal } from '../contract/refusal.ts';
import { numberByIsbn } from '../records/numbers.ts';
import { blockNumber, firstAdjacent, parseIsbn, shownIsbn } from '../rules/isbn/index.ts';
import type { ReadDb, WriteDb } from '../store/connection.ts';
import { allBlocks, blockById, blockOf, insertNumber, nextFreeIndex, takenRuns } from '../store/numbers.ts';

/** Reads a typed ISBN; throws NUMBER_INVALID with the exact reason and how to mend it. */
export function readIsbn(text: string): string {
  const result = parseIsbn(text);
  if (result.ok) return result.isbn.isbn13;
  throw new Refusal(
    'NUMBER_INVALID',
    [result.problem.message, result.problem.hint].filter(Boolean).join(' '),
    'isbn',
  );
}

/** The next free numbers of a block, or of the oldest block that has that many left. Throws BLOCK_EMPTY. */
export function nextFree(db: ReadDb, blockId: number | undefined, count: number): string[] {
  const blocks =
    blockId === undefined ? allBlocks(db) : [blockById(db, blockId)].filter((block) => block !== undefined);
  if (blockId !== undefined && blocks.length === 0)
    throw new Refusal('NOT_FOUND', `There is no block ${blockId}; the Numbers screen lists them.`, 'blockId');
  if (blocks.length === 0)
    throw new Refusal(
      'BLOCK_EMPTY',
      'No block of numbers is recorded yet; add your block on the Numbers screen first.',
      'blockId',
    );
  for (const block of blocks) {
    const found: string[] = [];
    let index = nextFreeIndex(db, block);
    while (index !== null && found.length < count) {
      found.push(blockNumber(block, index));
      index = nextFreeIndex(db, block, index + 1);
    }
    if (found.length === count) return found;
  }
  const where = blocks.length === 1 ? `The block ${blocks[0]?.hyphenatedPrefix}` : 'Every recorded block';
  throw new Refusal(
    'BLOCK_EMPTY',
    `${where} has fewer than ${count} free numbers left; record a further block (the ISBN agency adds a new prefix, it does not enlarge one).`,
    'blockId',
  );
}

/** Free numbers side by side, from the first block with a gap wide enough; null where there is none. */
function adjacentFree(db: ReadDb, blockId: number | undefined, count: number): string[] | null {
  for (const block of allBlocks(db)) {
    if (blockId !== undefined && block.id !== blockId) continue;
    const first = firstAdjacent(takenRuns(db, block.id), 10 ** block.publicationDigits, count);
    if (first !== null) return Array.from({ length: count }, (_, index) => blockNumber(block, first + index));
  }
  return null;
}

export function needAdjacent(db: ReadDb, blockId: number | undefined, count: number): string[] {
  const found = adjacentFree(db, blockId, count);
  if (found) return found;
  throw new Refusal(
    'BLOCK_EMPTY',
    `No block has ${count} free numbers side by side; reserve fewer, or let them be apart.`,
    'count',
  );
}

/**
 * Gives formats their numbers in this order, side by side where a block has the room, else the next free ones.
 * Answers whether they are side by side.
 */
export function assignTogether(
  db: WriteDb,
  today: string,
  formatIds: readonly number[],
  options: { blockId?: number | undefined; on?: string | undefined },
): { rows: NumberRow[]; adjacent: boolean } {
  const together = formatIds.length > 1 ? adjacentFree(db, options.blockId, formatIds.length) : null;
  const rows = formatIds.map((formatId, index) =>
    assignNumber(db, today, { formatId, ...options, isbn: together?.[index] }),
  );
  return { rows, adjacent: together !== null || rows.length === 1 };
}

export function refuseTaken(row: NumberRow): never {
  const number = row.hyphenated;
  if (row.standing === 'spent')
    throw new Refusal(
      'NUMBER_SPENT',
      `${number} is spent (${row.spentReason}) and can never be used again; take another number.`,
      'isbn',
    );
  const how = row.standing === 'reserved' ? `reserved for ${row.usedFor}` : `assigned to ${row.usedFor}`;
  throw new Refusal(
    'NUMBER_TAKEN',
    `${number} is already ${how}; a number is used once, ever. Take another number.`,
    'isbn',
  );
}

export function loadNumber(db: ReadDb, isbn13: string): NumberRow {
  const row = numberByIsbn(db, isbn13);
  if (!row) throw new Refusal('NOT_FOUND', `${shownIsbn(isbn13)} is a free number.`, 'isbn');
  return row;
}

/** Refuses a number of somebody else's block unless the caller says it is meant. */
export function refuseOutside(db: ReadDb, isbn13: string, meant: boolean): void {
  if (meant || blockOf(db, isbn13)) return;
  throw new Refusal(
    'NUMBER_OUTSIDE_BLOCKS',
    `${shownIsbn(isbn13)} lies in none of your recorded blocks; record its block first, or say that it is meant.`,
    'isbn',
  );
}

/**
 * Gives a format its number for ever: the one named (free, or reserved), or the next free one. Throws
 * NUMBER_TAKEN when the format already has a number.
 */
export function assignNumber(
  db: WriteDb,
  today: string,
  input: {
    formatId: number;
    isbn?: string | undefined;
    blockId?: number | undefined;
    outsideBlocks?: boolean;
    on?: string | undefined;
  },
): NumberRow {
  const format = db.one<{ cancelledOn: string | null; isbn13: string | null }>(
    `SELECT f.cancelled_on AS cancelledOn, n.isbn13 FROM format f
     LEFT JOIN number n ON n.format_id = f.id AND n.spent_on IS NULL WHERE f.id = ?`,
    input.formatId,
  );
  if (!format) throw new Refusal('NOT_FOUND', `There is no format ${input.formatId}.`, 'formatId');
  if (format.cancelledOn)
    throw new Refusal('FIELD_LOCKED', 'A cancelled format takes no number; make a new format.', 'formatId');
  if (format.isbn13)
    throw new Refusal(
      'NUMBER_TAKEN',
      `This format already has ${shownIsbn(format.isbn13)}; each format has one number.`,
      'formatId',
    );
  const isbn13 = input.isbn === undefined ? nextFree(db, input.blockId, 1)[0] : readIsbn(input.isbn);
  if (!isbn13) throw new Error('A free number was promised.');
  refuseOutside(db, isbn13, input.outsideBlocks ?? false);
  const known = numberByIsbn(db, isbn13);
  const on = input.on ?? today;
  if (!known) insertNumber(db, { isbn13, formatId: input.formatId, assignedOn: on });
  else if (known.standing === 'reserved')
    db.run('UPDATE number SET format_id = ?, assigned_on = ? WHERE isbn13 = ?', input.formatId, on, isbn13);
  else refuseTaken(known);
  return loadNumber(db, isbn13);
}
