import type { JournalEntry } from '../contract/journal.ts';
import { recordName } from '../records/record-names.ts';
import type { ReadDb } from '../store/connection.ts';
import { journalPage, readJournal } from '../store/journal.ts';
import type { Queries } from './context.ts';

const named = (db: ReadDb, entry: Omit<JournalEntry, 'about'>): JournalEntry => ({
  ...entry,
  about: recordName(db, { ...entry, row: entry.after ?? entry.before ?? {} }),
});

export const journalQueries = {
  'journal.list': ({ db }, input) => {
    const read = readJournal(db, input);
    const entries = read.slice(0, input.count).map((entry) => named(db, entry));
    return { entries, more: read.length > input.count };
  },

  'journal.rows': ({ db }, input) => {
    const { rows, total } = journalPage(db, input);
    return { rows: rows.map((entry) => named(db, entry)), total };
  },
} satisfies Queries<'journal.list' | 'journal.rows'>;
