import type { ReadDb } from './connection.ts';

/** A row as an entry of the journal holds it. */
export type JournalRow = Record<string, string | number | null>;

/** How the work of a row is found by the record it refers to. */
const WORK_BY: readonly [column: string, sql: string][] = [
  ['edition_id', 'SELECT work_id AS w FROM edition WHERE id = ?'],
  ['format_id', 'SELECT e.work_id AS w FROM format f JOIN edition e ON e.id = f.edition_id WHERE f.id = ?'],
  [
    'listing_id',
    `SELECT e.work_id AS w FROM listing l JOIN format f ON f.id = l.format_id
     JOIN edition e ON e.id = f.edition_id WHERE l.id = ?`,
  ],
  [
    'advice_id',
    'SELECT e.work_id AS w FROM edition_advice a JOIN edition e ON e.id = a.edition_id WHERE a.id = ?',
  ],
  [
    'check_id',
    `SELECT e.work_id AS w FROM proof_check c JOIN format f ON f.id = c.format_id
     JOIN edition e ON e.id = f.edition_id WHERE c.id = ?`,
  ],
  ['task_id', 'SELECT work_id AS w FROM task WHERE id = ?'],
];

/** Works found while a command is sealed, by column and id; rows of one record follow each other. */
export type WorksFound = Map<string, number | null>;

/** More than this is forgotten, so that an import of any size needs no more. */
const MOST_WORKS = 10_000;

/** The work a row belongs to, followed through the row's own references; null for rows of no work. */
export function workOf(db: ReadDb, entity: string, row: JournalRow, works: WorksFound): number | null {
  if (entity === 'work') return typeof row.id === 'number' ? row.id : null;
  if (typeof row.work_id === 'number') return row.work_id;
  for (const [column, sql] of WORK_BY) {
    const id = row[column];
    if (typeof id !== 'number') continue;
    const key = `${column} ${id}`;
    const known = works.get(key);
    if (known !== undefined) return known;
    if (works.size >= MOST_WORKS) works.clear();
    const work = db.one<{ w: number }>(sql, id)?.w ?? null;
    works.set(key, work);
    return work;
  }
  return null;
}
