import type { NumberRow, NumberSort } from '../contract/numbers.ts';
import { formName } from '../contract/terms.ts';
import { blockNumber, freeRuns, shownIsbn } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import type { ReadDb } from '../store/connection.ts';
import {
  type StoredBlock,
  type TakenNumber,
  takenBetween,
  takenNumber,
  takenPage,
  takenRuns,
} from '../store/numbers.ts';
import { type Replacement, replacementsOf } from './replacements.ts';

/** 'The Salt Almanac, 2nd edition · Paperback' */
function nameUse(taken: TakenNumber): string {
  const edition = editionLabel({ title: taken.title ?? '', number: taken.editionNumber });
  const format = {
    form: taken.form ?? '',
    formDetail: taken.formDetail,
    caseKind: taken.caseKind,
    largePrint: taken.largePrint === 1,
  };
  return `${edition} · ${formName(format)}`;
}

function takenRow(taken: TakenNumber, replaced: ReadonlyMap<number, Replacement>): NumberRow {
  return {
    isbn13: taken.isbn13,
    hyphenated: shownIsbn(taken.isbn13),
    standing: taken.standing,
    blockId: taken.blockId,
    index: taken.blockIndex,
    formatId: taken.formatId,
    usedFor: taken.formatId === null ? taken.reservedFor : nameUse(taken),
    workId: taken.workId,
    since: taken.since,
    spentReason: taken.spentReason,
    replacedBy: replaced.get(taken.formatId ?? 0) ?? null,
  };
}

/** What took the place of the formats of some numbers. */
function replacedIn(db: ReadDb, taken: Iterable<TakenNumber>): Map<number, Replacement> {
  const ids = [...taken].map((row) => row.formatId).filter((id) => id !== null);
  return replacementsOf(db, ids);
}

function freeRow(block: StoredBlock, index: number): NumberRow {
  const isbn13 = blockNumber(block, index);
  return {
    isbn13,
    hyphenated: shownIsbn(isbn13),
    standing: 'free',
    blockId: block.id,
    index,
    formatId: null,
    usedFor: '',
    workId: null,
    since: null,
    spentReason: null,
    replacedBy: null,
  };
}

/** One number that is not free. */
export function numberByIsbn(db: ReadDb, isbn13: string): NumberRow | undefined {
  const taken = takenNumber(db, isbn13);
  return taken && takenRow(taken, replacedIn(db, [taken]));
}

/** The numbers of a block between two indexes, free ones filled in. */
export function numbersBetween(db: ReadDb, block: StoredBlock, from: number, to: number): NumberRow[] {
  const taken = takenBetween(db, block.id, from, to);
  const replaced = replacedIn(db, taken.values());
  return Array.from({ length: Math.max(0, to - from) }, (_, offset) => {
    const row = taken.get(from + offset);
    return row ? takenRow(row, replaced) : freeRow(block, from + offset);
  });
}

interface Page {
  rows: NumberRow[];
  total: number;
}

/** The free numbers of a block, skipping the first `from` of them; walks the gaps between runs of taken ones. */
function freeUpwards(db: ReadDb, block: StoredBlock, from: number, count: number): NumberRow[] {
  const rows: NumberRow[] = [];
  let skip = from;
  for (const gap of freeRuns(takenRuns(db, block.id), capacityOf(block))) {
    for (let index = gap.first + skip; index <= gap.last && rows.length < count; index += 1)
      rows.push(freeRow(block, index));
    if (rows.length >= count) break;
    skip = Math.max(0, skip - (gap.last - gap.first + 1));
  }
  return rows;
}

const capacityOf = (block: StoredBlock): number => 10 ** block.publicationDigits;

/** Which part of a list is read, and in which order. */
interface Part {
  sort: NumberSort;
  from: number;
  count: number;
}

/** A part of a list of `total` from its other end: the same rows are read upwards and turned round. */
function fromTheEnd<Row>(total: number, { from, count }: Part, read: (from: number, count: number) => Row[]) {
  const end = Math.max(0, total - from);
  const start = Math.max(0, end - count);
  return read(start, end - start).reverse();
}

/** The free numbers of a block, a page at a time; they differ by their number alone. */
export function freeNumbers(db: ReadDb, block: StoredBlock, part: Part): Page {
  const total = capacityOf(block) - block.reserved - block.assigned - block.spent;
  const read = (from: number, count: number) => freeUpwards(db, block, from, count);
  const backwards = part.sort.by === 'number' && part.sort.down;
  return {
    rows: backwards ? fromTheEnd(total, part, read) : read(part.from, part.count),
    total,
  };
}

/** Taken numbers of one standing (of a block, or of all and outside every block), a page at a time. */
export function numbersStanding(db: ReadDb, filter: Parameters<typeof takenPage>[1]): Page {
  const { rows, total } = takenPage(db, filter);
  const replaced = replacedIn(db, rows);
  return { rows: rows.map((row) => takenRow(row, replaced)), total };
}

/** Every number of a block, a page at a time. */
export function wholeBlock(db: ReadDb, block: StoredBlock, part: Part): Page {
  const total = capacityOf(block);
  const { by, down } = part.sort;
  if (by === 'number') {
    const read = (from: number, count: number) =>
      numbersBetween(db, block, from, Math.min(total, from + count));
    return { rows: down ? fromTheEnd(total, part, read) : read(part.from, part.count), total };
  }
  const taken = (from: number, count: number) =>
    numbersStanding(db, { blockId: block.id, sort: part.sort, from, count }).rows;
  const free = (from: number, count: number) => freeUpwards(db, block, from, count);
  const taking = block.reserved + block.assigned + block.spent;
  const freeFirst = by === 'standing' && !down;
  const [first, second] = freeFirst ? [free, taken] : [taken, free];
  const firsts = freeFirst ? total - taking : taking;
  const head = part.from < firsts ? first(part.from, Math.min(part.count, firsts - part.from)) : [];
  const left = Math.min(part.count - head.length, total - part.from - head.length);
  const tail = left > 0 ? second(Math.max(0, part.from - firsts), left) : [];
  return { rows: [...head, ...tail], total };
}
