import type Database from 'better-sqlite3';
import { Dice } from '../support/history.ts';
import { closed } from './moves/numbers.ts';

// Hostile SQL: statements over all tables and columns with values that could be true, as someone with a database
// tool and a grudge would write them. Most change one thing and leave the rest right, so that a single guard decides.

interface Column {
  name: string;
  type: string;
  /** The table a reference leads to. */
  to: string | null;
}

export interface Table {
  name: string;
  key: string;
  columns: Column[];
}

/** How a hostile connection is set; the program itself has foreign keys on and checks respected. */
export interface Mode {
  recursiveTriggers: boolean;
  foreignKeys: boolean;
  ignoreChecks: boolean;
}

export function setMode(raw: Database.Database, mode: Mode): void {
  raw.pragma(`recursive_triggers = ${mode.recursiveTriggers ? 'ON' : 'OFF'}`);
  raw.pragma(`foreign_keys = ${mode.foreignKeys ? 'ON' : 'OFF'}`);
  raw.pragma(`ignore_check_constraints = ${mode.ignoreChecks ? 'ON' : 'OFF'}`);
}

/** Tables worth attacking more often than their share. */
const TARGETS =
  'number number number listing listing listing_step edition edition_contributor format format correction task journal number_block';

export function tablesOf(raw: Database.Database): Table[] {
  const names = raw
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
    .pluck()
    .all() as string[];
  const all = names.map((name) => {
    const references = raw.pragma(`foreign_key_list(${name})`) as { from: string; table: string }[];
    const columns = raw.pragma(`table_info(${name})`) as { name: string; type: string; pk: number }[];
    return {
      name,
      key: columns.find((column) => column.pk === 1)?.name ?? 'rowid',
      columns: columns.map((column) => ({
        ...column,
        to: references.find((reference) => reference.from === column.name)?.table ?? null,
      })),
    };
  });
  const often = TARGETS.split(' ').map((name) => all.find((table) => table.name === name));
  return [...all, ...often.filter((table) => table !== undefined)];
}

const quote = (text: string) => `'${text.replaceAll("'", "''")}'`;
const LISTING = ['unsent', 'sent', 'proof', 'cleared', 'selling', 'leaving', 'gone'];

/** Values that fit a column by its name. */
const FITTING: Record<string, readonly string[]> = {
  ...{ from_standing: LISTING, to_standing: LISTING },
  standing: [...LISTING, 'open', 'waiting', 'done', 'dropped'],
  ...{ form: ['BC', 'BB', 'ED'], form_detail: ['E101', 'A103'], case_kind: ['cloth', 'jacket'] },
  ...{ language: ['eng', 'fre'], role: ['A01', 'A12'], currency: ['GBP', 'EUR', 'USD'] },
  ...{ kind: ['release', 'retirement', 'print', 'any', 'own'], action: ['added', 'changed', 'removed'] },
  ...{
    entity: ['work', 'number', 'listing'],
    before: ['{}'],
    after: ['{}', '{"id":1}'],
    data: ['{}'],
    value: ['1'],
  },
  ...{ locks_more: ['[]', '["description"]', '["title"]'], audience: ['children'], tax: ['excluding'] },
  ...{ digits: ['9798969999', '9798969998', '979896999', '97989699991'], returns: ['Y', 'N'] },
  hyphenated_prefix: ['979-8-969999', '979-8-969998', '979-8-96999', '979-8-9699991'],
};
const DAYS = ['2001-01-01', '2015-06-01', '2026-03-02', '2030-12-31', 'yesterday'];

const anyOf = (dice: Dice, values: readonly string[]) => quote(dice.of(values) ?? 'x');
const held = (dice: Dice, table: string, column: string, key: string) =>
  `(SELECT "${column}" FROM "${table}" ORDER BY ${key} LIMIT 1 OFFSET ${dice.below(14)})`;

/** A value for a column: one that fits it, what another row holds, nothing, or now and then anything. */
function value(dice: Dice, table: Table, column: Column): string {
  const choice = dice.below(10);
  if (choice === 0) return 'NULL';
  if (choice === 1) return held(dice, table.name, column.name, table.key);
  if (choice === 2) return dice.oneOf("'x'", '0', '-1', '1', "''", String(dice.below(1000)));
  if (column.to)
    return choice === 3 ? `(SELECT max(id) + 1 FROM "${column.to}")` : held(dice, column.to, 'id', 'id');
  if (column.name === 'isbn13') return quote(closed(`9798969999${String(dice.below(100)).padStart(2, '0')}`));
  if (FITTING[column.name]) return anyOf(dice, FITTING[column.name] ?? []);
  if (/_on$|_date$|^day$/.test(column.name)) return anyOf(dice, DAYS);
  return column.type === 'INTEGER' ? String(dice.below(14) - 1) : anyOf(dice, ['Forged', 'another', 'x y']);
}

/** Columns that make sense only together, with values that go together. */
const TOGETHER: Record<string, ((dice: Dice) => Record<string, string>)[]> = {
  number: [
    (dice) => ({ format_id: held(dice, 'format', 'id', 'id'), assigned_on: "'2026-03-02'" }),
    () => ({ format_id: 'NULL', assigned_on: 'NULL', reserved_on: "'2026-03-02'" }),
    () => ({ spent_on: "'2026-03-02'", spent_reason: "'x'" }),
    () => ({ spent_on: 'NULL', spent_reason: 'NULL', reserved_on: "'2026-03-02'" }),
    () => ({ spent_on: 'NULL', spent_reason: 'NULL', format_id: '3', assigned_on: "'2026-03-02'" }),
    (dice) => ({ block_id: 'NULL', block_index: 'NULL', reserved_for: `'x${dice.below(9)}'` }),
    (dice) => {
      const index = dice.below(100);
      const isbn13 = quote(closed(`9798969999${String(index).padStart(2, '0')}`));
      return { isbn13, block_id: '1', block_index: String(index + (dice.below(3) === 0 ? 1 : 0)) };
    },
  ],
  format: [
    () => ({ cancelled_on: "'2026-03-02'", cancel_reason: "'x'" }),
    () => ({ cancelled_on: 'NULL', cancel_reason: 'NULL' }),
    () => ({ form: "'BB'", case_kind: "'cloth'" }),
  ],
  listing: [
    (dice) => ({
      standing: anyOf(dice, LISTING),
      last_step_on: "'2026-03-02'",
      first_sent_on: "'2026-03-02'",
    }),
    () => ({ standing: "'unsent'", first_sent_on: 'NULL', first_cleared_on: 'NULL', last_step_on: 'NULL' }),
  ],
  task: [
    () => ({ standing: "'open'", ended_on: 'NULL', dropped_reason: 'NULL' }),
    () => ({ standing: "'dropped'", ended_on: "'2026-03-02'", dropped_reason: "'x'" }),
  ],
  number_block: [
    (dice) => {
      const prefix = dice.oneOf('979-8-969998', '979-8-96999', '979-8-9699991', '979-8-969999');
      return { digits: quote(prefix.replaceAll('-', '')), hyphenated_prefix: quote(prefix) };
    },
  ],
  journal: [
    (dice) => ({
      ...{ at: "'x'", operation: "'x'", command_seq: '1', previous_hash: "'x'" },
      hash: dice.oneOf('hex(randomblob(32))', held(dice, 'journal', 'hash', 'seq')),
    }),
    () => ({ at: 'NULL', operation: 'NULL', command_seq: 'NULL', previous_hash: 'NULL', hash: 'NULL' }),
  ],
};

const HIDDEN = ['rowid', '_rowid_', 'oid'];
const CLASH = ['', '', '', 'OR REPLACE ', 'OR REPLACE ', 'OR IGNORE ', 'OR FAIL '];

/** What a statement sets: mostly one column or one group, a hidden row id now and then. */
function changes(dice: Dice, table: Table): Record<string, string> {
  const groups = TOGETHER[table.name] ?? [];
  const group = groups.length > 0 && dice.below(2) === 0 ? dice.of(groups)?.(dice) : undefined;
  if (group) return group;
  if (dice.below(12) === 0) return { [dice.of(HIDDEN) ?? 'rowid']: String(dice.below(20)) };
  const count = 1 + (dice.below(4) === 0 ? dice.below(3) : 0);
  const columns = Array.from({ length: count }, () => dice.of(table.columns)).filter(
    (one) => one !== undefined,
  );
  return Object.fromEntries(columns.map((column) => [column.name, value(dice, table, column)]));
}

const name = (column: string) => (HIDDEN.includes(column) ? column : `"${column}"`);
const assigned = (set: Record<string, string>) =>
  Object.entries(set)
    .map(([column, to]) => `${name(column)} = ${to}`)
    .join(', ');

function where(dice: Dice, table: Table): string {
  const choice = dice.below(8);
  if (choice === 0) return '';
  const column = dice.of(table.columns);
  if (choice === 1 && column) return ` WHERE "${column.name}" IS ${value(dice, table, column)}`;
  const at = dice.below(24);
  return ` WHERE "${table.key}" = (SELECT "${table.key}" FROM "${table.name}" ORDER BY "${table.key}" LIMIT 1 OFFSET ${at})`;
}

/** A row put in beside or over another it resembles. */
function copy(dice: Dice, table: Table): string {
  const ownKey = dice.below(3) > 0 && table.key !== 'isbn13' ? { [table.key]: 'NULL' } : {};
  const set: Record<string, string> = {
    ...ownKey,
    ...changes(dice, table),
    ...(dice.below(2) ? changes(dice, table) : {}),
  };
  const names = [...new Set([...table.columns.map((column) => column.name), ...Object.keys(set)])];
  const list = names.map((column) => set[column] ?? name(column));
  const from = `SELECT ${list.join(', ')} FROM "${table.name}"${where(dice, table) || ' WHERE true'}`;
  const tail = dice.below(4) === 0 ? ` ON CONFLICT DO UPDATE SET ${assigned(changes(dice, table))}` : '';
  return `INSERT ${tail === '' ? dice.of(CLASH) : ''}INTO "${table.name}" (${names.map(name).join(', ')}) ${from}${tail}`;
}

/** A step of a listing from where it stands, mostly one that is allowed. */
function step(dice: Dice): string {
  const id = dice.below(6) === 0 ? String(dice.below(20) - 10) : 'NULL';
  const from = dice.below(4) === 0 ? anyOf(dice, LISTING) : 'standing';
  const next = `CASE standing ${LISTING.map((at, i) => `WHEN '${at}' THEN '${LISTING[i + 1] ?? 'gone'}'`).join(' ')} END`;
  const to = dice.below(3) === 0 ? anyOf(dice, LISTING) : next;
  const on = dice.below(4) === 0 ? anyOf(dice, DAYS) : "'2026-03-02'";
  return `INSERT ${dice.of(CLASH)}INTO listing_step (id, listing_id, from_standing, to_standing, on_date)
    SELECT ${id}, id, ${from}, ${to}, ${on} FROM listing ORDER BY id LIMIT 1 OFFSET ${dice.below(14)}`;
}

/** Statements that must work together, or that go for what triggers keep. */
const SPECIAL = [
  "INSERT INTO correction (edition_id, made_on, reason) SELECT id, '2026-03-02', 'x' FROM edition",
  "INSERT INTO correction (edition_id, made_on, reason, closed_on) SELECT id, '2026-03-02', 'x', '2026-03-02' FROM edition",
  "UPDATE correction SET reason = 'y'; UPDATE correction SET closed_on = NULL",
  'DELETE FROM listing_step; DELETE FROM listing',
  'DELETE FROM listing; DELETE FROM format; DELETE FROM edition',
  "INSERT INTO edition_contributor (edition_id, position, role, name) SELECT id, 9, 'A01', 'X' FROM edition",
  'INSERT INTO number_run_place (block_id, place) VALUES (1, 50)',
  'UPDATE number_run SET last_index = last_index + 1',
  'UPDATE number_tally SET assigned = 0',
];

/** One hostile statement, or a few that belong together, for a row of random numbers. */
export function hostileSql(numbers: readonly number[], tables: readonly Table[]): string {
  const dice = new Dice(numbers);
  const table = dice.of(tables);
  if (!table) return 'SELECT 1';
  switch (dice.below(10)) {
    case 0:
    case 1:
    case 2:
      return copy(dice, table);
    case 3:
      return `DELETE FROM "${table.name}"${where(dice, table)}`;
    case 4:
      return dice.below(3) === 0 ? (dice.of(SPECIAL) ?? '') : step(dice);
    case 5:
      return `BEGIN; UPDATE "${table.name}" SET ${assigned(changes(dice, table))}${where(dice, table)}; ${copy(dice, table)}; COMMIT`;
    default:
      return `UPDATE ${dice.of(CLASH)}"${table.name}" SET ${assigned(changes(dice, table))}${where(dice, table)}`;
  }
}
