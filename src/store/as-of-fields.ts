import type Database from 'better-sqlite3';

/**
 * What the journal says about a day: the tables whose fields it gives back. A record is a row of its own, `key` the
 * column that leads to its parent; a list's rows belong to a row of another of these tables, `of`.
 */
interface Recorded {
  key?: string;
  of?: string;
  /** Columns that never change, and so can be looked up by their index whatever else did. */
  fixed?: readonly string[];
  /** A column that is put in order and compared without regard to capitals. */
  nocase?: string;
}

const RECORDED: Readonly<Record<string, Recorded>> = {
  work: {},
  edition: { key: 'work_id' },
  edition_contributor: { key: 'edition_id', of: 'edition' },
  edition_subject: { key: 'edition_id', of: 'edition' },
  edition_keyword: { key: 'edition_id', of: 'edition' },
  format: { key: 'edition_id' },
  format_price: { key: 'format_id', of: 'format' },
  channel: { nocase: 'name' },
  listing: { fixed: ['format_id', 'channel_id'] },
  number_block: {},
  print_card: { key: 'channel_id', of: 'channel' },
  print_quote: { key: 'card_id', of: 'print_card' },
};

/** A table's fields on a day: what to read of a stored row `r`, or a copy where its rows are others than those stored. */
export interface Fields {
  column(name: string): string;
  where?: string;
  /** Set where the table has to be copied: rows that are stored no more, and the columns to look the copy up by. */
  copied?: { gone?: string; by: string[] };
}

const AS_STORED: Fields = { column: (name) => `r."${name}"` };

/** The conditions of the indexes that hold these entries alone (migration 0020, and 0019 for listings). */
const named = (tables: readonly string[]) => tables.map((table) => `'${table}'`).join(', ');
const CHANGES = "action <> 'added' AND entity IN ";
const MOVED = ['work_id', 'edition_id', 'format_id', 'channel_id', 'card_id']
  .map((key) => `json_extract(before, '$.${key}') IS NOT json_extract(after, '$.${key}')`)
  .join(' OR ');
const MORE_THAN_STEP = `entity = 'listing' AND action = 'changed'
  AND json_remove(before, '$.standing', '$.first_sent_on', '$.first_cleared_on', '$.last_step_on')
    <> json_remove(after, '$.standing', '$.first_sent_on', '$.first_cleared_on', '$.last_step_on')`;
const CHANGED_TABLES = Object.keys(RECORDED).filter((table) => table !== 'listing');
const MOVED_TABLES = CHANGED_TABLES.filter((table) => RECORDED[table]?.key !== undefined);

/** A reading connection beside the entries that are later than the day it goes to. */
export interface Later {
  raw: Database.Database;
  /** The first of them; null where nothing was written since. */
  since: number | null;
  /** The indexes of the file: one of an older form, open for reading, has not all of them. */
  indexes: ReadonlySet<string>;
}

/** The same, where something was written since. */
interface Since extends Later {
  since: number;
}

/** Names the index that entries are found by, which SQLite would not choose by itself. */
const by = ({ indexes }: Since, name: string) => (indexes.has(name) ? `INDEXED BY ${name}` : '');

/** The moment a local calendar day ends, as the journal writes moments. */
function endOf(day: string): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  return new Date(year, month - 1, date + 1).toISOString();
}

/** The first entry after a day; null where nothing was written since. Moments never go back from entry to entry. */
export function firstEntryAfter(raw: Database.Database, day: string): number | null {
  const first = raw.prepare('SELECT seq FROM main.journal WHERE at >= ? ORDER BY at, seq LIMIT 1').pluck();
  return (first.get(endOf(day)) as number | undefined) ?? null;
}

/** Entries of a row since then; `id` is an expression. */
const entriesOf = (table: string, id: string, since: number) =>
  `main.journal a WHERE a.entity = '${table}' AND a.row_key = CAST(${id} AS TEXT) AND a.seq >= ${since}`;

/**
 * Whether a row was recorded only since then. A record that was removed and put back was recorded when it was put back:
 * its key may have been given to another. A row of a list stands with what the journal tells of its key.
 */
function isNew(table: string, id: string, since: number): string {
  if (RECORDED[table]?.of === undefined)
    return `EXISTS (SELECT 1 FROM ${entriesOf(table, id, since)} AND a.action = 'added')`;
  return `(SELECT a.action FROM ${entriesOf(table, id, since)} ORDER BY a.seq LIMIT 1) IS 'added'`;
}

/** Entries that changed or removed a row of a table since then. */
function changesOf(later: Since, table: string): string {
  if (table === 'listing')
    return `main.journal ${by(later, 'journal_of_listings')} WHERE ${MORE_THAN_STEP} AND seq >= ${later.since}`;
  return `main.journal ${by(later, 'journal_of_changes')} WHERE entity = '${table}' AND seq >= ${later.since}
    AND ${CHANGES} (${named(CHANGED_TABLES)})`;
}

/** Whether a row of temp.was_TABLE was recorded only since then, though it was changed as well. */
function recordedLater(later: Since, table: string): string {
  const was = `was_${table}`;
  // Steps, which were left out, may come before the first change of a listing.
  if (table === 'listing') return isNew(table, `${was}.id`, later.since);
  // What comes before the first change of another row can only have added it.
  const added = `EXISTS (SELECT 1 FROM ${entriesOf(table, `${was}.id`, later.since)} AND a.seq < ${was}.seq)`;
  if (RECORDED[table]?.of !== undefined) return added;
  return `${added} OR id IN (SELECT CAST(row_key AS INTEGER) FROM ${changesOf(later, table)} AND action = 'removed')`;
}

/** Fills temp.was_TABLE: the rows that were recorded by then and changed or removed since, with the first such entry. */
function findChanges(later: Since, table: string): number {
  const { raw } = later;
  const was = `was_${table}`;
  raw.exec(`CREATE TEMP TABLE ${was} (id INTEGER PRIMARY KEY, seq INTEGER NOT NULL)`);
  const { changes } = raw
    .prepare(
      `INSERT OR IGNORE INTO ${was} SELECT CAST(row_key AS INTEGER), seq FROM ${changesOf(later, table)} ORDER BY seq`,
    )
    .run();
  if (changes === 0) return 0;
  return changes - raw.prepare(`DELETE FROM ${was} WHERE ${recordedLater(later, table)}`).run().changes;
}

/** Whether rows were led to another parent since then or, in a list, taken out of it. */
function isRearranged(later: Since, table: string): boolean {
  const { key, of } = RECORDED[table] ?? {};
  if (key === undefined) return false;
  const moved = `SELECT 1 FROM main.journal ${by(later, 'journal_of_moves')} WHERE entity = '${table}'
    AND seq >= ${later.since} AND action = 'changed' AND entity IN (${named(MOVED_TABLES)}) AND (${MOVED})`;
  const removed = `SELECT 1 FROM ${changesOf(later, table)} AND action = 'removed'`;
  return [moved, ...(of === undefined ? [] : [removed])].some(
    (sql) => later.raw.prepare(`${sql} LIMIT 1`).get() !== undefined,
  );
}

/** A field as an entry tells it; a column that came with a later form has no field there. */
const told = (name: string, otherwise: string) =>
  `CASE WHEN json_type(j.before, '$.${name}') IS NULL THEN ${otherwise} ELSE json_extract(j.before, '$.${name}') END`;

/** The fields of a record: rows that changed since are looked up in the journal, field by field, when they are read. */
function recordFields(later: Since, table: string, key: string | undefined): Fields {
  if (findChanges(later, table) === 0) return AS_STORED;
  const rearranged = isRearranged(later, table);
  const fixed = ['id', ...(RECORDED[table]?.fixed ?? []), ...(rearranged || key === undefined ? [] : [key])];
  return {
    column: (name) => (fixed.includes(name) ? `r."${name}"` : asOfEntry(table, name)),
    ...(rearranged && key !== undefined ? { copied: { by: ['id', key] } } : {}),
  };
}

function asOfEntry(table: string, name: string): string {
  const then = `(SELECT ${told(name, `r."${name}"`)}
    FROM temp.was_${table} w JOIN main.journal j ON j.seq = w.seq WHERE w.id = r.id)`;
  const field = `CASE WHEN r.id IN (SELECT id FROM temp.was_${table}) THEN ${then} ELSE r."${name}" END`;
  return RECORDED[table]?.nocase === name ? `${field} COLLATE NOCASE` : field;
}

/** Whether a parent was there on the day. */
const wasThere = (of: string, id: string) => `EXISTS (SELECT 1 FROM temp.${of} p WHERE p.id = ${id})`;

/**
 * The rows of a list: of a parent that was recorded by then, what the journal tells; of one recorded later, what stands
 * today, since nothing older is known of it.
 */
function listFields(later: Since, table: string, key: string, of: string): Fields {
  const { since } = later;
  const changes = findChanges(later, table);
  const untouched = `NOT EXISTS (SELECT 1 FROM ${entriesOf(table, 'r.id', since)})`;
  const also = (condition: string) =>
    `${wasThere(of, `r.${key}`)} AND (${untouched}${condition} OR ${isNew(of, `r.${key}`, since)})`;
  if (!isRearranged(later, table)) {
    if (changes === 0) return { ...AS_STORED, where: also('') };
    return {
      column: (name) => (name === 'id' || name === key ? `r."${name}"` : asOfEntry(table, name)),
      where: also(` OR r.id IN (SELECT id FROM temp.was_${table})`),
    };
  }
  const then = `json_extract(j.before, '$.${key}')`;
  return {
    ...AS_STORED,
    where: also(''),
    copied: {
      by: [key],
      gone: `FROM temp.was_${table} w JOIN main.journal j ON j.seq = w.seq
        LEFT JOIN main."${table}" r ON r.id = w.id AND r."${key}" = ${then}
        WHERE ${wasThere(of, then)} AND NOT ${isNew(of, then, since)}`,
    },
  };
}

/** The fields of a table as of the end of the day. */
export function fieldsThen({ raw, since, indexes }: Later, table: string): Fields {
  const { key, of } = RECORDED[table] ?? {};
  const isList = key !== undefined && of !== undefined;
  if (RECORDED[table] === undefined) return AS_STORED;
  if (since === null) return isList ? { ...AS_STORED, where: wasThere(of, `r.${key}`) } : AS_STORED;
  const later: Since = { raw, since, indexes };
  return isList ? listFields(later, table, key, of) : recordFields(later, table, key);
}

/** The tables whose fields the journal gives back. */
export const RECORDED_TABLES = Object.keys(RECORDED);

/** A column of a row that is stored no more. */
export const goneColumn = (name: string, otherwise: string | null) =>
  name === 'id' ? 'w.id' : told(name, `coalesce(r."${name}", ${otherwise ?? 'NULL'})`);
