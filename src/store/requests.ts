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
       c.removal_days AS removalDays, iif(l.standing = 'leaving', l.last_step_on, NULL) AS askedOn, e.id AS editionId, e.title, e.number,
       e.statement, f.form, f.form_detail AS formDetail, f.case_kind AS caseKind, f.large_print AS largePrint, n.isbn13
     FROM listing l JOIN channel c ON c.id = l.channel_id JOIN format f ON f.id = l.format_id
     JOIN edition e ON e.id = f.edition_id LEFT JOIN number n ON n.format_id = f.id AND n.spent_on IS NULL
     WHERE l.id = ?`,
    listingId,
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
