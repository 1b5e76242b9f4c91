import { Refusal } from '../contract/refusal.ts';
import { readCommand } from '../store/journal.ts';
import { UPGRADE } from '../store/migrate.ts';
import { takeBack } from '../store/replay.ts';
import { refusalOf } from '../store/sqlite-errors.ts';
import type { Commands } from './context.ts';

export const undoCommands = {
  'journal.undo': ({ db }, { commandSeq }) => {
    const newest = readCommand(db);
    if (newest.length === 0) throw new Refusal('NOT_FOUND', 'Nothing has been changed yet.', 'commandSeq');
    const [first] = newest;
    if (first?.commandSeq !== commandSeq)
      throw new Refusal(
        'STEP_REFUSED',
        'Only the last change can be undone; something has changed since.',
        'commandSeq',
      );
    if (first.operation === UPGRADE)
      throw new Refusal(
        'STEP_REFUSED',
        'The last entry is the upgrade of this file to a newer form, which is not undone; a backup was taken before it.',
        'commandSeq',
      );
    try {
      takeBack(db, newest);
    } catch (error) {
      const refusal = refusalOf(error);
      if (!(refusal instanceof Refusal)) throw error;
      throw new Refusal('STEP_REFUSED', `This change cannot be undone. ${refusal.message}`, 'commandSeq');
    }
    return { undone: first.operation, entries: newest.length };
  },
} satisfies Commands<'journal.undo'>;
