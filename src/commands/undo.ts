import { Refusal } from '../contract/refusal.ts';
import { readCommand } from '../store/journal.ts';
import { UPGRADE } from '../store/migrate.ts';
import { takeBack } from '../store/replay.ts';
import { refusalOf } from '../store/sqlite-errors.ts';
import type { Commands } from './context.ts';

type Entries = ReturnType<typeof readCommand>;

/**
 * What to do in place of an undo that the guards refuse. A task that ended stays ended, whoever ended it, since others
 * may have gone on from there; the next report opens again what the wrong one closed.
 */
function insteadOf(entries: Entries): string | undefined {
  const [first] = entries;
  const ended = entries.filter(({ entity, action }) => entity === 'task' && action === 'changed').length;
  if (first?.operation !== 'reports.reconcile' || ended === 0) return undefined;
  const tasks = ended === 1 ? 'a task, which stays' : `${ended} tasks, which stay`;
  return `This report cannot be undone: it ended ${tasks} ended. Load the right report of the same day or a later one: what still differs becomes a finding again, from which a new task can be made.`;
}

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
      const why = insteadOf(newest) ?? `This change cannot be undone. ${refusal.message}`;
      throw new Refusal('STEP_REFUSED', why, 'commandSeq');
    }
    return { undone: first.operation, entries: newest.length };
  },
} satisfies Commands<'journal.undo'>;
