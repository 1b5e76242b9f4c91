import type { PlanKind } from '../contract/plan-templates.ts';
import type { FormatStanding, ListingStanding } from '../contract/terms.ts';
import type { ReadDb, WriteDb } from './connection.ts';

export type { PlanKind };

export interface StoredPlan {
  id: number;
  editionId: number;
  kind: PlanKind;
  day: string;
  droppedOn: string | null;
  /** The day its last task ended. */
  endedOn: string | null;
  /** 1 or 0 where it was said whether a printed proof is wanted. */
  printedProof: number | null;
  /** 1 where the release day is the on-sale date too. */
  onSaleFixed: number;
}

const PLAN = `SELECT p.id, p.edition_id AS editionId, p.kind, p.day, p.dropped_on AS droppedOn, p.ended_on AS endedOn,
  p.printed_proof AS printedProof, p.on_sale_fixed AS onSaleFixed FROM plan p`;

export function planById(db: ReadDb, id: number): StoredPlan | undefined {
  return db.one<StoredPlan>(`${PLAN} WHERE p.id = ?`, id);
}

/** The plan of a kind that is in force for an edition. */
export function planInForce(db: ReadDb, editionId: number, kind: PlanKind): StoredPlan | undefined {
  return db.one<StoredPlan>(
    `${PLAN} WHERE p.edition_id = ? AND p.kind = ? AND p.dropped_on IS NULL AND p.ended_on IS NULL`,
    editionId,
    kind,
  );
}

/** A plan as the story of its edition tells it. */
interface ToldPlan {
  kind: PlanKind;
  day: string;
  madeOn: string;
  droppedOn: string | null;
  droppedReason: string | null;
}

/** Every plan that was ever made for an edition, dropped ones too, in the order in which they were made. */
export function plansOfEdition(db: ReadDb, editionId: number): ToldPlan[] {
  return db.all<ToldPlan>(
    `SELECT kind, day, made_on AS madeOn, dropped_on AS droppedOn, dropped_reason AS droppedReason
     FROM plan WHERE edition_id = ? ORDER BY made_on, id`,
    editionId,
  );
}

/** Every plan of a kind that is in force. */
export function plansInForce(db: ReadDb, kind: PlanKind): StoredPlan[] {
  return db.all<StoredPlan>(
    `${PLAN} WHERE p.kind = ? AND p.dropped_on IS NULL AND p.ended_on IS NULL ORDER BY p.id`,
    kind,
  );
}

/** Other plans in force with an unfinished task that needs an unfinished task of this plan. */
export function plansWaitingFor(db: ReadDb, planId: number): StoredPlan[] {
  return db.all<StoredPlan>(
    `${PLAN} WHERE p.dropped_on IS NULL AND p.ended_on IS NULL AND p.id <> ? AND p.id IN (
       SELECT t.plan_id FROM task s CROSS JOIN task_need n ON n.needs_id = s.id CROSS JOIN task t ON t.id = n.task_id
       WHERE s.plan_id = ? AND s.standing IN ('open', 'waiting') AND t.standing IN ('open', 'waiting'))
     ORDER BY p.id`,
    planId,
    planId,
  );
}

export interface NewPlan {
  editionId: number;
  kind: PlanKind;
  day: string;
  madeOn: string;
  templateId: number;
  /** Null leaves it to each channel. */
  printedProof: boolean | null;
  onSaleFixed: boolean;
}

export function insertPlan(db: WriteDb, plan: NewPlan): number {
  return db.run(
    `INSERT INTO plan (edition_id, kind, day, made_on, template_id, printed_proof, on_sale_fixed)
     VALUES (?, ?, ?, ?, ?, ?, ?)`,
    plan.editionId,
    plan.kind,
    plan.day,
    plan.madeOn,
    plan.templateId,
    plan.printedProof === null ? null : Number(plan.printedProof),
    Number(plan.onSaleFixed),
  ).lastInsertRowid;
}

export function setPlanDay(db: WriteDb, id: number, day: string): void {
  db.run('UPDATE plan SET day = ? WHERE id = ?', day, id);
}

export function dropStoredPlan(db: WriteDb, id: number, on: string, reason: string): void {
  db.run('UPDATE plan SET dropped_on = ?, dropped_reason = ? WHERE id = ?', on, reason, id);
}

export interface PlannedEdition {
  id: number;
  workId: number;
  title: string;
  number: number | null;
}

const EDITION = 'SELECT id, work_id AS workId, title, number FROM edition';

export function editionOfPlan(db: ReadDb, id: number): PlannedEdition | undefined {
  return db.one<PlannedEdition>(`${EDITION} WHERE id = ?`, id);
}

/** The edition that replaces another, if one does. */
export function replacingEdition(db: ReadDb, id: number): PlannedEdition | undefined {
  return db.one<PlannedEdition>(`${EDITION} WHERE replaces_id = ?`, id);
}

/** A listing of an edition with what a plan needs of its format and channel. */
export interface PlanListingRow {
  id: number;
  standing: ListingStanding;
  lastStepOn: string | null;
  returns: 'Y' | 'N' | 'C' | 'S' | null;
  formatId: number;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number;
  formatStanding: FormatStanding;
  isbn13: string | null;
  channelId: number;
  channelName: string;
  leadDays: number;
  removalDays: number;
  proof: 'none' | 'electronic' | 'physical';
  closedOn: string | null;
}

/** The listings of an edition, format by format, channels by name. */
export function listingsOfEdition(db: ReadDb, editionId: number): PlanListingRow[] {
  return db.all<PlanListingRow>(
    `SELECT l.id, l.standing, l.last_step_on AS lastStepOn, l.returns, f.id AS formatId, f.form,
       f.form_detail AS formDetail, f.case_kind AS caseKind, f.large_print AS largePrint, s.standing AS formatStanding,
       n.isbn13, c.id AS channelId, c.name AS channelName, c.lead_days AS leadDays, c.removal_days AS removalDays,
       c.proof, c.closed_on AS closedOn
     FROM format f JOIN listing l ON l.format_id = f.id JOIN channel c ON c.id = l.channel_id
     JOIN format_standing s ON s.format_id = f.id
     LEFT JOIN number n ON n.format_id = f.id AND n.spent_on IS NULL
     WHERE f.edition_id = ? ORDER BY f.id, c.name, l.id`,
    editionId,
  );
}

/** One listing as a plan sees it, with the edition it belongs to. */
export function listingOfPlan(
  db: ReadDb,
  listingId: number,
): (PlanListingRow & { editionId: number }) | undefined {
  const owner = db.one<{ editionId: number }>(
    'SELECT f.edition_id AS editionId FROM listing l JOIN format f ON f.id = l.format_id WHERE l.id = ?',
    listingId,
  );
  const row = owner && listingsOfEdition(db, owner.editionId).find(({ id }) => id === listingId);
  return owner && row && { ...row, ...owner };
}

/** Gives formats and listings their publication date, and the on-sale date where there is one; the dates of a format that was once on sale are history and stay. */
export function setReleaseDay(
  db: WriteDb,
  day: string,
  onSale: string | null,
  formatIds: readonly number[],
  listingIds: readonly number[],
): void {
  for (const id of formatIds)
    db.run(
      `UPDATE format SET publication_date = ?1, on_sale_date = ?3 WHERE id = ?2 AND NOT EXISTS (
         SELECT 1 FROM listing l WHERE l.format_id = ?2 AND l.standing IN ('selling', 'leaving', 'gone'))`,
      day,
      id,
      onSale,
    );
  for (const id of listingIds) db.run('UPDATE listing SET on_sale_date = ? WHERE id = ?', onSale, id);
}

/** A format whose date another channel holds fast: which, and at what day. */
export interface HeldDate {
  channelName: string;
  heldOn: string | null;
}

/** The first channel that was sent a format of the edition and locks its date on another day than this. */
export function dateHeldFast(
  db: ReadDb,
  formatIds: readonly number[],
  day: string,
  onSale: string | null,
): HeldDate | undefined {
  return db.one<HeldDate>(
    `SELECT c.name AS channelName, iif(j.value = 'onSaleDate', f.on_sale_date, f.publication_date) AS heldOn
     FROM listing l JOIN format f ON f.id = l.format_id JOIN channel c ON c.id = l.channel_id, json_each(c.locks_more) j
     WHERE f.id IN (SELECT value FROM json_each(?1)) AND l.first_sent_on IS NOT NULL
       AND j.value IN ('onSaleDate', 'publicationDate') AND heldOn IS NOT iif(j.value = 'onSaleDate', ?3, ?2)
       AND NOT EXISTS (SELECT 1 FROM listing s
         WHERE s.format_id = f.id AND s.standing IN ('selling', 'leaving', 'gone'))
     ORDER BY l.id LIMIT 1`,
    JSON.stringify(formatIds),
    day,
    onSale,
  );
}

/** An unfinished task of a plan with the rules of its channel, its order, and what it still awaits from other plans. */
export interface OpenTaskRow {
  id: number;
  kind: string;
  step: string | null;
  title: string;
  dueOn: string;
  form: string | null;
  listingId: number | null;
  standing: ListingStanding | null;
  lastStepOn: string | null;
  leadDays: number | null;
  removalDays: number | null;
  proof: 'none' | 'electronic' | 'physical' | null;
  /** JSON list of the unfinished tasks of this plan that come first. */
  needs: string;
  awaitedDue: string | null;
}

export function openTasksOfPlan(db: ReadDb, planId: number): OpenTaskRow[] {
  return db.all(
    `SELECT t.id, t.kind, t.step, t.title, t.due_on AS dueOn, f.form, t.listing_id AS listingId, l.standing,
       l.last_step_on AS lastStepOn, c.lead_days AS leadDays, c.removal_days AS removalDays, c.proof,
       (SELECT json_group_array(s.id) FROM task_need n CROSS JOIN task s ON s.id = n.needs_id
        WHERE n.task_id = t.id AND s.plan_id = t.plan_id AND s.standing IN ('open', 'waiting')) AS needs,
       (SELECT max(s.due_on) FROM task_need n CROSS JOIN task s ON s.id = n.needs_id
        WHERE n.task_id = t.id AND s.plan_id IS NOT t.plan_id AND s.standing IN ('open', 'waiting')) AS awaitedDue
     FROM task t LEFT JOIN format f ON f.id = t.format_id LEFT JOIN listing l ON l.id = t.listing_id
     LEFT JOIN channel c ON c.id = l.channel_id
     WHERE t.plan_id = ? AND t.standing IN ('open', 'waiting') ORDER BY t.id`,
    planId,
  );
}

/** Tasks of a release plan that put a listing on sale and are not done yet. */
export function salesAhead(
  db: ReadDb,
  planId: number,
): { taskId: number; channelId: number; dueOn: string }[] {
  return db.all(
    `SELECT t.id AS taskId, l.channel_id AS channelId, t.due_on AS dueOn
     FROM task t JOIN listing l ON l.id = t.listing_id
     WHERE t.plan_id = ? AND t.kind = 'on-sale' AND t.standing IN ('open', 'waiting') ORDER BY t.id`,
    planId,
  );
}

/** Formats of which a plan has, or had, a task. */
export function formatsOfPlan(db: ReadDb, planId: number): number[] {
  return db
    .all<{ id: number }>(
      'SELECT DISTINCT format_id AS id FROM task WHERE plan_id = ? AND format_id IS NOT NULL ORDER BY 1',
      planId,
    )
    .map((row) => row.id);
}
