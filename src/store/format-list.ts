import type { FormatSort, FormatTerms } from '../contract/format-list.ts';
import type { ReadDb } from './connection.ts';
import { LISTED, listed } from './ids.ts';
import { entriesHolding, soughtIn } from './search.ts';

interface Condition {
  sql: string;
  params: unknown[];
}

const anyOf = (column: string, values: readonly (number | string)[]): Condition[] =>
  values.length === 0 ? [] : [{ sql: `${column} IN ${LISTED}`, params: [listed(values)] }];

function listedAs({ channelIds, listingStandings }: FormatTerms): Condition[] {
  const parts = [...anyOf('l.channel_id', channelIds), ...anyOf('l.standing', listingStandings)];
  if (parts.length === 0) return [];
  const sql = `EXISTS (SELECT 1 FROM listing l WHERE l.format_id = f.id AND ${parts.map((part) => part.sql).join(' AND ')})`;
  return [{ sql, params: parts.flatMap((part) => part.params) }];
}

function dated({ dateOf, from, to }: FormatTerms): Condition[] {
  const column = dateOf === 'publication' ? 'f.publication_date' : 'f.on_sale_date';
  return [
    ...(from === null ? [] : [{ sql: `${column} >= ?`, params: [from] }]),
    ...(to === null ? [] : [{ sql: `${column} <= ?`, params: [to] }]),
  ];
}

/** Formats whose work holds the words, or whose number holds the digits. */
function worded({ text }: FormatTerms, past: boolean): Condition[] {
  const sought = soughtIn(text, past);
  if (sought.terms.length === 0) return [];
  const entries = entriesHolding('work', sought);
  const digits = text.replaceAll(/[\s-]/g, '');
  const numbered = /^\d{4,13}$/.test(digits);
  const number = numbered ? ' OR f.id IN (SELECT format_id FROM number WHERE isbn13 LIKE ?)' : '';
  return [
    {
      sql: `(e.work_id IN (SELECT id FROM (${entries.sql}))${number})`,
      params: [...entries.params, ...(numbered ? [`%${digits}%`] : [])],
    },
  ];
}

const STANDING_PLACE = `CASE s.standing WHEN 'planned' THEN 1 WHEN 'committed' THEN 2 WHEN 'proofing' THEN 3
  WHEN 'live' THEN 4 WHEN 'retiring' THEN 5 WHEN 'retired' THEN 6 ELSE 7 END`;

/** What each order goes by; what is not set comes last in either direction. */
const ORDER: Record<FormatSort, string> = {
  title: 'e.title COLLATE NOCASE',
  form: 'f.form',
  number: 'n.isbn13',
  standing: STANDING_PLACE,
  publication: 'f.publication_date',
  'on sale': 'f.on_sale_date',
  language: 'e.language',
  imprint: "nullif(e.imprint, '') COLLATE NOCASE",
  price: '(SELECT p.amount_minor FROM format_price p WHERE p.format_id = f.id AND p.currency = ?)',
};

export interface FormatQuestion {
  terms: FormatTerms;
  sort: { by: FormatSort; down: boolean };
  /** The currency that prices are put in order by. */
  currency: string;
  /** Formats that something was found about, where that is asked for. */
  found: readonly number[] | null;
  past: boolean;
}

/** The ids of every format that passes the terms, in order. Joins only what terms and order ask for. */
export function formatIds(db: ReadDb, { terms, sort, currency, found, past }: FormatQuestion): number[] {
  const conditions = [
    ...worded(terms, past),
    ...anyOf('s.standing', terms.standings),
    ...anyOf('f.form', terms.forms),
    ...anyOf('e.language', terms.languages),
    ...anyOf('e.imprint', terms.imprints),
    ...listedAs(terms),
    ...dated(terms),
    ...(found === null
      ? []
      : [{ sql: 'f.id IN (SELECT value FROM json_each(?))', params: [JSON.stringify(found)] }]),
  ];
  const standing = terms.standings.length > 0 || sort.by === 'standing';
  const key = ORDER[sort.by];
  const bound = sort.by === 'price' ? [currency] : [];
  return db
    .all<{ id: number }>(
      `SELECT f.id FROM format f JOIN edition e ON e.id = f.edition_id
       ${standing ? 'JOIN format_standing s ON s.format_id = f.id' : ''}
       ${sort.by === 'number' ? 'LEFT JOIN number n ON n.format_id = f.id AND (n.spent_on IS NULL OR f.cancelled_on IS NOT NULL)' : ''}
       ${conditions.length > 0 ? `WHERE ${conditions.map((one) => one.sql).join(' AND ')}` : ''}
       ORDER BY ${key} ${sort.down ? 'DESC' : 'ASC'} NULLS LAST, e.title COLLATE NOCASE, e.work_id,
         coalesce(e.number, 1) DESC, f.id`,
      ...conditions.flatMap((one) => one.params),
      ...bound,
    )
    .map((row) => row.id);
}

/** A format as the table reads it. */
export interface TableFormat {
  id: number;
  workId: number;
  editionId: number;
  title: string;
  number: number | null;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number;
  standing: string;
  isbn13: string | null;
  people: string;
  language: string;
  imprint: string;
  publicationDate: string | null;
  onSaleDate: string | null;
  /** JSON lists. */
  prices: string;
  listings: string;
}

/** The formats of some ids, in no order. */
export function tableFormats(db: ReadDb, ids: readonly number[]): TableFormat[] {
  return db.all<TableFormat>(
    `SELECT f.id, e.work_id AS workId, e.id AS editionId, e.title, e.number, f.form, f.form_detail AS formDetail,
       f.case_kind AS caseKind, f.large_print AS largePrint, s.standing, n.isbn13, e.language, e.imprint,
       f.publication_date AS publicationDate, f.on_sale_date AS onSaleDate,
       coalesce((SELECT group_concat(c.name, ', ' ORDER BY c.position) FROM edition_contributor c
         WHERE c.edition_id = e.id), '') AS people,
       (SELECT json_group_array(json_object('currency', p.currency, 'amountMinor', p.amount_minor, 'tax', p.tax)
         ORDER BY p.currency) FROM format_price p WHERE p.format_id = f.id) AS prices,
       (SELECT json_group_array(json_object('channelName', c.name, 'standing', l.standing) ORDER BY c.name)
         FROM listing l JOIN channel c ON c.id = l.channel_id WHERE l.format_id = f.id) AS listings
     FROM json_each(?) j CROSS JOIN format f ON f.id = j.value JOIN edition e ON e.id = f.edition_id
       JOIN format_standing s ON s.format_id = f.id
       LEFT JOIN number n ON n.format_id = f.id AND (n.spent_on IS NULL OR f.cancelled_on IS NOT NULL)`,
    JSON.stringify(ids),
  );
}

/** Every value of a column that occurs, in order. */
export function valuesOf(db: ReadDb, column: 'form' | 'language' | 'imprint'): string[] {
  const table = column === 'form' ? 'format' : 'edition';
  return db
    .all<{ value: string }>(
      `SELECT DISTINCT ${column} AS value FROM ${table} WHERE ${column} <> '' ORDER BY 1 COLLATE NOCASE LIMIT 500`,
    )
    .map((row) => row.value);
}
