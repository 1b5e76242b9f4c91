import { Refusal } from '../contract/refusal.ts';
import type { ReadDb } from '../store/connection.ts';
import { deleteEdition, editionsOfWork } from '../store/editions.ts';
import type { Commands } from './context.ts';
import { addEdition } from './editions.ts';

function needWork(db: ReadDb, id: number): { title: string; note: string } {
  const stored = db.one<{ title: string; note: string }>('SELECT title, note FROM work WHERE id = ?', id);
  if (!stored) throw new Refusal('NOT_FOUND', `There is no work ${id}.`, 'id');
  return stored;
}

export const workCommands = {
  'works.create': ({ db }, { workNote, ...fields }) => {
    const { lastInsertRowid: workId } = db.run(
      'INSERT INTO work (title, note) VALUES (?, ?)',
      fields.title,
      workNote,
    );
    return { workId, editionId: addEdition(db, workId, fields) };
  },

  'works.update': ({ db }, { id, title, note }) => {
    const stored = needWork(db, id);
    db.run(
      'UPDATE work SET title = ?, note = ? WHERE id = ?',
      title ?? stored.title,
      note ?? stored.note,
      id,
    );
    return { workId: id };
  },

  'works.remove': ({ db }, { id }) => {
    const stored = needWork(db, id);
    if (db.one('SELECT 1 FROM format f JOIN edition e ON e.id = f.edition_id WHERE e.work_id = ?', id))
      throw new Refusal('IN_USE', `${stored.title} has formats; remove or cancel them first.`, 'id');
    if (db.one('SELECT 1 FROM task WHERE work_id = ?', id))
      throw new Refusal('IN_USE', `${stored.title} has tasks; it is kept for the record.`, 'id');
    for (const edition of editionsOfWork(db, id)) deleteEdition(db, edition.id);
    db.run('DELETE FROM work WHERE id = ?', id);
    return { workId: id };
  },
} satisfies Commands<'works.create' | 'works.update' | 'works.remove'>;
