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

/** Whether the edition of format `f` is locked, as the view edition_locked says, which reads all editions to say it. */
const LOCKED = `(EXISTS (SELECT 1 FROM format s JOIN listing o ON o.format_id = s.id
    WHERE s.edition_id = f.edition_id AND o.first_sent_on IS NOT NULL)
  AND NOT EXISTS (SELECT 1 FROM correction r WHERE r.edition_id = f.edition_id AND r.closed_on IS NULL))`;

/** The listing with all that decides about its steps. */
export function steppingListing(db: ReadDb, id: number): SteppingListing | undefined {
  return db.one<SteppingListing>(
    `SELECT l.id, l.format_id AS formatId, l.standing, l.last_step_on AS lastStepOn, c.name AS channelName, f.form, f.form_detail AS formDetail,
       f.case_kind AS caseKind, f.large_print AS largePrint, s.standing AS formatStanding,
       EXISTS (SELECT 1 FROM number n WHERE n.format_id = f.id AND n.spent_on IS NULL) AS numbered,
       ${LOCKED} AS editionLocked,
       ${LOCKED} AND EXISTS (
         SELECT 1 FROM listing o WHERE o.format_id = f.id AND o.first_sent_on IS NOT NULL) AS formatLocked,
       (SELECT json_group_array(j.value) FROM json_each(c.locks_more) j
        WHERE l.first_sent_on IS NULL
          AND NOT EXISTS (SELECT 1 FROM format_locked_more m WHERE m.format_id = f.id AND m.field = j.value)
          AND NOT (j.value IN ('description', 'audience') AND EXISTS (
            SELECT 1 FROM format_locked_more m WHERE m.edition_id = f.edition_id AND m.field = j.value))
       ) AS channelLocks
     FROM listing l JOIN format f ON f.id = l.format_id JOIN channel c ON c.id = l.channel_id
     JOIN format_standing s ON s.format_id = f.id
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
