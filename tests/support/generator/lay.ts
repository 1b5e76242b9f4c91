import type Database from 'better-sqlite3';

/** Runs of taken numbers, tallies and search entries, as the triggers would have made them. */
const DERIVED = `
  INSERT INTO number_run (block_id, first_index, last_index)
    SELECT block_id, min(block_index), max(block_index) FROM (
      SELECT block_id, block_index, block_index - row_number() OVER (PARTITION BY block_id ORDER BY block_index) AS run
      FROM number WHERE block_id IS NOT NULL) GROUP BY block_id, run;
  INSERT INTO number_tally (block_id, reserved, assigned, spent)
    SELECT b.id, coalesce(sum(n.standing = 'reserved'), 0), coalesce(sum(n.standing = 'assigned'), 0),
      coalesce(sum(n.standing = 'spent'), 0) FROM number_block b LEFT JOIN number n ON n.block_id = b.id GROUP BY b.id;
  INSERT INTO search_entry (id, kind, record_id, name, words) SELECT id, kind, record_id, name, words FROM search_source;
  INSERT INTO search_words (search_words) VALUES ('rebuild');`;

/**
 * Runs work in one transaction without triggers and without the journal's indexes, puts both back, and makes what is
 * derived from what was laid in.
 */
export function layQuickly(raw: Database.Database, work: () => void): void {
  raw.pragma('journal_mode = MEMORY');
  raw.pragma('synchronous = OFF');
  raw.pragma('foreign_keys = OFF');
  raw.pragma('ignore_check_constraints = ON');
  raw.pragma('cache_size = -1000000');
  raw.pragma('temp_store = MEMORY');
  const held = raw
    .prepare(
      `SELECT type, name, sql FROM sqlite_schema
       WHERE type = 'trigger' OR (type = 'index' AND tbl_name = 'journal' AND sql IS NOT NULL) ORDER BY rowid`,
    )
    .all() as { type: string; name: string; sql: string }[];
  raw.exec('BEGIN');
  for (const { type, name } of held) raw.exec(`DROP ${type} "${name}"`);
  work();
  raw.exec(DERIVED);
  for (const { sql } of held) raw.exec(sql);
  raw.exec('COMMIT');
  // Statistics as the program keeps them when it closes a file.
  raw.pragma('analysis_limit = 400');
  raw.pragma('optimize = 0x10002');
  raw.pragma('journal_mode = WAL');
}
