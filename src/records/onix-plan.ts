import type { EditionFields } from '../contract/editions.ts';
import type { FormatFields } from '../contract/formats.ts';
import type { OnixState } from '../contract/onix.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { digestOf, editionChanges, formatChanges } from '../rules/onix/compare.ts';
import type { GroupRow } from '../rules/onix/grouping.ts';
import type { ReadProduct } from '../rules/onix/products.ts';
import type { ReadDb } from '../store/connection.ts';
import { editionById } from '../store/editions.ts';
import { formatById } from '../store/formats.ts';
import { takenNumber } from '../store/numbers.ts';
import { editionFacts } from './editions.ts';

/** A product against the catalogue as it stands; what is told stays in the message. */
export interface PlanRow extends GroupRow {
  line: number;
  isbn: string;
  state: OnixState;
  caseKind: FormatFields['caseKind'];
  largePrint: boolean;
  /** The format that has its number, if one does. */
  formatId: number | null;
  editionChanges: Partial<EditionFields>;
  formatChanges: Partial<FormatFields>;
  /** Values before, of the changed fields. */
  before: Record<string, unknown>;
  lockedFields: string[];
  digest: Record<string, string>;
  notes: string[];
  kept: number;
  /** How many kept parts have no place in a message of ONIX 3. */
  keptOld: number;
}

function blankRow(read: ReadProduct): PlanRow {
  return {
    row: read.row,
    line: read.line,
    isbn: read.isbn13 === null ? read.isbnText : shownIsbn(read.isbn13),
    isbn13: read.isbn13,
    title: read.edition.title ?? '',
    subtitle: read.edition.subtitle ?? '',
    number: read.edition.number ?? null,
    language: read.edition.language ?? '',
    contributors: read.edition.contributors ?? [],
    form: read.format.form ?? '',
    formDetail: read.format.formDetail ?? null,
    caseKind: read.format.caseKind ?? null,
    largePrint: read.format.largePrint ?? false,
    related: read.related,
    works: read.works,
    state: 'new',
    formatId: null,
    editionChanges: {},
    formatChanges: {},
    before: {},
    lockedFields: [],
    digest: digestOf(read.edition),
    notes: [...read.notes],
    kept: read.kept.length,
    keptOld: read.kept.filter((part) => part.version === '2.1').length,
  };
}

function refuse(row: PlanRow, state: 'refused' | 'conflicting', why: string): PlanRow {
  row.state = state;
  row.notes.unshift(why);
  return row;
}

/** Sets a product against the format that has its number. */
function againstFormat(
  db: ReadDb,
  row: PlanRow,
  read: ReadProduct,
  plain: (text: string) => string,
): PlanRow {
  const format = row.formatId === null ? undefined : formatById(db, row.formatId);
  const edition = format && editionById(db, format.editionId);
  if (!format || !edition) return row;
  const [facts] = editionFacts(db, [edition]);
  row.editionChanges = editionChanges(edition, read.edition, plain);
  row.formatChanges = formatChanges(format, read.format);
  const changed = [...Object.keys(row.editionChanges), ...Object.keys(row.formatChanges)];
  for (const field of changed) row.before[field] = { ...edition, ...format }[field as keyof typeof format];
  const ended = format.standing === 'retired' || format.standing === 'cancelled';
  const own = facts?.formats.find((candidate) => candidate.id === format.id)?.lock?.fields ?? [];
  const locked = new Set([...(facts?.lock?.fields ?? []), ...own]);
  row.lockedFields = changed.filter((field) => locked.has(field) || (ended && field in row.formatChanges));
  if (row.title === '') Object.assign(row, { title: edition.title, form: format.form });
  if (row.lockedFields.length > 0) row.state = 'locked';
  else row.state = changed.length > 0 ? 'changed' : 'unchanged';
  return row;
}

/** Why a product cannot be taken, whatever the catalogue holds; null where it can. */
function hindrance(read: ReadProduct): string | null {
  if (read.isbn13 === null) return read.isbnProblem ?? 'This product has no ISBN.';
  if (read.notification === '05')
    return 'The message asks to delete this record (sent in error); nothing is deleted here. Cancel the format by hand if it is so.';
  return null;
}

/** Why a product cannot become a new format; null where it can. */
function incomplete(read: ReadProduct): string | null {
  if (read.notification === '04')
    return 'This is a partial update of a product that the catalogue does not have; ask for its whole record.';
  if (!read.edition.title) return 'This product has no title.';
  if (!read.format.form) return 'This product has no product form that can be recorded.';
  return null;
}

/** Sets one product against the catalogue. `plain` takes the marks out of a description. */
export function planRow(
  db: ReadDb,
  read: ReadProduct,
  seen: Map<string, number>,
  plain: (text: string) => string,
): PlanRow {
  const row = blankRow(read);
  if (row.keptOld > 0)
    row.notes.push(
      `${row.keptOld} parts are of ONIX 2.1: they are kept, but have no place in the messages of ONIX 3 that Edition Ledger writes.`,
    );
  const why = hindrance(read);
  if (why !== null || read.isbn13 === null) return refuse(row, 'refused', why ?? '');
  const before = seen.get(read.isbn13);
  if (before !== undefined)
    return refuse(
      row,
      'conflicting',
      `The same number stands in row ${before} of this message; only one of them can be taken.`,
    );
  seen.set(read.isbn13, read.row);
  const taken = takenNumber(db, read.isbn13);
  if (taken?.standing === 'spent' && taken.formatId === null)
    return refuse(row, 'refused', `${row.isbn} is spent (${taken.spentReason}) and can never be used again.`);
  row.formatId = taken?.formatId ?? null;
  if (row.formatId !== null) return againstFormat(db, row, read, plain);
  const lacking = incomplete(read);
  if (lacking !== null) return refuse(row, 'refused', lacking);
  if (taken?.standing === 'reserved')
    row.notes.push(`${row.isbn} was reserved for ${taken.reservedFor}; it is given to this product.`);
  return row;
}
