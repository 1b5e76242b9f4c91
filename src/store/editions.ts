import { eq } from 'drizzle-orm';
import type { Contributor, EditionFields, Subject } from '../contract/editions.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { deleteAdvice } from './edition-advice.ts';
import { isListed, LISTED, listed } from './ids.ts';
import { type Columns, columns, rows } from './rows.ts';
import { edition, editionContributor, editionKeyword, editionSubject } from './schema.ts';

type Stored = typeof edition.$inferSelect;
export type StoredEdition = Stored & Pick<EditionFields, 'contributors' | 'subjects' | 'keywords'>;

const EDITION = columns(edition);
const CONTRIBUTOR = columns(editionContributor, 'editionId', 'role', 'name');
const SUBJECT = columns(editionSubject, 'editionId', 'scheme', 'code', 'heading');
const KEYWORD = columns(editionKeyword, 'editionId', 'keyword');

function grouped<R extends { editionId: number }, T>(rows: R[], pick: (row: R) => T): Map<number, T[]> {
  const map = new Map<number, T[]>();
  for (const row of rows) {
    const list = map.get(row.editionId);
    if (list) list.push(pick(row));
    else map.set(row.editionId, [pick(row)]);
  }
  return map;
}

/** Editions with their ordered lists, in four queries however many there are. */
function withLists(db: ReadDb, editions: Stored[]): StoredEdition[] {
  const ids = editions.map((row) => row.id);
  if (ids.length === 0) return [];
  const read = <Row>(of: Columns<Row>, table: string) =>
    rows(db, of, `FROM ${table} WHERE edition_id IN ${LISTED} ORDER BY edition_id, position`, listed(ids));
  const contributors = grouped(
    read(CONTRIBUTOR, 'edition_contributor'),
    (row): Contributor => ({ role: row.role, name: row.name }),
  );
  const subjects = grouped(
    read(SUBJECT, 'edition_subject'),
    (row): Subject => ({ scheme: row.scheme, code: row.code, heading: row.heading }),
  );
  const keywords = grouped(read(KEYWORD, 'edition_keyword'), (row) => row.keyword);
  return editions.map((row) => ({
    ...row,
    contributors: contributors.get(row.id) ?? [],
    subjects: subjects.get(row.id) ?? [],
    keywords: keywords.get(row.id) ?? [],
  }));
}

/** One edition with its lists. */
export function editionById(db: ReadDb, id: number): StoredEdition | undefined {
  return withLists(db, db.orm.select().from(edition).where(eq(edition.id, id)).all())[0];
}

/** Some editions with their lists, in a fixed number of queries. */
export function editionsByIds(db: ReadDb, ids: number[]): StoredEdition[] {
  if (ids.length === 0) return [];
  return withLists(db, rows(db, EDITION, `FROM edition WHERE id IN ${LISTED}`, listed(ids)));
}

/** The editions of a work, newest (highest number, then latest recorded) first. */
export function editionsOfWork(db: ReadDb, workId: number): StoredEdition[] {
  const rows = db.orm.select().from(edition).where(eq(edition.workId, workId)).all();
  rows.sort((a, b) => (b.number ?? 1) - (a.number ?? 1) || b.id - a.id);
  return withLists(db, rows);
}

/** The editions of some works, by work, oldest (lowest number, then earliest recorded) first. */
export function editionsOfWorks(db: ReadDb, workIds: number[]): StoredEdition[] {
  const rows = db.orm.select().from(edition).where(isListed(edition.workId, workIds)).all();
  rows.sort((a, b) => a.workId - b.workId || (a.number ?? 1) - (b.number ?? 1) || a.id - b.id);
  return withLists(db, rows);
}

/** The edition that replaces this one, if any. */
export function replacementOf(db: ReadDb, id: number): number | null {
  return db.one<{ id: number }>('SELECT id FROM edition WHERE replaces_id = ?', id)?.id ?? null;
}

/** Links an edition to the one it replaces. */
export function linkEdition(db: WriteDb, id: number, replacesId: number): void {
  db.orm.update(edition).set({ replacesId }).where(eq(edition.id, id)).run();
}

type ListField = 'contributors' | 'subjects' | 'keywords';

/** Writes one ordered list anew; an unchanged list writes nothing. */
function writeList(db: WriteDb, id: number, field: ListField, fields: Partial<EditionFields>): void {
  const place = (index: number) => ({ editionId: id, position: index + 1 });
  if (field === 'contributors') {
    db.orm.delete(editionContributor).where(eq(editionContributor.editionId, id)).run();
    const rows = (fields.contributors ?? []).map((row, index) => ({ ...place(index), ...row }));
    if (rows.length > 0) db.orm.insert(editionContributor).values(rows).run();
  } else if (field === 'subjects') {
    db.orm.delete(editionSubject).where(eq(editionSubject.editionId, id)).run();
    const rows = (fields.subjects ?? []).map((row, index) => ({ ...place(index), ...row }));
    if (rows.length > 0) db.orm.insert(editionSubject).values(rows).run();
  } else {
    db.orm.delete(editionKeyword).where(eq(editionKeyword.editionId, id)).run();
    const rows = (fields.keywords ?? []).map((keyword, index) => ({ ...place(index), keyword }));
    if (rows.length > 0) db.orm.insert(editionKeyword).values(rows).run();
  }
}

/** Adds an edition with all its fields; answers its id. */
export function insertEdition(
  db: WriteDb,
  fields: EditionFields & { workId: number; replacesId?: number | null },
): number {
  const { contributors, subjects, keywords, ...columns } = fields;
  const id = Number(db.orm.insert(edition).values(columns).run().lastInsertRowid);
  for (const field of ['contributors', 'subjects', 'keywords'] as const)
    writeList(db, id, field, { contributors, subjects, keywords });
  return id;
}

/** Writes the named fields of an edition. */
export function writeEdition(db: WriteDb, id: number, fields: Partial<EditionFields>): void {
  const { contributors, subjects, keywords, ...columns } = fields;
  if (Object.keys(columns).length > 0) db.orm.update(edition).set(columns).where(eq(edition.id, id)).run();
  const lists = { contributors, subjects, keywords };
  for (const field of ['contributors', 'subjects', 'keywords'] as const)
    if (lists[field] !== undefined) writeList(db, id, field, fields);
}

/** Removes an edition that has no format, with its lists and what was answered on it. */
export function deleteEdition(db: WriteDb, id: number): void {
  deleteAdvice(db, id);
  for (const field of ['contributors', 'subjects', 'keywords'] as const) writeList(db, id, field, {});
  db.orm.delete(edition).where(eq(edition.id, id)).run();
}

/** The first day on which the editions that this one follows, step by step, came out; null where none is known. */
export function firstDayBefore(db: ReadDb, editionId: number): string | null {
  const row = db.one<{ day: string | null }>(
    `WITH RECURSIVE earlier (id) AS (
       SELECT replaces_id FROM edition WHERE id = ? AND replaces_id IS NOT NULL
       UNION SELECT e.replaces_id FROM edition e JOIN earlier ON earlier.id = e.id WHERE e.replaces_id IS NOT NULL)
     SELECT min(coalesce(f.publication_date, f.on_sale_date)) AS day FROM format f
     WHERE f.edition_id IN (SELECT id FROM earlier) AND f.cancelled_on IS NULL`,
    editionId,
  );
  return row?.day ?? null;
}
