import { BLANK_EDITION, type EditionFields } from '../contract/editions.ts';
import { Refusal } from '../contract/refusal.ts';
import { editionFacts } from '../records/editions.ts';
import { changesOf } from '../rules/changes.ts';
import { editionLabel } from '../rules/labels.ts';
import { lockedSentence } from '../rules/locks.ts';
import type { ReadDb, WriteDb } from '../store/connection.ts';
import {
  deleteEdition,
  editionById,
  insertEdition,
  type StoredEdition,
  writeEdition,
} from '../store/editions.ts';
import { readSettings } from '../store/settings.ts';
import type { Commands } from './context.ts';

/** The edition, or NOT_FOUND. */
export function needEdition(db: ReadDb, id: number): StoredEdition {
  const stored = editionById(db, id);
  if (!stored) throw new Refusal('NOT_FOUND', `There is no edition ${id}.`, 'id');
  return stored;
}

/** Refuses an age range that runs backwards. */
export function checkAges(fields: Pick<EditionFields, 'ageFrom' | 'ageTo'>): void {
  if (fields.ageFrom !== null && fields.ageTo !== null && fields.ageFrom > fields.ageTo)
    throw new Refusal(
      'BAD_INPUT',
      `The age range runs from ${fields.ageFrom} to ${fields.ageTo}; put the lower age first.`,
      'ageTo',
    );
}

/** Adds an edition; what is left out comes from Settings or stays blank. Answers its id. */
export function addEdition(
  db: WriteDb,
  workId: number,
  given: { title: string } & { [K in keyof EditionFields]?: EditionFields[K] | undefined },
): number {
  const settings = readSettings(db);
  const named = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
  const fields: EditionFields = {
    ...BLANK_EDITION,
    language: settings.language,
    imprint: settings.imprint,
    title: given.title,
    ...named,
  };
  checkAges(fields);
  return insertEdition(db, { ...fields, workId });
}

export const editionCommands = {
  'editions.create': ({ db }, { workId, ...fields }) => {
    if (!db.one('SELECT 1 FROM work WHERE id = ?', workId))
      throw new Refusal('NOT_FOUND', `There is no work ${workId}.`, 'workId');
    return { editionId: addEdition(db, workId, fields) };
  },

  'editions.update': ({ db }, { id, ...wanted }) => {
    const stored = needEdition(db, id);
    const changes = changesOf<EditionFields>(stored, wanted as Partial<EditionFields>);
    const changed = Object.keys(changes);
    const lock = editionFacts(db, [stored])[0]?.lock;
    const locked = changed.filter((field) => lock?.fields.includes(field));
    if (lock && locked.length > 0)
      throw new Refusal('FIELD_LOCKED', lockedSentence(locked, { ...lock, by: lock.channelName }), locked[0]);
    checkAges({ ...stored, ...changes });
    writeEdition(db, id, changes);
    return { editionId: id, changed };
  },

  'editions.remove': ({ db }, { id }) => {
    const stored = needEdition(db, id);
    if (db.one('SELECT 1 FROM format WHERE edition_id = ?', id))
      throw new Refusal('IN_USE', `${editionLabel(stored)} has formats; remove or cancel them first.`, 'id');
    if (db.one('SELECT 1 FROM edition WHERE replaces_id = ?', id))
      throw new Refusal(
        'IN_USE',
        `${editionLabel(stored)} is replaced by another edition; it is kept for the record.`,
        'id',
      );
    if (db.one('SELECT 1 FROM plan WHERE edition_id = ?', id))
      throw new Refusal('IN_USE', `${editionLabel(stored)} has a plan; it is kept for the record.`, 'id');
    deleteEdition(db, id);
    return { editionId: id };
  },

  'editions.correct': ({ db, today }, { id, reason }) => {
    const stored = needEdition(db, id);
    const facts = editionFacts(db, [stored])[0];
    if (facts?.correction)
      throw new Refusal(
        'STEP_REFUSED',
        `A correction is open since ${facts.correction.madeOn}; make the change now.`,
        'id',
      );
    if (!facts?.lock)
      throw new Refusal('STEP_REFUSED', `${editionLabel(stored)} is not locked; change it as it is.`, 'id');
    if (!facts.lock.correctable)
      throw new Refusal(
        'STEP_REFUSED',
        'A correction needs every listing taken back and none ever cleared for sale; otherwise the way forward is the next edition with new numbers.',
        'id',
      );
    db.run('INSERT INTO correction (edition_id, made_on, reason) VALUES (?, ?, ?)', id, today, reason);
    return { editionId: id };
  },
} satisfies Commands<'editions.create' | 'editions.update' | 'editions.remove' | 'editions.correct'>;
