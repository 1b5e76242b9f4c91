import { formName } from '../contract/terms.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import type { ReadDb } from '../store/connection.ts';

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

/** A row of a table of the journal. */
export interface NamedRow {
  entity: string;
  rowKey: string;
  row: Readonly<Record<string, string | number | null>>;
}

/** What a journalled row is called, for reading: 'The Salt Almanac, 2nd edition · Paperback'. */
export function recordName(db: ReadDb, { entity, rowKey, row }: NamedRow): string {
  if (entity === 'setting') return `setting ${rowKey}`;
  if (entity === 'number') return shownIsbn(rowKey);
  if (entity === 'number_block') return text(row.hyphenated_prefix);
  if (entity === 'task' || entity === 'work') return text(row.title);
  if (entity === 'channel') return text(row.name);
  if (entity === 'edition')
    return editionLabel({
      title: text(row.title),
      number: typeof row.number === 'number' ? row.number : null,
    });
  if (entity === 'format') return formatTitle(db, row.id);
  if (entity === 'listing') return listingTitle(db, row.id);
  if (typeof row.listing_id === 'number') return listingTitle(db, row.listing_id);
  if (typeof row.format_id === 'number') return formatTitle(db, row.format_id);
  if (typeof row.edition_id === 'number') return editionTitle(db, row.edition_id);
  return `${entity} ${rowKey}`;
}

/** What a row is called that is not in the catalogue: by itself where it has a name, else by what it belongs to. */
export function addedRowName(db: ReadDb, entity: string, row: NamedRow['row']): string {
  const kind = entity.replaceAll('_', ' ');
  if (entity !== 'format' && entity !== 'listing')
    return `New ${kind}: ${recordName(db, { entity, rowKey: '', row })}`;
  const parent = entity === 'format' ? editionTitle(db, row.edition_id) : formatTitle(db, row.format_id);
  return `New ${kind} of ${parent}`;
}
