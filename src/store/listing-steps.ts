import type { FormatStanding, ListingStanding } from '../contract/terms.ts';
import type { ReadDb, WriteDb } from './connection.ts';

/** What decides whether a listing can take a step. */
export interface SteppingListing {
  id: number;
  formatId: number;
  standing: ListingStanding;
  lastStepOn: string | null;
  channelName: string;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number;
  formatStanding: FormatStanding;
  /** 1 when the format has a number that is not spent. */
  numbered: number;
  /** 1 while the identity fields of the edition, or of the format, are locked already. */
  editionLocked: number;
  formatLocked: number;
  /** JSON list of the open fields that the channel locks by this listing's first submission. */
  channelLocks: string;
}

/** The listing with all that decides about its steps. */
export function steppingListing(db: ReadDb, id: number): SteppingListing | undefined {
  return db.one<SteppingListing>(
    `SELECT l.id, l.format_id AS formatId, l.standing, l.last_step_on AS lastStepOn, c.name AS channelName, f.form, f.form_detail AS formDetail,
       f.case_kind AS caseKind, f.large_print AS largePrint, s.standing AS formatStanding,
       EXISTS (SELECT 1 FROM number n WHERE n.format_id = f.id AND n.spent_on IS NULL) AS numbered,
       k.edition_id IS NOT NULL AS editionLocked,
       k.edition_id IS NOT NULL AND EXISTS (
         SELECT 1 FROM listing o WHERE o.format_id = f.id AND o.first_sent_on IS NOT NULL) AS formatLocked,
       (SELECT json_group_array(j.value) FROM json_each(c.locks_more) j
        WHERE l.first_sent_on IS NULL AND NOT EXISTS (
          SELECT 1 FROM format_locked_more m WHERE m.field = j.value AND (m.format_id = f.id
            OR m.edition_id = f.edition_id AND m.field IN ('description', 'audience')))) AS channelLocks
     FROM listing l JOIN format f ON f.id = l.format_id JOIN channel c ON c.id = l.channel_id
     JOIN format_standing s ON s.format_id = f.id LEFT JOIN edition_locked k ON k.edition_id = f.edition_id
     WHERE l.id = ?`,
    id,
  );
}

/** Records one step; the database moves the listing with it. Answers the step's id. */
export function insertStep(
  db: WriteDb,
  step: { listingId: number; from: ListingStanding; to: ListingStanding; on: string; note: string },
): number {
  return db.run(
    'INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date, note) VALUES (?, ?, ?, ?, ?)',
    step.listingId,
    step.from,
    step.to,
    step.on,
    step.note,
  ).lastInsertRowid;
}

/** Every recorded step with its channel and the on-sale date of its listing, in the order it was recorded. */
export function stepsByChannel(db: ReadDb): {
  channelId: number;
  listingId: number;
  from: string;
  to: string;
  on: string;
  onSaleDate: string | null;
}[] {
  return db.all(
    `SELECT l.channel_id AS channelId, l.id AS listingId, s.from_standing AS "from", s.to_standing AS "to",
       s.on_date AS "on", l.on_sale_date AS onSaleDate
     FROM listing_step s JOIN listing l ON l.id = s.listing_id ORDER BY s.id`,
  );
}
