import type { ReadDb, WriteDb } from './connection.ts';

interface StoredFilter {
  id: number;
  name: string;
  /** JSON of the terms. */
  terms: string;
}

/** The saved filters by name. */
export function allFilters(db: ReadDb): StoredFilter[] {
  return db.all<StoredFilter>('SELECT id, name, terms FROM saved_filter ORDER BY name COLLATE NOCASE');
}

/** Keeps a filter under a name, in place of one that bears it already; answers its id. */
export function putFilter(db: WriteDb, name: string, terms: string): number {
  const known = db.one<{ id: number }>('SELECT id FROM saved_filter WHERE name = ? COLLATE NOCASE', name);
  if (!known)
    return db.run('INSERT INTO saved_filter (name, terms) VALUES (?, ?)', name, terms).lastInsertRowid;
  db.run('UPDATE saved_filter SET name = ?, terms = ? WHERE id = ?', name, terms, known.id);
  return known.id;
}

/** Forgets a filter; answers whether it was there. */
export function deleteFilter(db: WriteDb, id: number): boolean {
  return db.run('DELETE FROM saved_filter WHERE id = ?', id).changes > 0;
}
