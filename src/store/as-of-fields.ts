import type Database from 'better-sqlite3';

/**
 * Tables whose fields are rewound by the journal, with the column that names the parent of a list row. Standings
 * and dates of steps follow from their own dates (as-of.ts) and are left alone here.
 */
const FIELDS: Record<string, { parent?: [table: string, column: string]; except?: readonly string[] }> = {
  work: {},
  edition: {},
  edition_contributor: { parent: ['edition', 'edition_id'] },
  edition_subject: { parent: ['edition', 'edition_id'] },
  edition_keyword: { parent: ['edition', 'edition_id'] },
  format: { except: ['planned_on', 'cancelled_on', 'cancel_reason'] },
  format_price: { parent: ['format', 'format_id'] },
  channel: {},
  listing: { except: ['standing', 'first_sent_on', 'first_cleared_on', 'last_step_on'] },
  number_block: {},
  print_card: { parent: ['channel', 'channel_id'] },
  print_quote: { parent: ['print_card', 'card_id'] },
};

interface FirstChange {
  entity: string;
  row_key: string;
  action: 'added' | 'changed' | 'removed';
  before: string | null;
  /** Of an added row only. */
  after: string | null;
}

/** The moment a local calendar day ends, as the journal writes moments. */
function endOf(day: string): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  return new Date(year, month - 1, date + 1).toISOString();
}

/**
 * Entries that can change a field here, in the words of the indexes that hold no others (migration 0019): everything of
 * these tables; of a listing what is more than a step.
 */
const INDEXED = [
  'work',
  'edition',
  'edition_contributor',
  'edition_subject',
  'edition_keyword',
  'format',
  'format_price',
  'channel',
  'number_block',
];
const named = (tables: readonly string[]) => tables.map((table) => `'${table}'`).join(', ');
const OF_FIELDS = `entity IN (${named(INDEXED)})`;
/** Tables with few entries are found by the index of rows. */
const OF_FEW = `entity IN (${named(Object.keys(FIELDS).filter((table) => table !== 'listing' && !INDEXED.includes(table)))})`;
const OF_LISTINGS = `entity = 'listing' AND action = 'changed'
  AND json_remove(before, '$.standing', '$.first_sent_on', '$.first_cleared_on', '$.last_step_on')
    <> json_remove(after, '$.standing', '$.first_sent_on', '$.first_cleared_on', '$.last_step_on')`;

/** The first change of every row after the day: what stood before it is what stood on the day. */
function firstChangesAfter(raw: Database.Database, day: string): FirstChange[] {
  const seq = raw.prepare('SELECT min(seq) FROM main.journal WHERE at >= ?').pluck().get(endOf(day)) as
    | number
    | null;
  if (seq === null) return [];
  const after = "CASE action WHEN 'added' THEN after END AS after";
  const has = raw.prepare("SELECT 1 FROM main.sqlite_schema WHERE type = 'index' AND name = ?");
  const first = (index: string, entries: string) => {
    // A file of an older form, open for reading, has no such index; SQLite would not choose it by itself.
    const by = has.get(index) ? `INDEXED BY ${index}` : '';
    return raw
      .prepare(
        `SELECT entity, row_key, action, before, ${after} FROM main.journal WHERE seq IN (
           SELECT min(seq) FROM main.journal ${by} WHERE seq >= ? AND ${entries} GROUP BY entity, row_key)`,
      )
      .all(seq) as FirstChange[];
  };
  return [
    ...first('journal_of_fields', OF_FIELDS),
    ...first('journal_of_listings', OF_LISTINGS),
    ...first('journal_by_row', OF_FEW),
  ];
}

type Row = Record<string, string | number | null>;

/** Makes the temporary copy of a table that as-of.ts did not need, so that it can be changed. */
function shadow(raw: Database.Database, table: string, parentColumn: string | undefined): void {
  const there = raw.prepare("SELECT 1 FROM temp.sqlite_schema WHERE type = 'table' AND name = ?").get(table);
  if (there) return;
  raw.exec(`CREATE TEMP TABLE "${table}" AS SELECT * FROM main."${table}"`);
  raw.exec(`CREATE UNIQUE INDEX temp."rewound_${table}_id" ON "${table}" (id)`);
  if (parentColumn) raw.exec(`CREATE INDEX temp."rewound_${table}_parent" ON "${table}" (${parentColumn})`);
}

/** Runs statements that are prepared once each: a table has as many changes as it has rows, and few kinds of them. */
function runner(raw: Database.Database): (sql: string, ...values: unknown[]) => void {
  const prepared = new Map<string, Database.Statement>();
  return (sql, ...values) => {
    const statement = prepared.get(sql) ?? raw.prepare(sql);
    prepared.set(sql, statement);
    statement.run(...values);
  };
}

function rewindTable(
  raw: Database.Database,
  table: string,
  changes: FirstChange[],
  added: Map<string, Set<string>>,
): void {
  const { parent, except = [] } = FIELDS[table] ?? {};
  shadow(raw, table, parent?.[1]);
  const run = runner(raw);
  for (const change of changes) {
    const row = JSON.parse(change.before ?? change.after ?? '{}') as Row;
    if (change.action === 'added') {
      // A list row added later to a parent that was there already was not there on the day.
      const ofNewParent = parent && added.get(parent[0])?.has(String(row[parent[1]]));
      if (parent && !ofNewParent) run(`DELETE FROM temp."${table}" WHERE id = ?`, row.id);
      continue;
    }
    const names = Object.keys(row).filter((name) => !except.includes(name));
    const columns = names.map((name) => `"${name}"`);
    const values = names.map((name) => row[name]);
    if (change.action === 'changed')
      run(
        `UPDATE temp."${table}" SET ${columns.map((column) => `${column} = ?`).join(', ')} WHERE id = ?`,
        ...values,
        row.id,
      );
    // A removed row's id may have been given to a later row, which was not there on the day.
    else if (parent)
      run(
        `INSERT OR REPLACE INTO temp."${table}" (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
        ...values,
      );
  }
}

/**
 * Gives the rewound tables the field values of the end of a day, from the journal. Rows recorded only after the
 * day keep today's values: nothing older is known of them. Costs what has changed since, not what is stored.
 */
export function rewindFields(raw: Database.Database, day: string): void {
  const changes = Map.groupBy(firstChangesAfter(raw, day), (change) => change.entity);
  const added = new Map<string, Set<string>>();
  for (const [table, rows] of changes)
    added.set(table, new Set(rows.filter((row) => row.action === 'added').map((row) => row.row_key)));
  for (const [table, rows] of changes) rewindTable(raw, table, rows, added);
}
