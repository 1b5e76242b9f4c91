import type { NumberRow } from '../contract/numbers.ts';
import { blockNumber, freeRuns, hyphenate, type Run } from '../rules/isbn/index.ts';
import type { ReadDb, WriteDb } from './connection.ts';

/** A block as stored, with what follows from its digits. */
export interface StoredBlock {
  id: number;
  digits: string;
  hyphenatedPrefix: string;
  agency: string;
  label: string;
  note: string;
  boughtOn: string | null;
  costMinor: number | null;
  costCurrency: string | null;
  publicationDigits: number;
  reserved: number;
  assigned: number;
  spent: number;
}

const BLOCKS = `SELECT b.id, b.digits, b.hyphenated_prefix AS hyphenatedPrefix, b.agency, b.label, b.note,
    b.bought_on AS boughtOn, b.cost_minor AS costMinor, b.cost_currency AS costCurrency,
    b.publication_digits AS publicationDigits,
    coalesce(sum(n.standing = 'reserved'), 0) AS reserved, coalesce(sum(n.standing = 'assigned'), 0) AS assigned,
    coalesce(sum(n.standing = 'spent'), 0) AS spent
  FROM number_block b LEFT JOIN number n ON n.block_id = b.id`;

/** Every block with how many of its numbers stand where, oldest first. */
export function allBlocks(db: ReadDb): StoredBlock[] {
  return db.all<StoredBlock>(`${BLOCKS} GROUP BY b.id ORDER BY b.id`);
}

/** One block with its counts. */
export function blockById(db: ReadDb, id: number): StoredBlock | undefined {
  return db.one<StoredBlock>(`${BLOCKS} WHERE b.id = ? GROUP BY b.id`, id);
}

/** The block a number lies in, if any is recorded. */
export function blockOf(
  db: ReadDb,
  isbn13: string,
): { id: number; digits: string; index: number } | undefined {
  return db.one(
    `SELECT id, digits, CAST(substr(?1, 1 + length(digits), publication_digits) AS INTEGER) AS "index"
     FROM number_block WHERE digits = substr(?1, 1, length(digits))`,
    isbn13,
  );
}

/**
 * Index of the first free number of a block at or after `from`, or null when none is left. Reads at most two
 * runs of taken numbers, however many are taken.
 */
export function nextFreeIndex(
  db: ReadDb,
  block: { id: number; publicationDigits: number },
  from = 0,
): number | null {
  const run = db.one<{ last: number }>(
    `SELECT last_index AS last FROM number_run WHERE block_id = ?1
       AND first_index = (SELECT max(first_index) FROM number_run WHERE block_id = ?1 AND first_index <= ?2)`,
    block.id,
    from,
  );
  const free = run && run.last >= from ? run.last + 1 : from;
  return free < 10 ** block.publicationDigits ? free : null;
}

/** The runs of taken numbers of a block, ascending. */
export function takenRuns(db: ReadDb, blockId: number): Run[] {
  return db.all<Run>(
    'SELECT first_index AS "first", last_index AS "last" FROM number_run WHERE block_id = ? ORDER BY first_index',
    blockId,
  );
}

/** The days on which numbers of recorded blocks were assigned. */
export function assignmentDays(db: ReadDb): string[] {
  return db
    .all<{ on: string }>(
      'SELECT assigned_on AS "on" FROM number WHERE assigned_on IS NOT NULL AND block_id IS NOT NULL',
    )
    .map((row) => row.on);
}

interface RawNumber {
  isbn13: string;
  blockId: number | null;
  blockIndex: number | null;
  standing: Exclude<NumberRow['standing'], 'free'>;
  formatId: number | null;
  reservedFor: string;
  since: string | null;
  spentReason: string | null;
  workId: number | null;
  title: string | null;
  editionNumber: number | null;
  form: string | null;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number | null;
}

const NUMBERS = `SELECT n.isbn13, n.block_id AS blockId, n.block_index AS blockIndex, n.standing, n.format_id AS formatId,
    n.reserved_for AS reservedFor, coalesce(n.spent_on, n.assigned_on, n.reserved_on) AS since,
    n.spent_reason AS spentReason, e.work_id AS workId, e.title, e.number AS editionNumber, f.form,
    f.form_detail AS formDetail, f.case_kind AS caseKind, f.large_print AS largePrint
  FROM number n LEFT JOIN format f ON f.id = n.format_id LEFT JOIN edition e ON e.id = f.edition_id`;

export type NamesUse = (raw: RawNumber) => string;

/** A stored number as a row of the contract. `use` names the format it belongs to. */
function rowOf(raw: RawNumber, use: NamesUse): NumberRow {
  return {
    isbn13: raw.isbn13,
    hyphenated: hyphenate(raw.isbn13) ?? raw.isbn13,
    standing: raw.standing,
    blockId: raw.blockId,
    index: raw.blockIndex,
    formatId: raw.formatId,
    usedFor: raw.formatId === null ? raw.reservedFor : use(raw),
    workId: raw.workId,
    since: raw.since,
    spentReason: raw.spentReason,
  };
}

/** One number that is not free. */
export function numberByIsbn(db: ReadDb, isbn13: string, use: NamesUse): NumberRow | undefined {
  const raw = db.one<RawNumber>(`${NUMBERS} WHERE n.isbn13 = ?`, isbn13);
  return raw && rowOf(raw, use);
}

function freeRow(block: StoredBlock, index: number): NumberRow {
  const isbn13 = blockNumber(block, index);
  return {
    isbn13,
    hyphenated: hyphenate(isbn13) ?? isbn13,
    standing: 'free',
    blockId: block.id,
    index,
    formatId: null,
    usedFor: '',
    workId: null,
    since: null,
    spentReason: null,
  };
}

/** The numbers of a block between two indexes, free ones filled in. */
export function numbersBetween(
  db: ReadDb,
  block: StoredBlock,
  from: number,
  to: number,
  use: NamesUse,
): NumberRow[] {
  const taken = new Map(
    db
      .all<RawNumber>(
        `${NUMBERS} WHERE n.block_id = ? AND n.block_index BETWEEN ? AND ?`,
        block.id,
        from,
        to - 1,
      )
      .map((raw) => [raw.blockIndex, raw]),
  );
  return Array.from({ length: to - from }, (_, offset) => {
    const raw = taken.get(from + offset);
    return raw ? rowOf(raw, use) : freeRow(block, from + offset);
  });
}

/** The free numbers of a block, skipping the first `from` of them; walks the gaps between runs of taken ones. */
export function freeNumbers(
  db: ReadDb,
  block: StoredBlock,
  from: number,
  count: number,
): { rows: NumberRow[]; total: number } {
  const capacity = 10 ** block.publicationDigits;
  const rows: NumberRow[] = [];
  let skip = from;
  const takeGap = (start: number, end: number) => {
    const length = end - start;
    for (let index = start + skip; index < end && rows.length < count; index += 1)
      rows.push(freeRow(block, index));
    skip = Math.max(0, skip - length);
  };
  for (const gap of freeRuns(takenRuns(db, block.id), capacity)) {
    if (rows.length >= count) break;
    takeGap(gap.first, gap.last + 1);
  }
  return { rows, total: capacity - block.reserved - block.assigned - block.spent };
}

/** Taken numbers of one standing (of a block, or of all and outside every block), a page at a time. */
export function numbersStanding(
  db: ReadDb,
  filter: { blockId?: number | undefined; standing?: string | undefined; from: number; count: number },
  use: NamesUse,
): { rows: NumberRow[]; total: number } {
  const where = '(?1 IS NULL OR n.block_id = ?1) AND (?2 IS NULL OR n.standing = ?2)';
  const keys = [filter.blockId ?? null, filter.standing ?? null];
  const rows = db.all<RawNumber>(
    `${NUMBERS} WHERE ${where} ORDER BY n.isbn13 LIMIT ?3 OFFSET ?4`,
    ...keys,
    filter.count,
    filter.from,
  );
  const total = db.one<{ n: number }>(`SELECT count(*) AS n FROM number n WHERE ${where}`, ...keys)?.n ?? 0;
  return { rows: rows.map((raw) => rowOf(raw, use)), total };
}

/** Takes a free number: reserved for a purpose, assigned to a format, or spent at once. */
export function insertNumber(
  db: WriteDb,
  row: {
    isbn13: string;
    reservedFor?: string;
    reservedOn?: string;
    formatId?: number;
    assignedOn?: string;
    spentOn?: string;
    spentReason?: string;
  },
): void {
  const block = blockOf(db, row.isbn13);
  db.run(
    `INSERT INTO number (isbn13, block_id, block_index, reserved_for, reserved_on, format_id, assigned_on, spent_on, spent_reason)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    row.isbn13,
    block?.id ?? null,
    block?.index ?? null,
    row.reservedFor ?? '',
    row.reservedOn ?? null,
    row.formatId ?? null,
    row.assignedOn ?? null,
    row.spentOn ?? null,
    row.spentReason ?? null,
  );
}

/** Gives numbers that were recorded before their block their place in it. */
export function adoptNumbers(
  db: WriteDb,
  block: { id: number; digits: string; publicationDigits: number },
): void {
  db.run(
    `UPDATE number SET block_id = ?1, block_index = CAST(substr(isbn13, 1 + length(?2), ?3) AS INTEGER)
     WHERE block_id IS NULL AND substr(isbn13, 1, length(?2)) = ?2`,
    block.id,
    block.digits,
    block.publicationDigits,
  );
}
