import type { JournalEntry } from '../contract/journal.ts';
import { formName } from '../contract/terms.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import type { ReadDb } from '../store/connection.ts';
import { journalPage, readJournal } from '../store/journal.ts';
import type { Queries } from './context.ts';

interface FormatName {
  title: string;
  number: number | null;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: number;
}

const text = (value: unknown) => (typeof value === 'string' ? value : '');

function formatTitle(db: ReadDb, id: unknown): string {
  const row = db.one<FormatName>(
    `SELECT e.title, e.number, f.form, f.form_detail AS formDetail, f.case_kind AS caseKind, f.large_print AS largePrint
     FROM format f JOIN edition e ON e.id = f.edition_id WHERE f.id = ?`,
    id,
  );
  return row
    ? `${editionLabel(row)} · ${formName({ ...row, largePrint: row.largePrint === 1 })}`
    : `format ${String(id)}`;
}

function editionTitle(db: ReadDb, id: unknown): string {
  const row = db.one<{ title: string; number: number | null }>(
    'SELECT title, number FROM edition WHERE id = ?',
    id,
  );
  return row ? editionLabel(row) : `edition ${String(id)}`;
}

function listingTitle(db: ReadDb, id: unknown): string {
  const row = db.one<{ formatId: number; channel: string }>(
    'SELECT l.format_id AS formatId, c.name AS channel FROM listing l JOIN channel c ON c.id = l.channel_id WHERE l.id = ?',
    id,
  );
  return row ? `${formatTitle(db, row.formatId)} · ${row.channel}` : `listing ${String(id)}`;
}

/** What a journalled row is called, for reading. */
function nameOf(db: ReadDb, entry: Omit<JournalEntry, 'about'>): string {
  const row = entry.after ?? entry.before ?? {};
  if (entry.entity === 'setting') return `setting ${entry.rowKey}`;
  if (entry.entity === 'number') return shownIsbn(entry.rowKey);
  if (entry.entity === 'number_block') return text(row.hyphenated_prefix);
  if (entry.entity === 'task' || entry.entity === 'work') return text(row.title);
  if (entry.entity === 'channel') return text(row.name);
  if (entry.entity === 'edition')
    return editionLabel({
      title: text(row.title),
      number: typeof row.number === 'number' ? row.number : null,
    });
  if (entry.entity === 'format') return formatTitle(db, row.id);
  if (entry.entity === 'listing') return listingTitle(db, row.id);
  if (typeof row.listing_id === 'number') return listingTitle(db, row.listing_id);
  if (typeof row.format_id === 'number') return formatTitle(db, row.format_id);
  if (typeof row.edition_id === 'number') return editionTitle(db, row.edition_id);
  return `${entry.entity} ${entry.rowKey}`;
}

export const journalQueries = {
  'journal.list': ({ db }, input) => {
    const read = readJournal(db, input);
    const entries = read.slice(0, input.count).map((entry) => ({ ...entry, about: nameOf(db, entry) }));
    return { entries, more: read.length > input.count };
  },

  'journal.rows': ({ db }, input) => {
    const { rows, total } = journalPage(db, input);
    return { rows: rows.map((entry) => ({ ...entry, about: nameOf(db, entry) })), total };
  },
} satisfies Queries<'journal.list' | 'journal.rows'>;
