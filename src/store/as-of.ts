import type Database from 'better-sqlite3';
import { rewindFields } from './as-of-fields.ts';
import { type ReadDb, wrap } from './connection.ts';

/**
 * What stood on a day, by the catalogue's own dates. Each statement makes a temporary table that shadows the
 * stored one of the same name for this connection, so that every query runs unchanged and nothing is written
 * to the file. Rows recorded later but dated earlier count: an old listing typed in today was selling then.
 * Fields of rows that were already recorded on that day are then given the values they had (as-of-fields.ts).
 */
const REWOUND: Record<string, string> = {
  listing_step: 'SELECT * FROM main.listing_step WHERE on_date <= :day',
  listing: `SELECT l.id, l.format_id, l.channel_id,
      coalesce((SELECT to_standing FROM temp.listing_step s WHERE s.listing_id = l.id ORDER BY s.id DESC LIMIT 1), 'unsent') AS standing,
      l.discount_bp, l.returns, l.print_cost_minor, l.print_cost_currency, l.on_sale_date, l.reference, l.note,
      iif(l.first_sent_on <= :day, l.first_sent_on, NULL) AS first_sent_on,
      iif(l.first_cleared_on <= :day, l.first_cleared_on, NULL) AS first_cleared_on,
      (SELECT max(on_date) FROM temp.listing_step s WHERE s.listing_id = l.id) AS last_step_on
    FROM main.listing l WHERE l.format_id IN (SELECT id FROM temp.format)`,
  number: `SELECT isbn13, block_id, block_index, iif(assigned_on <= :day, format_id, NULL) AS format_id, reserved_for, reserved_on,
      iif(assigned_on <= :day, assigned_on, NULL) AS assigned_on,
      iif(spent_on <= :day, spent_on, NULL) AS spent_on, iif(spent_on <= :day, spent_reason, NULL) AS spent_reason,
      CASE WHEN spent_on <= :day THEN 'spent' WHEN assigned_on <= :day THEN 'assigned' ELSE 'reserved' END AS standing
    FROM main.number WHERE reserved_on <= :day OR assigned_on <= :day OR spent_on <= :day`,
  format: `SELECT f.*, iif(f.cancelled_on <= :day, f.cancelled_on, NULL) AS was_cancelled_on,
      iif(f.cancelled_on <= :day, f.cancel_reason, NULL) AS was_cancel_reason
    FROM main.format f
    WHERE f.planned_on <= :day
      OR EXISTS (SELECT 1 FROM main.number n WHERE n.format_id = f.id AND n.assigned_on <= :day)
      OR EXISTS (SELECT 1 FROM main.listing l WHERE l.format_id = f.id AND l.first_sent_on <= :day)`,
  number_tally: `SELECT b.id AS block_id, coalesce(sum(n.standing = 'reserved'), 0) AS reserved,
      coalesce(sum(n.standing = 'assigned'), 0) AS assigned, coalesce(sum(n.standing = 'spent'), 0) AS spent
    FROM main.number_block b LEFT JOIN temp.number n ON n.block_id = b.id
    WHERE b.bought_on IS NULL OR b.bought_on <= :day OR n.block_id IS NOT NULL GROUP BY b.id`,
  // Neighbouring indexes differ from their rank by the same amount: each such amount is one run.
  number_run: `SELECT block_id, min(block_index) AS first_index, max(block_index) AS last_index FROM (
      SELECT block_id, block_index, block_index - row_number() OVER (PARTITION BY block_id ORDER BY block_index) AS run
      FROM temp.number WHERE block_id IS NOT NULL) GROUP BY block_id, run`,
  edition: 'SELECT * FROM main.edition WHERE id IN (SELECT edition_id FROM temp.format)',
  work: 'SELECT * FROM main.work WHERE id IN (SELECT work_id FROM temp.edition)',
  plan: `SELECT id, edition_id, kind, day, made_on, iif(dropped_on <= :day, dropped_on, NULL) AS dropped_on,
      iif(dropped_on <= :day, dropped_reason, NULL) AS dropped_reason,
      template_id, printed_proof, on_sale_fixed, iif(ended_on <= :day, ended_on, NULL) AS ended_on
    FROM main.plan WHERE made_on <= :day`,
  format_file: `SELECT id, format_id, kind, file_name, final_on, sha256, note, iif(ended_on <= :day, ended_on, NULL) AS ended_on,
      iif(ended_on <= :day, ended_how, NULL) AS ended_how, iif(ended_on <= :day, ended_reason, '') AS ended_reason
    FROM main.format_file WHERE final_on <= :day AND format_id IN (SELECT id FROM temp.format)`,
  proof_check:
    'SELECT * FROM main.proof_check WHERE checked_on <= :day AND format_id IN (SELECT id FROM temp.format)',
  proof_check_line: 'SELECT * FROM main.proof_check_line WHERE check_id IN (SELECT id FROM temp.proof_check)',
  proof_check_reason: 'SELECT * FROM main.proof_check_reason WHERE given_on <= :day',
  number_block: 'SELECT * FROM main.number_block WHERE bought_on IS NULL OR bought_on <= :day',
};

const ORDER = [
  'listing_step',
  'format',
  'listing',
  'number',
  'number_tally',
  'number_run',
  'edition',
  'work',
  'plan',
  'format_file',
  'proof_check',
  'proof_check_line',
  'proof_check_reason',
  'number_block',
];
const INDEXES = [
  'CREATE INDEX temp.rewound_listing ON listing (format_id)',
  'CREATE INDEX temp.rewound_step ON listing_step (listing_id, id)',
  'CREATE INDEX temp.rewound_format ON format (edition_id)',
  'CREATE UNIQUE INDEX temp.rewound_format_id ON format (id)',
  'CREATE UNIQUE INDEX temp.rewound_listing_id ON listing (id)',
  'CREATE UNIQUE INDEX temp.rewound_number ON number (isbn13)',
  'CREATE INDEX temp.rewound_number_format ON number (format_id)',
  'CREATE UNIQUE INDEX temp.rewound_edition ON edition (id)',
  'CREATE INDEX temp.rewound_edition_work ON edition (work_id)',
  'CREATE INDEX temp.rewound_plan ON plan (edition_id)',
  'CREATE INDEX temp.rewound_file ON format_file (format_id)',
  'CREATE INDEX temp.rewound_check ON proof_check (format_id)',
  'CREATE INDEX temp.rewound_check_line ON proof_check_line (check_id)',
  'CREATE INDEX temp.rewound_check_reason ON proof_check_reason (line_id)',
];

/** Rewinds a reading connection of its own to a past day; it stays on that day until it is closed. */
export function rewind(raw: Database.Database, day: string): ReadDb {
  raw.pragma('temp_store = MEMORY');
  const literal = `'${day.replaceAll("'", "''")}'`;
  for (const table of ORDER) {
    const select = (REWOUND[table] ?? '').replaceAll(':day', literal);
    raw.exec(`CREATE TEMP TABLE "${table}" AS ${select}`);
    if (table === 'listing_step') raw.exec(INDEXES[1] ?? '');
    if (table === 'format')
      raw.exec('UPDATE temp.format SET cancelled_on = was_cancelled_on, cancel_reason = was_cancel_reason');
  }
  for (const index of INDEXES) if (!index.includes('rewound_step')) raw.exec(index);
  rewindFields(raw, day);
  const views = raw
    .prepare("SELECT sql FROM main.sqlite_schema WHERE type = 'view'")
    .pluck()
    .all() as string[];
  for (const view of views) raw.exec(view.replace(/^CREATE VIEW/i, 'CREATE TEMP VIEW'));
  return wrap(raw);
}
