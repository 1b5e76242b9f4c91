import type { ListingRow, ListingSort } from '../contract/listing-list.ts';
import type { ReadDb } from './connection.ts';

const STANDING_PLACE = `CASE l.standing WHEN 'unsent' THEN 1 WHEN 'sent' THEN 2 WHEN 'proof' THEN 3
  WHEN 'cleared' THEN 4 WHEN 'selling' THEN 5 WHEN 'leaving' THEN 6 ELSE 7 END`;
const FORMAT_PLACE = `CASE s.standing WHEN 'planned' THEN 1 WHEN 'committed' THEN 2 WHEN 'proofing' THEN 3
  WHEN 'live' THEN 4 WHEN 'retiring' THEN 5 WHEN 'retired' THEN 6 ELSE 7 END`;

/** What each order goes by; what is not set comes last in either direction. */
const ORDER: Record<ListingSort['by'], string> = {
  title: 'e.title COLLATE NOCASE',
  form: 'f.form',
  number: 'n.isbn13',
  standing: STANDING_PLACE,
  since: 'l.last_step_on',
  'on sale': 'coalesce(l.on_sale_date, f.on_sale_date)',
  discount: 'l.discount_bp',
  reference: "nullif(l.reference, '') COLLATE NOCASE",
  'format standing': FORMAT_PLACE,
};

/** A listing as the table reads it. */
export interface TableListing {
  id: number;
  formatId: number;
  workId: number;
  title: string;
  number: number | null;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number;
  formatStanding: ListingRow['formatStanding'];
  isbn13: string | null;
  standing: ListingRow['standing'];
  since: string | null;
  firstSentOn: string | null;
  onSaleDate: string | null;
  discountBp: number | null;
  returns: ListingRow['returns'];
  printCostMinor: number | null;
  printCostCurrency: string | null;
  reference: string;
  note: string;
  /** A JSON list. */
  prices: string;
}

const NUMBER =
  'LEFT JOIN number n ON n.format_id = f.id AND (n.spent_on IS NULL OR f.cancelled_on IS NOT NULL)';

interface Question {
  channelId: number;
  standings: readonly string[];
  sort: ListingSort;
  from: number;
  count: number;
}

/** The listings of a channel in the order asked for, a page of them; joins for the order only what it goes by. */
export function tableListings(db: ReadDb, question: Question): { rows: TableListing[]; total: number } {
  const { by, down } = question.sort;
  const standings = JSON.stringify(question.standings);
  const where = `l.channel_id = ?1 AND (json_array_length(?2) = 0 OR l.standing IN (SELECT value FROM json_each(?2)))`;
  const ids = db.all<{ id: number }>(
    `SELECT l.id FROM listing l JOIN format f ON f.id = l.format_id JOIN edition e ON e.id = f.edition_id
       ${by === 'format standing' ? 'JOIN format_standing s ON s.format_id = f.id' : ''} ${by === 'number' ? NUMBER : ''}
     WHERE ${where}
     ORDER BY ${ORDER[by]} ${down ? 'DESC' : 'ASC'} NULLS LAST, e.title COLLATE NOCASE, coalesce(e.number, 1) DESC, f.id
     LIMIT ?3 OFFSET ?4`,
    question.channelId,
    standings,
    question.count,
    question.from,
  );
  const rows = db.all<TableListing>(
    `SELECT l.id, f.id AS formatId, e.work_id AS workId, e.title, e.number, f.form, f.form_detail AS formDetail,
       f.case_kind AS caseKind, f.large_print AS largePrint, s.standing AS formatStanding, n.isbn13, l.standing,
       l.last_step_on AS since, l.first_sent_on AS firstSentOn, coalesce(l.on_sale_date, f.on_sale_date) AS onSaleDate,
       l.discount_bp AS discountBp, l.returns, l.print_cost_minor AS printCostMinor,
       l.print_cost_currency AS printCostCurrency, l.reference, l.note,
       (SELECT json_group_array(json_object('currency', p.currency, 'amountMinor', p.amount_minor, 'tax', p.tax)
         ORDER BY p.currency) FROM format_price p WHERE p.format_id = f.id) AS prices
     FROM json_each(?) j CROSS JOIN listing l ON l.id = j.value JOIN format f ON f.id = l.format_id
       JOIN edition e ON e.id = f.edition_id JOIN format_standing s ON s.format_id = f.id ${NUMBER}
     ORDER BY j.key`,
    JSON.stringify(ids.map((row) => row.id)),
  );
  const total =
    db.one<{ n: number }>(`SELECT count(*) AS n FROM listing l WHERE ${where}`, question.channelId, standings)
      ?.n ?? 0;
  return { rows, total };
}
