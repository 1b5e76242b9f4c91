import type { FormatStanding } from '../contract/terms.ts';
import type { ReadDb } from './connection.ts';
import { LISTED, listed } from './ids.ts';
import { entriesHolding, soughtIn } from './search.ts';

/** `past` says that the connection stands on a past day, where today's index does not hold. */
interface WorkFilter {
  search: string;
  standing?: FormatStanding | undefined;
  past: boolean;
}

export interface ListedWork {
  id: number;
  title: string;
  contributors: string;
  editions: number;
}

export interface ListedFormat {
  id: number;
  workId: number;
  editionId: number;
  title: string;
  number: number | null;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number;
  standing: FormatStanding;
  isbn13: string | null;
}

const FORMATS = `SELECT f.id, e.work_id AS workId, e.id AS editionId, e.title, e.number, f.form, f.form_detail AS formDetail,
    f.case_kind AS caseKind, f.large_print AS largePrint, s.standing, n.isbn13
  FROM format f JOIN edition e ON e.id = f.edition_id JOIN format_standing s ON s.format_id = f.id
    LEFT JOIN number n ON n.format_id = f.id AND (n.spent_on IS NULL OR f.cancelled_on IS NOT NULL)`;

/** Every format with what names it and where it stands, by work title and newest edition first. */
export function allFormats(db: ReadDb): ListedFormat[] {
  return db.all<ListedFormat>(`${FORMATS} ORDER BY e.title, e.work_id, coalesce(e.number, 1) DESC, f.id`);
}

/** The digits of a number that is searched for whole or in part; of ten characters the check digit is left out. */
function digitsOf(text: string): string | undefined {
  const digits = text.replaceAll(/[\s-]/g, '');
  if (!/^\d{3,13}$/.test(digits) && !/^\d{9}[Xx]$/.test(digits)) return undefined;
  return digits.length === 10 ? digits.slice(0, 9) : digits;
}

const BY_NUMBER = `SELECT e.work_id FROM number n JOIN format f ON f.id = n.format_id JOIN edition e ON e.id = f.edition_id
  WHERE n.isbn13 LIKE ?`;

/** How many formats stand where; a standing without any is left out. */
export function standingCounts(db: ReadDb): Partial<Record<FormatStanding, number>> {
  const rows = db.all<{ standing: FormatStanding; n: number }>(
    'SELECT standing, count(*) AS n FROM format_standing GROUP BY standing',
  );
  return Object.fromEntries(rows.map(({ standing, n }) => [standing, n]));
}

/** The condition and parameters that pick works by text (title, subtitle, person, digits of a number) and standing. */
function filterOf({ search, standing, past }: WorkFilter): { where: string; params: unknown[] } {
  const where: string[] = [];
  const params: unknown[] = [];
  const sought = soughtIn(search, past);
  if (sought.terms.length > 0) {
    const entries = entriesHolding('work', sought);
    const digits = digitsOf(search);
    where.push(
      `(w.id IN (SELECT id FROM (${entries.sql}))${digits === undefined ? '' : ` OR w.id IN (${BY_NUMBER})`})`,
    );
    params.push(...entries.params, ...(digits === undefined ? [] : [`%${digits}%`]));
  }
  if (standing !== undefined) {
    where.push(`EXISTS (SELECT 1 FROM edition e JOIN format f ON f.edition_id = e.id
      JOIN format_standing s ON s.format_id = f.id WHERE e.work_id = w.id AND s.standing = ?)`);
    params.push(standing);
  }
  return { where: where.length > 0 ? `WHERE ${where.join(' AND ')}` : '', params };
}

/** A page of works by title, with their formats, in three queries. */
export function worksPage(
  db: ReadDb,
  filter: WorkFilter & { from: number; count: number },
): { works: ListedWork[]; formats: ListedFormat[]; total: number } {
  const { where, params } = filterOf(filter);
  // The page is picked first: on a past day no index holds the order, and what a line tells would be read of every work.
  const works = db.all<ListedWork>(
    `SELECT w.id, w.title, (SELECT count(*) FROM edition e WHERE e.work_id = w.id) AS editions,
       coalesce((SELECT group_concat(name, ', ') FROM (SELECT c.name FROM edition_contributor c WHERE c.edition_id = (
         SELECT e.id FROM edition e WHERE e.work_id = w.id ORDER BY coalesce(e.number, 1) DESC, e.id DESC LIMIT 1)
         ORDER BY c.position)), '') AS contributors
     FROM (SELECT w.id, w.title FROM work w ${where} ORDER BY w.title COLLATE NOCASE, w.id LIMIT ? OFFSET ?) w
     ORDER BY w.title COLLATE NOCASE, w.id`,
    ...params,
    filter.count,
    filter.from,
  );
  const ids = works.map((work) => work.id);
  const formats =
    ids.length === 0
      ? []
      : db.all<ListedFormat>(
          `${FORMATS} WHERE e.work_id IN ${LISTED} ORDER BY e.work_id, coalesce(e.number, 1) DESC, f.id`,
          listed(ids),
        );
  const total = db.one<{ n: number }>(`SELECT count(*) AS n FROM work w ${where}`, ...params)?.n ?? 0;
  return { works, formats, total };
}
