import type { ReadDb } from '../../../src/store/connection.ts';

// What stood on a day, by replaying the whole journal up to it, entry by entry.

export type Row = Record<string, string | number | null>;
type Tables = Record<string, Row[]>;

const RECORDS = ['work', 'edition', 'format', 'channel', 'listing', 'number_block'];
/** Lists, with the table and column of their parent. */
const LISTS: Record<string, [parent: string, key: string]> = {
  edition_contributor: ['edition', 'edition_id'],
  edition_subject: ['edition', 'edition_id'],
  edition_keyword: ['edition', 'edition_id'],
  format_price: ['format', 'format_id'],
  print_card: ['channel', 'channel_id'],
  print_quote: ['print_card', 'card_id'],
};
/** What follows from its own days. */
const BY_DAYS: Record<string, string[]> = {
  format: ['planned_on', 'cancelled_on', 'cancel_reason'],
  listing: ['standing', 'first_sent_on', 'first_cleared_on', 'last_step_on'],
};

interface Entry {
  entity: string;
  row_key: string;
  action: string;
  after: string | null;
  at: string;
}

/** The rows that the journal tells of at the end of a day, and the keys that were first or newly given out later. */
function journalAt(db: ReadDb, day: string): { then: Map<string, Map<string, Row>>; added: Set<string> } {
  const end = new Date(`${day}T00:00:00`);
  end.setDate(end.getDate() + 1);
  const then = new Map<string, Map<string, Row>>();
  const added = new Set<string>();
  for (const entry of db.all<Entry>('SELECT entity, row_key, action, after, at FROM journal ORDER BY seq')) {
    const { entity, row_key: key, action, after, at } = entry;
    if (at >= end.toISOString()) {
      if (action === 'added') added.add(`${entity} ${key}`);
      continue;
    }
    const rows = then.get(entity) ?? new Map<string, Row>();
    then.set(entity, rows);
    if (after === null) rows.delete(key);
    else rows.set(key, JSON.parse(after) as Row);
  }
  return { then, added };
}

/** Every table of a day. */
export function replayedTo(db: ReadDb, day: string): Tables {
  const today = (table: string) => db.all<Row>(`SELECT * FROM ${table}`);
  const by = (on: Row[string] | undefined) => typeof on === 'string' && on <= day;
  const { then, added } = journalAt(db, day);
  const tables: Tables = {};
  const [numbers, listings, formats] = [today('number'), today('listing'), today('format')];
  const there = formats.filter(
    (format) =>
      by(format.planned_on) ||
      numbers.some((one) => one.format_id === format.id && by(one.assigned_on)) ||
      listings.some((one) => one.format_id === format.id && by(one.first_sent_on)),
  );
  const editions = new Set(there.map((format) => format.edition_id));
  const works = new Set(today('edition').flatMap((one) => (editions.has(one.id ?? 0) ? [one.work_id] : [])));
  tables.listing_step = today('listing_step').filter((step) => by(step.on_date));
  const stood: Record<string, (row: Row) => boolean> = {
    work: (row) => works.has(row.id ?? 0),
    edition: (row) => editions.has(row.id ?? 0),
    format: (row) => there.some((format) => format.id === row.id),
    listing: (row) => there.some((format) => format.id === row.format_id),
  };
  for (const table of RECORDS)
    tables[table] = today(table)
      .filter((row) => stood[table]?.(row) ?? true)
      .map((row) => {
        const recorded = added.has(`${table} ${row.id}`) ? undefined : then.get(table)?.get(String(row.id));
        const days = Object.fromEntries((BY_DAYS[table] ?? []).map((name) => [name, row[name] ?? null]));
        return { ...row, ...recorded, ...days };
      });
  for (const row of tables.format ?? [])
    if (!by(row.cancelled_on)) Object.assign(row, { cancelled_on: null, cancel_reason: null });
  for (const row of tables.listing ?? []) {
    const steps = (tables.listing_step ?? []).filter((step) => step.listing_id === row.id);
    const first = (to: string) => steps.find((step) => step.to_standing === to)?.on_date ?? null;
    Object.assign(row, {
      standing: steps.at(-1)?.to_standing ?? 'unsent',
      first_sent_on: first('sent'),
      first_cleared_on: first('cleared'),
      last_step_on: steps.at(-1)?.on_date ?? null,
    });
  }
  for (const [table, [parent, key]] of Object.entries(LISTS)) {
    const inList = LISTS[parent] !== undefined;
    const parents = new Set((tables[parent] ?? []).map((row) => row.id));
    const isNew = (id: Row[string] | undefined) =>
      inList ? !then.get(parent)?.has(String(id)) : added.has(`${parent} ${id}`);
    tables[table] = [
      ...[...(then.get(table)?.values() ?? [])].filter((row) => !isNew(row[key])),
      ...today(table).filter((row) => isNew(row[key])),
    ].filter((row) => parents.has(row[key] ?? 0));
  }
  tables.number = numbers
    .filter((row) => by(row.assigned_on) || by(row.reserved_on) || by(row.spent_on))
    .map((row) => ({
      ...row,
      ...(by(row.assigned_on) ? {} : { format_id: null, assigned_on: null }),
      ...(by(row.spent_on) ? {} : { spent_on: null, spent_reason: null }),
      standing: by(row.spent_on) ? 'spent' : by(row.assigned_on) ? 'assigned' : 'reserved',
    }));
  tables.plan = today('plan')
    .filter((row) => by(row.made_on))
    .map((row) => ({
      ...row,
      ...(by(row.dropped_on) ? {} : { dropped_on: null, dropped_reason: null }),
      ...(by(row.ended_on) ? {} : { ended_on: null }),
    }));
  return tables;
}
