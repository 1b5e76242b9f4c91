import { type CarriedEntry, changesFile } from '../contract/changes.ts';
import { Refusal } from '../contract/refusal.ts';
import { Rehearsal } from '../contract/rehearsal.ts';
import { birthOf, isShared } from '../store/changes.ts';
import type { ReadDb } from '../store/connection.ts';
import type { Commands } from './context.ts';
import { readJsonFile } from './json-file.ts';
import { MergeQuestions } from './merge-questions.ts';
import { RowMerge } from './merge-rows.ts';

/** Records named in the answer. */
const NAMED = 200;

function readEntries(db: ReadDb, bytes: Uint8Array): CarriedEntry[] {
  const content = readJsonFile(bytes);
  const parsed = changesFile.safeParse(content);
  if (!parsed.success)
    throw new Refusal(
      'BAD_INPUT',
      'This file is no file of changes of Edition Ledger; in the copy, export the work anew as “Changes”.',
      'file',
    );
  const { form, birth, entries } = parsed.data;
  const own = db.one<{ user_version: number }>('PRAGMA user_version')?.user_version ?? 0;
  if (form !== own)
    throw new Refusal(
      form > own ? 'CATALOGUE_NEWER' : 'BAD_INPUT',
      `The copy has form ${form} and this list form ${own}; open both with the same version of Edition Ledger and export the changes anew.`,
      'file',
    );
  if (birth !== birthOf(db))
    throw new Refusal(
      'CATALOGUE_FOREIGN',
      'These changes were made in another list, not in a copy of this one; take its works over as a table or as ONIX instead.',
      'file',
    );
  return entries;
}

export const changesCommands = {
  'changes.merge': ({ db, files, step }, { file, dryRun, choices, otherwise }) => {
    step(0, null, 'reading the file');
    const entries = readEntries(db, files.read(file));
    const fresh = entries.filter((entry, index) => {
      step(index + 1, entries.length, 'entries compared');
      return !isShared(db, entry);
    });
    const questions = new MergeQuestions(choices, otherwise);
    const merge = new RowMerge(db, fresh, questions);
    for (const [done, entry] of fresh.entries()) {
      merge.take(entry);
      step(done + 1, fresh.length, 'changes taken over');
    }
    const { taken, left } = merge;
    const { open, asked: conflicts } = questions;
    const known = entries.length - fresh.length + merge.known;
    const merged = { entries: entries.length, known, taken, left, records: merge.touched(NAMED), conflicts };
    if (dryRun) throw new Rehearsal(merged);
    if (open > 0)
      throw new Refusal(
        'STEP_REFUSED',
        `${open === 1 ? 'One change' : `${open} changes`} of the copy cannot be taken over by themselves; choose what holds for each, then merge again.`,
        'choices',
      );
    return merged;
  },
} satisfies Commands<'changes.merge'>;
