import type { Contributor, EditionFields, Subject } from '../contract/editions.ts';
import type { FormatFields } from '../contract/formats.ts';
import type { FormatStanding } from '../contract/terms.ts';
import type { ReadDb } from './connection.ts';

// What product records are made of, read a page of formats at a time: a fixed number of queries a page.

/** A format with its edition's own columns; the lists come apart. */
export interface FormatRow extends Omit<FormatFields, 'prices' | 'note' | 'insideCoverPrint'> {
  id: number;
  editionId: number;
  workId: number;
  replacesId: number | null;
  title: string;
  subtitle: string;
  number: number | null;
  statement: string;
  language: string;
  imprint: string;
  series: string;
  seriesNumber: string;
  description: string;
  audience: EditionFields['audience'];
  ageFrom: number | null;
  ageTo: number | null;
}

/** A format as others relate to it. */
export interface KinRow {
  id: number;
  editionId: number;
  form: string;
  formDetail: string | null;
  standing: FormatStanding;
  isbn13: string | null;
}

/** Which formats: all, those of a work, or those of the works that changed (null: all changed). */
export type OnixScope =
  | { kind: 'all' }
  | { kind: 'work'; workId: number }
  | { kind: 'since'; works: number[] | null };

/** Entities of the journal whose entries change what a record says. */
const TELLING =
  "'work', 'edition', 'edition_contributor', 'edition_subject', 'edition_keyword', 'format', 'format_price', 'number', 'listing', 'listing_step', 'onix_part'";

/** Settings that stand in every record. */
const HOUSE = "'publisher', 'imprint', 'catalogueName', 'lengthUnit', 'countryOfPublication', 'salesRights'";

/**
 * Works with a record that changed since a day, or that reads otherwise by now because a day was reached: its
 * publication, or `early` days before it. Null when something that stands in every record changed.
 */
export function worksChangedSince(
  db: ReadDb,
  since: string,
  today: string,
  early: { since: string; today: string },
): number[] | null {
  if (
    db.one(
      `SELECT 1 FROM journal WHERE at >= ? AND entity = 'setting' AND row_key IN (${HOUSE}) LIMIT 1`,
      since,
    )
  )
    return null;
  return db
    .all<{ id: number }>(
      `SELECT DISTINCT work_id AS id FROM journal
         WHERE at >= ?1 AND work_id IS NOT NULL AND entity IN (${TELLING})
       UNION SELECT e.work_id FROM format f JOIN edition e ON e.id = f.edition_id
         WHERE (f.publication_date >= ?1 AND f.publication_date <= ?2)
           OR (f.publication_date >= ?3 AND f.publication_date <= ?4)
       UNION SELECT e.work_id FROM journal j JOIN listing l ON l.channel_id = CAST(j.row_key AS INTEGER)
         JOIN format f ON f.id = l.format_id JOIN edition e ON e.id = f.edition_id
         WHERE j.at >= ?1 AND j.entity = 'channel'`,
      since,
      today,
      early.since,
      early.today,
    )
    .map((row) => row.id);
}

const IN = 'IN (SELECT value FROM json_each(?))';

const COLUMNS = `f.id, f.edition_id AS editionId, e.work_id AS workId, e.replaces_id AS replacesId, f.form,
  f.form_detail AS formDetail, f.case_kind AS caseKind, f.trim_width_um AS trimWidthUm, f.trim_height_um AS trimHeightUm,
  f.pages, f.duration_minutes AS durationMinutes, f.interior_colour AS interiorColour, f.paper, f.finish,
  f.large_print AS largePrint, f.right_to_left AS rightToLeft, f.publication_date AS publicationDate,
  f.on_sale_date AS onSaleDate, e.title, e.subtitle, e.number, e.statement, e.language, e.imprint, e.series,
  e.series_number AS seriesNumber, e.description, e.audience, e.age_from AS ageFrom, e.age_to AS ageTo`;

/** Condition and value that pick the formats of a scope; works as a JSON list. */
function scoped(scope: OnixScope): { where: string; key: unknown } {
  if (scope.kind === 'work') return { where: 'e.work_id = ?1', key: scope.workId };
  if (scope.kind === 'since' && scope.works !== null)
    return { where: 'e.work_id IN (SELECT value FROM json_each(?1))', key: JSON.stringify(scope.works) };
  return { where: '?1 IS NULL', key: null };
}

/** Ids of a scope's formats, in the order they were made: a few bytes each, so that all may stand in memory. */
export function formatIds(db: ReadDb, scope: OnixScope): number[] {
  const { where, key } = scoped(scope);
  const sql = `SELECT f.id FROM format f JOIN edition e ON e.id = f.edition_id WHERE ${where} ORDER BY f.id`;
  return db.all<{ id: number }>(sql, key).map((row) => row.id);
}

/** Some formats, in the order they were made. */
export function formatRows(db: ReadDb, ids: readonly number[]): FormatRow[] {
  return db.all<FormatRow>(
    `SELECT ${COLUMNS} FROM format f JOIN edition e ON e.id = f.edition_id WHERE f.id ${IN} ORDER BY f.id`,
    JSON.stringify(ids),
  );
}

function grouped<R extends { of: number }>(rows: R[]): Map<number, R[]> {
  const map = new Map<number, R[]>();
  for (const row of rows) {
    const list = map.get(row.of);
    if (list) list.push(row);
    else map.set(row.of, [row]);
  }
  return map;
}

/** The ordered lists of some editions. */
export function listsOfEditions(db: ReadDb, editionIds: readonly number[]) {
  const ids = JSON.stringify(editionIds);
  const read = <T>(columns: string, table: string) =>
    grouped(
      db.all<T & { of: number }>(
        `SELECT edition_id AS "of", ${columns} FROM ${table} WHERE edition_id ${IN} ORDER BY edition_id, position`,
        ids,
      ),
    );
  return {
    contributors: read<Contributor>('role, name', 'edition_contributor'),
    subjects: read<Subject>('scheme, code, heading', 'edition_subject'),
    keywords: read<{ keyword: string }>('keyword', 'edition_keyword'),
  };
}

/** Prices by currency, and the returns terms of the listings that are or may be on sale. */
export function termsOfFormats(db: ReadDb, formatIds: readonly number[]) {
  const ids = JSON.stringify(formatIds);
  const prices = grouped(
    db.all<FormatFields['prices'][number] & { of: number }>(
      `SELECT format_id AS "of", currency, amount_minor AS amountMinor, tax FROM format_price
       WHERE format_id ${IN} ORDER BY format_id, currency`,
      ids,
    ),
  );
  const listings = grouped(
    db.all<{ of: number; returns: string | null; standing: string; lastStepOn: string | null }>(
      `SELECT l.format_id AS "of", coalesce(l.returns, c.default_returns) AS "returns", l.standing,
         l.last_step_on AS lastStepOn
       FROM listing l JOIN channel c ON c.id = l.channel_id WHERE l.format_id ${IN}`,
      ids,
    ),
  );
  return { prices, listings };
}

/** The formats of some editions, and of the editions they replace or that replace them, with their numbers. */
export function kinOfEditions(db: ReadDb, editionIds: readonly number[]) {
  const ids = JSON.stringify(editionIds);
  const successors = new Map(
    db
      .all<{ id: number; old: number }>(
        `SELECT id, replaces_id AS "old" FROM edition WHERE replaces_id ${IN}`,
        ids,
      )
      .map((row) => [row.old, row.id]),
  );
  const replaced = db
    .all<{ id: number }>(
      `SELECT replaces_id AS id FROM edition WHERE id ${IN} AND replaces_id IS NOT NULL`,
      ids,
    )
    .map((row) => row.id);
  const all = new Set([...editionIds, ...successors.values(), ...replaced]);
  const kin = db.all<KinRow>(
    `SELECT f.id, f.edition_id AS editionId, f.form, f.form_detail AS formDetail, s.standing, n.isbn13
     FROM format f JOIN format_standing s ON s.format_id = f.id
     LEFT JOIN number n ON n.format_id = f.id AND (n.spent_on IS NULL OR f.cancelled_on IS NOT NULL)
     WHERE f.edition_id ${IN} ORDER BY f.id`,
    JSON.stringify([...all]),
  );
  return { successors, byEdition: Map.groupBy(kin, (row) => row.editionId) };
}
