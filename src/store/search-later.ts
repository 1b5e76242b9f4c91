import type { WriteDb } from './connection.ts';
import { KIND, PLACES, type SearchKind } from './search.ts';

/** Takes in the records of one kind whose words changed, each once. */
function takeIn(db: WriteDb, kind: SearchKind): void {
  db.run(
    `DELETE FROM search_entry WHERE id IN (SELECT record_id + ? FROM search_later WHERE kind = ?)`,
    KIND[kind] * PLACES,
    kind,
  );
  db.run(
    `INSERT INTO search_entry (id, kind, record_id, name, words)
     SELECT id, kind, record_id, name, words FROM search_source
     WHERE kind = ?1 AND record_id IN (SELECT record_id FROM search_later WHERE kind = ?1)`,
    kind,
  );
}

/**
 * Runs work that writes much, and makes the entries of the search anew once at its end instead of with every row
 * (migration 0018). For work that is undone as a whole when it throws: nothing is taken in then.
 */
export function withSearchLater<T>(db: WriteDb, work: () => T): T {
  // No record has this key: it only says that from here on records are noted.
  db.run("INSERT INTO search_later (kind, record_id) VALUES ('work', 0)");
  const value = work();
  for (const kind of Object.keys(KIND) as SearchKind[]) takeIn(db, kind);
  db.run('DELETE FROM search_later');
  return value;
}
