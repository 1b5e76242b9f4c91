import { type SentSheet, sentSheet } from '../contract/submissions.ts';
import type { ReadDb, WriteDb } from './connection.ts';

/** A sheet as it was sent. */
export interface StoredSubmission {
  id: number;
  listingId: number;
  stepId: number | null;
  onDate: string;
  takenOn: string;
  note: string;
  sheet: SentSheet;
}

const COLUMNS =
  's.id, s.listing_id AS listingId, s.step_id AS stepId, s.on_date AS onDate, s.taken_on AS takenOn, s.note, s.sheet';

type Row = Omit<StoredSubmission, 'sheet'> & { sheet: string };

/** A sheet as it was kept; one of a wrong shape counts as one that tells nothing. */
export function sheetIn(text: string): SentSheet {
  const result = sentSheet.safeParse(JSON.parse(text));
  return result.success ? result.data : { asked: [], items: [] };
}

const parsed = (row: Row): StoredSubmission => ({ ...row, sheet: sheetIn(row.sheet) });

/** What was sent about a listing up to a day, newest first. */
export function submissionsOf(db: ReadDb, listingId: number, day: string): StoredSubmission[] {
  return db
    .all<Row>(
      `SELECT ${COLUMNS} FROM submission s WHERE s.listing_id = ? AND s.on_date <= ? ORDER BY s.id DESC`,
      listingId,
      day,
    )
    .map(parsed);
}

/** What was sent last about a listing, with what of the listing a sheet tells. */
export interface NewestSubmission {
  listingId: number;
  formatId: number;
  editionId: number;
  channelId: number;
  onSaleDate: string | null;
  discountBp: number | null;
  returns: 'Y' | 'N' | 'C' | 'S' | null;
  /** The day it was sent. */
  onDate: string;
  /** As it was kept, for `sheetIn` to read. */
  sheet: string;
}

/**
 * The newest submission up to a day of every listing of some works that stands where it still matters. Reads the rows of
 * these works alone: the order of the joins is fixed. They come in no order, since sorting would carry every sheet.
 */
export function newestSubmissions(
  db: ReadDb,
  day: string,
  standings: readonly string[],
  works: readonly number[],
): NewestSubmission[] {
  return db.all<NewestSubmission>(
    `SELECT l.id AS listingId, l.format_id AS formatId, f.edition_id AS editionId, l.channel_id AS channelId,
         l.on_sale_date AS onSaleDate, l.discount_bp AS discountBp, l.returns, s.on_date AS onDate, s.sheet
       FROM json_each(?3) w CROSS JOIN edition e ON e.work_id = w.value CROSS JOIN format f ON f.edition_id = e.id
         CROSS JOIN listing l ON l.format_id = f.id CROSS JOIN submission s ON s.id = (
           SELECT n.id FROM submission n WHERE n.listing_id = l.id AND n.on_date <= ?2 ORDER BY n.id DESC LIMIT 1)
       WHERE l.standing IN (SELECT value FROM json_each(?1))`,
    JSON.stringify(standings),
    day,
    JSON.stringify(works),
  );
}

/** Keeps a sheet as what was sent; answers its id. */
export function insertSubmission(db: WriteDb, submission: Omit<StoredSubmission, 'id'>): number {
  const { listingId, stepId, onDate, takenOn, sheet, note } = submission;
  return db.run(
    'INSERT INTO submission (listing_id, step_id, on_date, taken_on, sheet, note) VALUES (?, ?, ?, ?, ?, ?)',
    listingId,
    stepId,
    onDate,
    takenOn,
    JSON.stringify(sheet),
    note,
  ).lastInsertRowid;
}

/** The format and edition of a listing. */
export function placeOfListing(
  db: ReadDb,
  listingId: number,
): { formatId: number; editionId: number; workId: number } | undefined {
  return db.one(
    `SELECT f.id AS formatId, f.edition_id AS editionId, e.work_id AS workId
     FROM listing l JOIN format f ON f.id = l.format_id JOIN edition e ON e.id = f.edition_id WHERE l.id = ?`,
    listingId,
  );
}
