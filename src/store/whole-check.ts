import type { ReadDb } from './connection.ts';

/** What the guards of migrations/0002 and 0003 hold step by step, asked of the tables as they stand. */
const RULES: readonly (readonly [sql: string, sentence: (what: string) => string])[] = [
  [
    `SELECT a.hyphenated_prefix AS what FROM number_block a JOIN number_block b
       ON a.id <> b.id AND a.digits = substr(b.digits, 1, length(a.digits)) LIMIT 1`,
    (what) => `The block ${what} shares numbers with another block of the file.`,
  ],
  [
    `SELECT n.isbn13 AS what FROM number n
     LEFT JOIN number_block b ON b.digits = substr(n.isbn13, 1, length(b.digits))
     WHERE n.block_id IS NOT b.id OR (b.id IS NOT NULL AND n.block_index IS NOT
       CAST(substr(n.isbn13, 1 + length(b.digits), b.publication_digits) AS INTEGER)) LIMIT 1`,
    (what) => `The number ${what} is not recorded under the block it lies in.`,
  ],
  [
    `SELECT n.isbn13 AS what FROM number n JOIN format f ON f.id = n.format_id
     WHERE f.cancelled_on IS NOT NULL AND n.spent_on IS NULL LIMIT 1`,
    (what) => `The number ${what} of a cancelled format is not spent.`,
  ],
  [
    `SELECT s.id AS what FROM (SELECT id, listing_id, from_standing, to_standing, on_date,
         lag(to_standing, 1, 'unsent') OVER w AS before, lag(on_date, 1, '') OVER w AS day_before
       FROM listing_step WINDOW w AS (PARTITION BY listing_id ORDER BY id)) s
     WHERE s.from_standing <> s.before OR s.on_date < s.day_before
       OR (s.from_standing || '>' || s.to_standing) NOT IN ('unsent>sent', 'sent>proof', 'proof>cleared',
         'cleared>selling', 'selling>leaving', 'leaving>gone', 'leaving>selling',
         'sent>unsent', 'proof>unsent', 'cleared>unsent') LIMIT 1`,
    (what) => `Step ${what} of a listing does not follow from the step before it.`,
  ],
  [
    `SELECT l.id AS what FROM listing l WHERE l.standing <> coalesce(
         (SELECT to_standing FROM listing_step WHERE listing_id = l.id ORDER BY id DESC LIMIT 1), 'unsent')
       OR l.last_step_on IS NOT (SELECT on_date FROM listing_step WHERE listing_id = l.id ORDER BY id DESC LIMIT 1)
       OR l.first_sent_on IS NOT (SELECT min(on_date) FROM listing_step WHERE listing_id = l.id AND to_standing = 'sent')
       OR l.first_cleared_on IS NOT (SELECT min(on_date) FROM listing_step WHERE listing_id = l.id AND to_standing = 'cleared')
     LIMIT 1`,
    (what) => `Listing ${what} does not stand where its steps lead.`,
  ],
  [
    `SELECT l.id AS what FROM listing l WHERE l.standing <> 'unsent'
       AND NOT EXISTS (SELECT 1 FROM number n WHERE n.format_id = l.format_id AND n.spent_on IS NULL) LIMIT 1`,
    (what) => `Listing ${what} was sent, and its format has no number.`,
  ],
  [
    `SELECT f.id AS what FROM format f JOIN listing l ON l.format_id = f.id
     WHERE f.cancelled_on IS NOT NULL AND l.standing <> 'unsent' LIMIT 1`,
    (what) => `Format ${what} is cancelled, and a listing of it is not taken back.`,
  ],
  [
    `SELECT c.id AS what FROM print_card c JOIN print_quote q ON q.card_id = c.id
     WHERE c.fixed_parts IS NOT NULL OR q.currency <> c.currency LIMIT 1`,
    (what) => `Print-cost card ${what} has quotes in another currency, or beside a stated cost.`,
  ],
  [
    `SELECT c.id AS what FROM proof_check c
     WHERE c.line_count <> (SELECT count(*) FROM proof_check_line l WHERE l.check_id = c.id)
       OR NOT EXISTS (SELECT 1 FROM proof_check_facts f WHERE f.check_id = c.id) LIMIT 1`,
    (what) => `Check ${what} of a final file is not whole.`,
  ],
  [
    `SELECT r.id AS what FROM proof_check_reason r JOIN proof_check_line l ON l.id = r.line_id
     WHERE l.state <> 'differs' OR l.check_id <> r.check_id LIMIT 1`,
    (what) => `Reason ${what} is not given for a line of a check that differs.`,
  ],
];

/** The first rule that the tables break, as a sentence, or null. */
export function brokenRule(db: ReadDb): string | null {
  for (const [sql, sentence] of RULES) {
    const found = db.one<{ what: string | number }>(sql);
    if (found) return sentence(String(found.what));
  }
  return null;
}
