import type { Step } from '../contract/jobs.ts';
import type { WriteDb } from './connection.ts';
import { KIND, PLACES, type SearchKind } from './search.ts';

/** Records taken in by one statement. */
const AT_ONCE = 1_000;

/** Takes in the records of one kind whose words changed, each once; `told` hears how many. */
function takeIn(db: WriteDb, kind: SearchKind, told: (records: number) => void): void {
  for (let after = 0; ; ) {
    const page = db.all<{ id: number }>(
      'SELECT record_id AS id FROM search_later WHERE kind = ? AND record_id > ? ORDER BY record_id LIMIT ?',
      kind,
      after,
      AT_ONCE,
    );
    const last = page.at(-1)?.id;
    if (last === undefined) return;
    const ids = JSON.stringify(page.map(({ id }) => id));
    db.run(
      'DELETE FROM search_entry WHERE id IN (SELECT value + ? FROM json_each(?))',
      KIND[kind] * PLACES,
      ids,
    );
    db.run(
      `INSERT INTO search_entry (id, kind, record_id, name, words)
       SELECT id, kind, record_id, name, words FROM search_source
       WHERE kind = ?1 AND record_id IN (SELECT value FROM json_each(?2))`,
      kind,
      ids,
    );
    told(page.length);
    after = last;
  }
}

/**
 * Runs work that writes much, and makes the entries of the search anew once at its end instead of with every row
 * (migration 0018). For work that is undone as a whole when it throws: nothing is taken in then.
 */
export function withSearchLater<T>(db: WriteDb, step: Step, work: () => T): T {
  // No record has this key: it only says that from here on records are noted.
  db.run("INSERT INTO search_later (kind, record_id) VALUES ('work', 0)");
  const value = work();
  const total = (db.one<{ n: number }>('SELECT count(*) AS n FROM search_later')?.n ?? 0) - 1;
  let done = 0;
  for (const kind of Object.keys(KIND) as SearchKind[])
    takeIn(db, kind, (records) => {
      done += records;
      step(done, total, 'records taken into the search');
    });
  db.run('DELETE FROM search_later');
  return value;
}
