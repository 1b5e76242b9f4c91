import type { ReportFindingKind } from '../contract/reports.ts';
import type { ListingStanding, TaskStanding } from '../contract/terms.ts';
import type { ReadDb, WriteDb } from './connection.ts';

/** A format as far as a channel's report can tell of it. */
export interface ReportedFormat {
  formatId: number | null;
  isbn13: string | null;
  number: number | null;
  title: string | null;
  subtitle: string | null;
  form: string | null;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number | null;
  onSaleDate: string | null;
  cancelledOn: string | null;
  spentOn: string | null;
  /** 1 where it is listed somewhere and gone from everywhere. */
  retired: number;
  standing: ListingStanding | null;
  reference: string | null;
  askedOn: string | null;
  promisedBy: string | null;
}

const FORMAT = `f.id AS formatId, n.isbn13, e.number, e.title, e.subtitle, f.form, f.form_detail AS formDetail,
  f.case_kind AS caseKind, f.large_print AS largePrint, f.cancelled_on AS cancelledOn, n.spent_on AS spentOn`;

/** The formats that are listed on a channel, and the numbers of a list that belong to none of them. */
export function reportedFormats(db: ReadDb, channelId: number, isbns: readonly string[]): ReportedFormat[] {
  const listed = db.all<ReportedFormat>(
    `SELECT ${FORMAT}, coalesce(l.on_sale_date, f.on_sale_date, f.publication_date) AS onSaleDate, 0 AS retired,
       l.standing, l.reference, l.last_step_on AS askedOn,
       (SELECT r.promised_by FROM removal_event r WHERE r.listing_id = l.id AND r.kind = 'promised'
        ORDER BY r.id DESC LIMIT 1) AS promisedBy
     FROM listing l JOIN format f ON f.id = l.format_id JOIN edition e ON e.id = f.edition_id
       LEFT JOIN number n ON n.format_id = f.id AND (n.spent_on IS NULL OR f.cancelled_on IS NOT NULL)
     WHERE l.channel_id = ? ORDER BY l.id`,
    channelId,
  );
  const known = new Set(listed.map(({ isbn13 }) => isbn13));
  const others = isbns.filter((isbn13) => !known.has(isbn13));
  return [
    ...listed,
    ...db.all<ReportedFormat>(
      `SELECT ${FORMAT}, coalesce(f.on_sale_date, f.publication_date) AS onSaleDate,
         EXISTS (SELECT 1 FROM listing l WHERE l.format_id = f.id)
         AND NOT EXISTS (SELECT 1 FROM listing l WHERE l.format_id = f.id AND l.standing <> 'gone') AS retired,
         NULL AS standing, NULL AS reference, NULL AS askedOn, NULL AS promisedBy
       FROM number n LEFT JOIN format f ON f.id = n.format_id LEFT JOIN edition e ON e.id = f.edition_id
       WHERE n.isbn13 IN (SELECT value FROM json_each(?)) ORDER BY n.isbn13`,
      JSON.stringify(others),
    ),
  ];
}

/** The prices of the formats of a channel, by format. */
export function pricesOnChannel(db: ReadDb, channelId: number) {
  const rows = db.all<{
    formatId: number;
    currency: string;
    amountMinor: number;
    tax: 'including' | 'excluding';
  }>(
    `SELECT p.format_id AS formatId, p.currency, p.amount_minor AS amountMinor, p.tax
     FROM format_price p JOIN listing l ON l.format_id = p.format_id WHERE l.channel_id = ? ORDER BY p.id`,
    channelId,
  );
  return Map.groupBy(rows, ({ formatId }) => formatId);
}

/** A finding with what there is beside it. */
export interface StoredFinding {
  id: number;
  reportId: number;
  on: string;
  kind: ReportFindingKind;
  formatId: number | null;
  isbn13: string | null;
  reference: string;
  currency: string | null;
  name: string;
  there: string;
  here: string;
  closedOn: string | null;
  workId: number | null;
  taskId: number | null;
  taskTitle: string | null;
  taskStanding: TaskStanding | null;
}

const FINDING = `SELECT d.id, d.report_id AS reportId, r.on_date AS "on", d.kind, d.format_id AS formatId, d.isbn13,
  d.reference, d.currency, d.name, d.there, d.here, d.closed_on AS closedOn, e.work_id AS workId,
  d.task_id AS taskId, t.title AS taskTitle, t.standing AS taskStanding
  FROM report_finding d JOIN channel_report r ON r.id = d.report_id LEFT JOIN task t ON t.id = d.task_id
    LEFT JOIN format f ON f.id = d.format_id LEFT JOIN edition e ON e.id = f.edition_id`;

/** The open findings of a channel's reports, the oldest first. */
export function openFindings(db: ReadDb, channelId: number): StoredFinding[] {
  return db.all<StoredFinding>(
    `${FINDING} WHERE r.channel_id = ? AND d.closed_on IS NULL ORDER BY d.id`,
    channelId,
  );
}

/** The findings that were closed, the newest first. */
export function closedFindings(db: ReadDb, channelId: number, count: number): StoredFinding[] {
  return db.all<StoredFinding>(
    `${FINDING} WHERE r.channel_id = ? AND d.closed_on IS NOT NULL ORDER BY d.closed_on DESC, d.id DESC LIMIT ?`,
    channelId,
    count,
  );
}

export function findingById(db: ReadDb, id: number): (StoredFinding & { channelId: number }) | undefined {
  const finding = db.one<StoredFinding>(`${FINDING} WHERE d.id = ?`, id);
  const report = db.one<{ channelId: number }>(
    'SELECT channel_id AS channelId FROM channel_report WHERE id = ?',
    finding?.reportId ?? 0,
  );
  return finding && report ? { ...finding, ...report } : undefined;
}

/** The reports of a channel, the newest first. */
export function reportsOf(db: ReadDb, channelId: number) {
  return db.all<{
    id: number;
    on: string;
    fileName: string;
    rows: number;
    complete: number;
    findings: number;
    open: number;
  }>(
    `SELECT r.id, r.on_date AS "on", r.file_name AS fileName, r.row_count AS rows, r.complete,
       count(d.id) AS findings, count(d.id) - count(d.closed_on) AS open
     FROM channel_report r LEFT JOIN report_finding d ON d.report_id = r.id
     WHERE r.channel_id = ? GROUP BY r.id ORDER BY r.on_date DESC, r.id DESC`,
    channelId,
  );
}

export function insertReport(
  db: WriteDb,
  report: { channelId: number; on: string; fileName: string; rows: number; complete: boolean },
): number {
  return db.run(
    'INSERT INTO channel_report (channel_id, on_date, file_name, row_count, complete) VALUES (?, ?, ?, ?, ?)',
    report.channelId,
    report.on,
    report.fileName,
    report.rows,
    report.complete ? 1 : 0,
  ).lastInsertRowid;
}

export type NewFinding = Pick<
  StoredFinding,
  'kind' | 'formatId' | 'isbn13' | 'reference' | 'currency' | 'name' | 'there' | 'here'
>;

export function insertFinding(db: WriteDb, reportId: number, finding: NewFinding): void {
  db.run(
    `INSERT INTO report_finding (report_id, kind, format_id, isbn13, reference, currency, name, there, here)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    reportId,
    finding.kind,
    finding.formatId,
    finding.isbn13,
    finding.reference,
    finding.currency,
    finding.name,
    finding.there,
    finding.here,
  );
}

/** Brings a finding that is still open up to what a later report tells; the same again writes nothing. */
export function refreshFinding(db: WriteDb, stored: StoredFinding, now: NewFinding): void {
  const { formatId, name, there, here } = now;
  const same = stored.formatId === formatId && stored.there === there && stored.here === here;
  if (same && stored.name === name) return;
  db.run(
    'UPDATE report_finding SET format_id = ?, name = ?, there = ?, here = ? WHERE id = ?',
    formatId,
    name,
    there,
    here,
    stored.id,
  );
}

export function closeFinding(db: WriteDb, id: number, on: string): void {
  db.run('UPDATE report_finding SET closed_on = ? WHERE id = ?', on, id);
}

export function giveFindingTask(db: WriteDb, id: number, taskId: number): void {
  db.run('UPDATE report_finding SET task_id = ? WHERE id = ?', taskId, id);
}

/** Where a format stands in the catalogue, and its listing on a channel. */
export function placeOnChannel(db: ReadDb, formatId: number, channelId: number) {
  return db.one<{ workId: number; editionId: number; listingId: number | null }>(
    `SELECT e.work_id AS workId, e.id AS editionId,
       (SELECT l.id FROM listing l WHERE l.format_id = f.id AND l.channel_id = ?) AS listingId
     FROM format f JOIN edition e ON e.id = f.edition_id WHERE f.id = ?`,
    channelId,
    formatId,
  );
}

/** Lets the findings about a format that is removed stand without it. */
export function releaseFindings(db: WriteDb, formatId: number): void {
  db.run('UPDATE report_finding SET format_id = NULL WHERE format_id = ?', formatId);
}

/** Removes what is kept of the reports of a channel that is removed. */
export function forgetReports(db: WriteDb, channelId: number): void {
  db.run(
    'DELETE FROM report_finding WHERE report_id IN (SELECT id FROM channel_report WHERE channel_id = ?)',
    channelId,
  );
  db.run('DELETE FROM channel_report WHERE channel_id = ?', channelId);
}
