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

/** A sheet of a wrong shape counts as one that tells nothing. */
function parsed(row: Row): StoredSubmission {
  const result = sentSheet.safeParse(JSON.parse(row.sheet));
  return { ...row, sheet: result.success ? result.data : { asked: [], items: [] } };
}

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

/**
 * The newest submission up to a day of every listing that stands where it still matters, with its edition; of all
 * works or of the named ones.
 */
export function newestSubmissions(
  db: ReadDb,
  day: string,
  standings: readonly string[],
  works?: readonly number[],
): (StoredSubmission & { editionId: number })[] {
  return db
    .all<Row & { editionId: number }>(
      `SELECT ${COLUMNS}, f.edition_id AS editionId
       FROM submission s JOIN listing l ON l.id = s.listing_id JOIN format f ON f.id = l.format_id
       WHERE l.standing IN (SELECT value FROM json_each(?1))
         AND (?3 IS NULL OR f.edition_id IN (
           SELECT id FROM edition WHERE work_id IN (SELECT value FROM json_each(?3))))
         AND s.id = (
         SELECT max(n.id) FROM submission n WHERE n.listing_id = l.id AND n.on_date <= ?2)
       ORDER BY s.listing_id`,
      JSON.stringify(standings),
      day,
      works === undefined ? null : JSON.stringify(works),
    )
    .map((row) => ({ ...parsed(row), editionId: row.editionId }));
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
