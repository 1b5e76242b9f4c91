import type { ReadDb } from './connection.ts';

/** What a request about a listing names. */
export interface RequestRow {
  channelName: string;
  contact: string;
  requestTemplate: string;
  /** Days the channel promises for a removal. */
  removalDays: number;
  /** The day it was last asked to stop selling, while it has not answered. */
  askedOn: string | null;
  /** The day by which it promised to be done, if it did. */
  promisedBy: string | null;
  editionId: number;
  title: string;
  number: number | null;
  statement: string;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number;
  isbn13: string | null;
}

export function requestRow(db: ReadDb, listingId: number): RequestRow | undefined {
  return db.one<RequestRow>(
    `SELECT c.name AS channelName, c.contact, c.request_template AS requestTemplate,
       c.removal_days AS removalDays, iif(l.standing = 'leaving', l.last_step_on, NULL) AS askedOn,
       (SELECT r.promised_by FROM removal_event r WHERE r.listing_id = l.id AND r.kind = 'promised'
        ORDER BY r.id DESC LIMIT 1) AS promisedBy, e.id AS editionId, e.title, e.number,
       e.statement, f.form, f.form_detail AS formDetail, f.case_kind AS caseKind, f.large_print AS largePrint, n.isbn13
     FROM listing l JOIN channel c ON c.id = l.channel_id JOIN format f ON f.id = l.format_id
     JOIN edition e ON e.id = f.edition_id LEFT JOIN number n ON n.format_id = f.id AND n.spent_on IS NULL
     WHERE l.id = ?`,
    listingId,
  );
}

/** A format of the edition that replaces the one of an old format. */
export interface ReplacedRow extends ReplacingRow {
  oldId: number;
  oldForm: string;
  oldFormDetail: string | null;
  oldLargePrint: number;
  formatId: number;
  workId: number;
  title: string;
  number: number | null;
  caseKind: string | null;
}

/** For some formats, those of the edition that replaces theirs, without cancelled ones, oldest first. */
export function replacedFormats(db: ReadDb, formatIds: readonly number[]): ReplacedRow[] {
  if (formatIds.length === 0) return [];
  return db.all<ReplacedRow>(
    `SELECT o.id AS oldId, o.form AS oldForm, o.form_detail AS oldFormDetail, o.large_print AS oldLargePrint,
       f.id AS formatId, e.work_id AS workId, e.title, e.number, f.form, f.form_detail AS formDetail,
       f.case_kind AS caseKind, f.large_print AS largePrint, n.isbn13
     FROM json_each(?) asked CROSS JOIN format o ON o.id = asked.value
     CROSS JOIN edition e ON e.replaces_id = o.edition_id JOIN format f ON f.edition_id = e.id
     LEFT JOIN number n ON n.format_id = f.id AND n.spent_on IS NULL
     WHERE f.cancelled_on IS NULL ORDER BY o.id, f.id`,
    JSON.stringify(formatIds),
  );
}

export interface ReplacingRow {
  form: string;
  formDetail: string | null;
  largePrint: number;
  isbn13: string | null;
}

/** Formats of the edition that replaces an edition, without the cancelled ones, oldest first. */
export function replacingFormats(db: ReadDb, editionId: number): ReplacingRow[] {
  return db.all<ReplacingRow>(
    `SELECT f.form, f.form_detail AS formDetail, f.large_print AS largePrint, n.isbn13
     FROM edition e JOIN format f ON f.edition_id = e.id
     LEFT JOIN number n ON n.format_id = f.id AND n.spent_on IS NULL
     WHERE e.replaces_id = ? AND f.cancelled_on IS NULL ORDER BY f.id`,
    editionId,
  );
}
