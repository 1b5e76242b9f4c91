import type Database from 'better-sqlite3';

/** Records that never change once they stand so: a query gives their key and all that must stay. */
const FROZEN: Record<string, string> = {
  step: 'SELECT id AS k, json_array(listing_id, from_standing, to_standing, on_date, note) AS v FROM listing_step',
  correction: 'SELECT id AS k, json_array(edition_id, made_on, reason) AS v FROM correction',
  'closed correction': 'SELECT id AS k, closed_on AS v FROM correction WHERE closed_on IS NOT NULL',
  'ended task': `SELECT id AS k, json_array(plan_id, work_id, format_id, listing_id, kind, title, due_on, standing, ended_on,
    dropped_reason, note) AS v FROM task WHERE standing IN ('done', 'dropped')`,
  'gone listing': `SELECT id AS k, json_array(format_id, channel_id, standing, discount_bp, returns, print_cost_minor,
    on_sale_date, reference, note, first_sent_on, first_cleared_on, last_step_on) AS v FROM listing WHERE standing = 'gone'`,
  'sheet that was sent':
    'SELECT id AS k, json_array(listing_id, step_id, on_date, taken_on, sheet, note) AS v FROM submission',
  'proof round':
    'SELECT id AS k, json_array(listing_id, on_date, proof, outcome, note) AS v FROM proof_round',
  'promise of a channel':
    'SELECT id AS k, json_array(listing_id, kind, on_date, promised_by, note) AS v FROM removal_event',
  'count of copies':
    'SELECT id AS k, json_array(format_id, place, copies, counted_on, fate, note) AS v FROM stock_count',
  'record at the agency':
    'SELECT id AS k, json_array(format_id, out_of_print_on, note) AS v FROM agency_record',
  'cost of an ended format': `SELECT c.id AS k, json_array(c.format_id, c.listing_id, c.round_id, c.kind, c.amount_minor,
    c.currency, c.voucher, c.on_date, c.note) AS v FROM cost c JOIN format_end e ON e.format_id = c.format_id
    WHERE c.on_date <= e.ended_on`,
  'sent listing': `SELECT id AS k, json_array(format_id, channel_id, first_sent_on) AS v FROM listing
    WHERE first_sent_on IS NOT NULL`,
  'ended format': `SELECT f.id AS k, json_array(edition_id, form, form_detail, case_kind, trim_width_um, trim_height_um, pages,
    duration_minutes, interior_colour, paper, finish, inside_cover_print, large_print, right_to_left, publication_date,
    on_sale_date, note, planned_on, cancelled_on, cancel_reason, (SELECT json_group_array(json_array(currency, amount_minor,
    tax) ORDER BY currency) FROM format_price p WHERE p.format_id = f.id)) AS v FROM format f
    WHERE cancelled_on IS NOT NULL OR EXISTS (SELECT 1 FROM listing l WHERE l.format_id = f.id AND standing = 'gone')
      AND NOT EXISTS (SELECT 1 FROM listing l WHERE l.format_id = f.id AND standing NOT IN ('gone', 'unsent'))`,
  'dates of a format on sale': `SELECT id AS k, json_array(publication_date, on_sale_date) AS v FROM format f WHERE EXISTS (
    SELECT 1 FROM listing l WHERE l.format_id = f.id AND standing IN ('selling', 'leaving', 'gone'))`,
  'date of a listing on sale': `SELECT id AS k, coalesce(on_sale_date, '') AS v FROM listing
    WHERE standing IN ('selling', 'leaving', 'gone')`,
};

/** Rows that break a rule as they stand; each names itself. */
const BROKEN: Record<string, string> = {
  'number at the wrong place of its block': `SELECT n.isbn13 AS k FROM number n JOIN number_block b ON b.id = n.block_id
    WHERE substr(n.isbn13, 1, length(b.digits)) <> b.digits
      OR CAST(substr(n.isbn13, 1 + length(b.digits), 12 - length(b.digits)) AS INTEGER) IS NOT n.block_index`,
  'number outside the block it belongs to': `SELECT n.isbn13 AS k FROM number n WHERE block_id IS NULL AND EXISTS (
    SELECT 1 FROM number_block b WHERE substr(n.isbn13, 1, length(b.digits)) = b.digits)`,
  'cancelled format with a number that is not spent': `SELECT f.id AS k FROM format f JOIN number n ON n.format_id = f.id
    WHERE f.cancelled_on IS NOT NULL AND n.spent_on IS NULL`,
  'block inside another': `SELECT a.id AS k FROM number_block a JOIN number_block b ON a.id <> b.id
    AND substr(a.digits, 1, length(b.digits)) = b.digits`,
  'listing whose dates are not those of its steps': `SELECT l.id AS k FROM listing l WHERE
    l.first_sent_on IS NOT (SELECT min(on_date) FROM listing_step s WHERE s.listing_id = l.id AND to_standing = 'sent')
    OR l.first_cleared_on IS NOT (SELECT min(on_date) FROM listing_step s WHERE s.listing_id = l.id AND to_standing = 'cleared')
    OR l.last_step_on IS NOT (SELECT on_date FROM listing_step s WHERE s.listing_id = l.id ORDER BY id DESC LIMIT 1)`,
  'format sent without a number': `SELECT DISTINCT l.format_id AS k FROM listing l JOIN format f ON f.id = l.format_id
    WHERE l.first_sent_on IS NOT NULL AND f.cancelled_on IS NULL
      AND NOT EXISTS (SELECT 1 FROM number n WHERE n.format_id = l.format_id AND n.spent_on IS NULL)`,
  'cancelled format with a listing underway': `SELECT f.id AS k FROM format f JOIN listing l ON l.format_id = f.id
    WHERE f.cancelled_on IS NOT NULL AND l.standing <> 'unsent'`,
  'open correction of an edition that is out': `SELECT c.id AS k FROM correction c JOIN format f ON f.edition_id = c.edition_id
    JOIN listing l ON l.format_id = f.id WHERE c.closed_on IS NULL AND (l.standing <> 'unsent' OR l.first_cleared_on IS NOT NULL)`,
};

interface Kept {
  k: unknown;
  v: string;
}

/** Remembers records that must stay as they are, and says which did not, or which break a rule. */
export class Frozen {
  readonly #frozen: [what: string, rows: Database.Statement][];
  readonly #broken: [what: string, rows: Database.Statement][];
  readonly #seen = new Map<string, Map<unknown, string>>();

  constructor(raw: Database.Database) {
    this.#frozen = Object.entries(FROZEN).map(([what, sql]) => [what, raw.prepare(sql)]);
    this.#broken = Object.entries(BROKEN).map(([what, sql]) => [what, raw.prepare(sql)]);
  }

  observe(): string[] {
    const faults: string[] = [];
    for (const [what, rows] of this.#frozen) {
      const now = new Map((rows.all() as Kept[]).map(({ k, v }) => [k, v]));
      for (const [key, was] of this.#seen.get(what) ?? [])
        if (now.get(key) !== was) faults.push(`${what} ${key} was ${was} and is ${now.get(key)}`);
      this.#seen.set(what, now);
    }
    for (const [what, rows] of this.#broken)
      for (const { k } of rows.all() as Kept[]) faults.push(`${what}: ${k}`);
    return faults;
  }
}
