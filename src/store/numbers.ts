import type { NumberRow, NumberSort } from '../contract/numbers.ts';
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
    coalesce(t.reserved, 0) AS reserved, coalesce(t.assigned, 0) AS assigned, coalesce(t.spent, 0) AS spent
  FROM number_block b LEFT JOIN number_tally t ON t.block_id = b.id`;

/** Every block with how many of its numbers stand where, oldest first. */
export function allBlocks(db: ReadDb): StoredBlock[] {
  return db.all<StoredBlock>(`${BLOCKS} ORDER BY b.id`);
}

/** One block with its counts. */
export function blockById(db: ReadDb, id: number): StoredBlock | undefined {
  return db.one<StoredBlock>(`${BLOCKS} WHERE b.id = ?`, id);
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

/** A run of neighbouring taken indexes of a block, both ends included. */
interface TakenRun {
  first: number;
  last: number;
}

/** The runs of taken numbers of a block, ascending. */
export function takenRuns(db: ReadDb, blockId: number): TakenRun[] {
  return db.all<TakenRun>(
    'SELECT first_index AS "first", last_index AS "last" FROM number_run WHERE block_id = ? ORDER BY first_index',
    blockId,
  );
}

interface TakenBand {
  band: number;
  reserved: number;
  assigned: number;
  spent: number;
}

/** How many taken numbers of a block stand where in each `size` of it; bands without one are left out. */
export function takenBands(db: ReadDb, blockId: number, size: number): TakenBand[] {
  return db.all<TakenBand>(
    `SELECT block_index / CAST(?2 AS INTEGER) AS band, sum(standing = 'reserved') AS reserved, sum(standing = 'assigned') AS assigned,
       sum(standing = 'spent') AS spent FROM number WHERE block_id = ?1 GROUP BY 1`,
    blockId,
    size,
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

/** A number that is not free, with what names the format it belongs to. */
export interface TakenNumber {
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

/** One number that is not free, with what names the format it belongs to. */
export function takenNumber(db: ReadDb, isbn13: string): TakenNumber | undefined {
  return db.one<TakenNumber>(`${NUMBERS} WHERE n.isbn13 = ?`, isbn13);
}

/** The taken numbers of a block between two indexes, the second left out, by index. */
export function takenBetween(
  db: ReadDb,
  blockId: number,
  from: number,
  to: number,
): Map<number, TakenNumber> {
  const rows = db.all<TakenNumber>(
    `${NUMBERS} WHERE n.block_id = ? AND n.block_index BETWEEN ? AND ?`,
    blockId,
    from,
    to - 1,
  );
  return new Map(rows.map((row) => [row.blockIndex ?? -1, row]));
}

const STANDING_PLACE = "CASE n.standing WHEN 'reserved' THEN 1 WHEN 'assigned' THEN 2 ELSE 3 END";

/** What each order goes by; what is not set comes last in either direction. */
const ORDER: Record<NumberSort['by'], string> = {
  number: 'n.isbn13',
  standing: STANDING_PLACE,
  'used for': "coalesce(e.title, nullif(n.reserved_for, '')) COLLATE NOCASE",
  since: 'coalesce(n.spent_on, n.assigned_on, n.reserved_on)',
};

/** Taken numbers of one standing (of a block, or of all and outside every block), a page at a time. */
export function takenPage(
  db: ReadDb,
  filter: {
    blockId?: number | undefined;
    standing?: string | undefined;
    sort: NumberSort;
    from: number;
    count: number;
  },
): { rows: TakenNumber[]; total: number } {
  const where = '(?1 IS NULL OR n.block_id = ?1) AND (?2 IS NULL OR n.standing = ?2)';
  const keys = [filter.blockId ?? null, filter.standing ?? null];
  const { by, down } = filter.sort;
  const rows = db.all<TakenNumber>(
    `${NUMBERS} WHERE ${where} ORDER BY ${ORDER[by]} ${down ? 'DESC' : 'ASC'} NULLS LAST, n.isbn13 LIMIT ?3 OFFSET ?4`,
    ...keys,
    filter.count,
    filter.from,
  );
  const total = db.one<{ n: number }>(`SELECT count(*) AS n FROM number n WHERE ${where}`, ...keys)?.n ?? 0;
  return { rows, total };
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
