import type { FormatStanding, ListingStanding, TaskStanding } from '../contract/terms.ts';
import type { ReadDb, WriteDb } from './connection.ts';

export interface DeskRow {
  listingId: number;
  standing: ListingStanding;
  returns: 'Y' | 'N' | 'C' | 'S' | null;
  formatId: number;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number;
  isbn13: string | null;
  channelId: number;
  channelName: string;
  contact: string;
  removalDays: number;
  askedOn: string | null;
  goneOn: string | null;
  evidence: string | null;
  promisedBy: string | null;
  chasedOn: string | null;
  chases: number;
  returnsUntil: string | null;
  returnsNote: string | null;
}

const EVENTS = 'FROM removal_event r WHERE r.listing_id = l.id AND r.on_date <= ?2';
/** Chases done as tasks count too; those that ended because the listing was gone do not. */
const CHASE_TASKS = `FROM task t WHERE t.listing_id = l.id AND t.kind = 'chase' AND t.standing = 'done'
  AND t.ended_on <= ?2 AND t.note NOT LIKE '%done with the step'`;

/** The listings of an edition with all that happened on their way out, up to a day. */
export function deskRows(db: ReadDb, editionId: number, day: string): DeskRow[] {
  return db.all<DeskRow>(
    `SELECT l.id AS listingId, l.standing, l.returns, f.id AS formatId, f.form, f.form_detail AS formDetail,
       f.case_kind AS caseKind, f.large_print AS largePrint, n.isbn13, c.id AS channelId, c.name AS channelName,
       c.contact, c.removal_days AS removalDays,
       iif(l.standing IN ('leaving', 'gone'), (SELECT max(s.on_date) FROM listing_step s
         WHERE s.listing_id = l.id AND s.to_standing = 'leaving'), NULL) AS askedOn,
       iif(l.standing = 'gone', l.last_step_on, NULL) AS goneOn,
       (SELECT s.note FROM listing_step s WHERE s.listing_id = l.id AND s.to_standing = 'gone') AS evidence,
       (SELECT r.promised_by ${EVENTS} AND r.kind = 'promised' ORDER BY r.id DESC LIMIT 1) AS promisedBy,
       (SELECT max(d) FROM (SELECT max(r.on_date) AS d ${EVENTS} AND r.kind = 'chased'
         UNION ALL SELECT max(t.ended_on) ${CHASE_TASKS})) AS chasedOn,
       (SELECT count(*) ${EVENTS} AND r.kind = 'chased') AS chases,
       w.until AS returnsUntil, w.note AS returnsNote
     FROM format f JOIN listing l ON l.format_id = f.id JOIN channel c ON c.id = l.channel_id
     LEFT JOIN number n ON n.format_id = f.id AND n.spent_on IS NULL
     LEFT JOIN returns_window w ON w.listing_id = l.id
     WHERE f.edition_id = ?1 AND f.cancelled_on IS NULL ORDER BY f.id, c.name`,
    editionId,
    day,
  );
}

/** The listings of the edition that replaces another: channel and standing. */
export function replacingListings(
  db: ReadDb,
  editionId: number,
): { channelId: number; standing: ListingStanding }[] {
  return db.all(
    `SELECT l.channel_id AS channelId, l.standing FROM edition e JOIN format f ON f.edition_id = e.id
     JOIN listing l ON l.format_id = f.id WHERE e.replaces_id = ?`,
    editionId,
  );
}

export interface DeskFormat {
  formatId: number;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number;
  isbn13: string | null;
  standing: FormatStanding;
  outOfPrintOn: string | null;
  note: string | null;
}

/** The formats of an edition that were on sale, with what was reported to the agency. */
export function deskFormats(db: ReadDb, editionId: number, day: string): DeskFormat[] {
  return db.all<DeskFormat>(
    `SELECT f.id AS formatId, f.form, f.form_detail AS formDetail, f.case_kind AS caseKind,
       f.large_print AS largePrint, n.isbn13, s.standing, a.out_of_print_on AS outOfPrintOn, a.note
     FROM format f JOIN format_standing s ON s.format_id = f.id
     LEFT JOIN number n ON n.format_id = f.id AND n.spent_on IS NULL
     LEFT JOIN agency_record a ON a.format_id = f.id AND a.out_of_print_on <= ?2
     WHERE f.edition_id = ?1 AND s.standing IN ('live', 'retiring', 'retired') ORDER BY f.id`,
    editionId,
    day,
  );
}

export interface StoredCount {
  id: number;
  formatId: number;
  place: string;
  copies: number;
  countedOn: string;
  fate: 'undecided' | 'sell off' | 'give away' | 'keep' | 'recycle';
  note: string;
}

/** The newest count of every place of an edition's formats, up to a day. */
export function newestCounts(db: ReadDb, editionId: number, day: string): StoredCount[] {
  return db.all<StoredCount>(
    `SELECT k.id, k.format_id AS formatId, k.place, k.copies, k.counted_on AS countedOn, k.fate, k.note
     FROM format f JOIN stock_count k ON k.format_id = f.id
     WHERE f.edition_id = ?1 AND k.id = (SELECT o.id FROM stock_count o
       WHERE o.format_id = k.format_id AND o.place = k.place AND o.counted_on <= ?2
       ORDER BY o.counted_on DESC, o.id DESC LIMIT 1)
     ORDER BY f.id, k.place`,
    editionId,
    day,
  );
}

/** Tasks of the retirement of an edition that are about no single listing, by day. */
export function checklistOf(
  db: ReadDb,
  editionId: number,
): {
  id: number;
  kind: string;
  title: string;
  note: string;
  dueOn: string;
  standing: TaskStanding;
  endedOn: string | null;
  needs: number;
}[] {
  return db.all(
    `SELECT t.id, t.kind, t.title, t.note, t.due_on AS dueOn, t.standing, t.ended_on AS endedOn,
       (SELECT count(*) FROM task_need n JOIN task o ON o.id = n.needs_id
        WHERE n.task_id = t.id AND o.standing IN ('open', 'waiting')) AS needs
     FROM plan p JOIN task t ON t.plan_id = p.id
     WHERE p.edition_id = ? AND p.kind = 'retirement' AND p.dropped_on IS NULL AND t.listing_id IS NULL
       AND t.standing <> 'dropped'
     ORDER BY t.ended_on IS NOT NULL, t.due_on, t.id`,
    editionId,
  );
}

export function insertRemovalEvent(
  db: WriteDb,
  event: {
    listingId: number;
    kind: 'promised' | 'chased';
    on: string;
    promisedBy: string | null;
    note: string;
  },
): void {
  db.run(
    'INSERT INTO removal_event (listing_id, kind, on_date, promised_by, note) VALUES (?, ?, ?, ?, ?)',
    event.listingId,
    event.kind,
    event.on,
    event.promisedBy,
    event.note,
  );
}

/** Sets the last date for returns of a listing, or moves it. */
export function writeReturns(db: WriteDb, listingId: number, until: string, note: string): void {
  const there = db.one('SELECT 1 FROM returns_window WHERE listing_id = ?', listingId);
  if (there)
    db.run('UPDATE returns_window SET until = ?, note = ? WHERE listing_id = ?', until, note, listingId);
  else
    db.run('INSERT INTO returns_window (listing_id, until, note) VALUES (?, ?, ?)', listingId, until, note);
}

export function insertCount(db: WriteDb, count: Omit<StoredCount, 'id'>): number {
  return db.run(
    'INSERT INTO stock_count (format_id, place, copies, counted_on, fate, note) VALUES (?, ?, ?, ?, ?, ?)',
    count.formatId,
    count.place,
    count.copies,
    count.countedOn,
    count.fate,
    count.note,
  ).lastInsertRowid;
}

export function insertAgencyRecord(db: WriteDb, formatId: number, on: string, note: string): void {
  db.run('INSERT INTO agency_record (format_id, out_of_print_on, note) VALUES (?, ?, ?)', formatId, on, note);
}
