import type Database from 'better-sqlite3';
import { Dice } from '../support/history.ts';

// Hostile SQL: statements over all tables and columns with values that could be true, as someone with a database
// tool and a grudge would write them.

interface Table {
  name: string;
  key: string;
  columns: string[];
}

/** How a hostile connection is set; the program itself has both on and checks respected. */
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
  'number number listing listing_step edition edition_contributor format correction journal number_block';

export function tablesOf(raw: Database.Database): Table[] {
  const names = raw
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
    .pluck()
    .all() as string[];
  const all = names.map((name) => {
    const columns = raw.pragma(`table_info(${name})`) as { name: string; pk: number }[];
    const key = columns.find((column) => column.pk === 1)?.name ?? 'rowid';
    return { name, key, columns: columns.map((column) => column.name) };
  });
  const often = TARGETS.split(' ').map((name) => all.find((table) => table.name === name));
  return [...all, ...often.filter((table) => table !== undefined)];
}

const quote = (text: string) => `'${text.replaceAll("'", "''")}'`;

const TEXTS = [
  ...[
    '',
    'x',
    'Forged',
    '[]',
    '{}',
    'null',
    'unsent',
    'sent',
    'proof',
    'cleared',
    'selling',
    'leaving',
    'gone',
  ],
  ...[
    'open',
    'done',
    'dropped',
    'waiting',
    'release',
    'retirement',
    'BC',
    'BB',
    'ED',
    'eng',
    'fre',
    'A01',
    'GBP',
  ],
  ...[
    'added',
    'changed',
    'removed',
    'work',
    'edition',
    'number',
    '9798969999992',
    '9798969999985',
    '9780306406157',
  ],
  ...['2001-01-01', '2026-02-29', '2026-03-02', '2030-12-31', '9798969999', '979-8-969999', '["title"]'],
];

/** A value for a column: a literal, what another row holds, or what the row itself would not expect. */
function value(dice: Dice, table: Table, column: string): string {
  const same = `(SELECT "${column}" FROM "${table.name}" ORDER BY ${table.key} LIMIT 1 OFFSET ${dice.below(12)})`;
  const number = String(dice.below(14) - 1);
  switch (dice.below(8)) {
    case 0:
      return 'NULL';
    case 1:
    case 2:
      return same;
    case 3:
      return number;
    case 4:
      return `coalesce(${same}, ${number})`;
    case 5:
      return `(SELECT max(id) + ${dice.below(3) - 1} FROM ${dice.oneOf('listing', 'format', 'edition')})`;
    default:
      return quote(dice.of(TEXTS) ?? 'x');
  }
}

const CLASH = ['', '', 'OR REPLACE ', 'OR REPLACE ', 'OR IGNORE ', 'OR FAIL ', 'OR ROLLBACK '];
const HIDDEN = ['rowid', '_rowid_', 'oid'];

/** Columns to write, hidden ones now and then. */
function chosen(dice: Dice, table: Table): string[] {
  const columns = table.columns.filter(() => dice.below(3) === 0);
  const hidden = dice.below(6) === 0 ? [dice.of(HIDDEN) ?? 'rowid'] : [];
  const list = [...columns, ...hidden];
  return list.length > 0 ? list : [dice.of(table.columns) ?? table.key];
}

function where(dice: Dice, table: Table): string {
  const own = `(SELECT ${table.key} FROM "${table.name}" ORDER BY ${table.key} LIMIT 1 OFFSET ${dice.below(30)})`;
  switch (dice.below(4)) {
    case 0:
      return dice.below(3) === 0 ? '' : ` WHERE ${table.key} > ${own}`;
    case 1: {
      const column = dice.of(table.columns) ?? table.key;
      return ` WHERE "${column}" IS ${value(dice, table, column)}`;
    }
    default:
      return ` WHERE ${table.key} = ${own}`;
  }
}

const assignments = (dice: Dice, table: Table) =>
  chosen(dice, table)
    .map((column) => `"${column}" = ${value(dice, table, column)}`)
    .join(', ')
    .replaceAll(/"(rowid|_rowid_|oid)"/g, '$1');

/** A copy of a row with some of it changed, put back over it or beside it. */
function copy(dice: Dice, table: Table): string {
  const list = table.columns.map((column) =>
    dice.below(4) === 0 ? value(dice, table, column) : `"${column}"`,
  );
  const names = table.columns.map((column) => `"${column}"`).join(', ');
  const from = `SELECT ${list.join(', ')} FROM "${table.name}"${where(dice, table) || ' WHERE true'}`;
  const tail = dice.below(3) === 0 ? ` ON CONFLICT DO UPDATE SET ${assignments(dice, table)}` : '';
  const clash = tail === '' ? (dice.of(CLASH) ?? '') : '';
  return `INSERT ${clash}INTO "${table.name}" (${names}) ${from}${tail}`;
}

function insert(dice: Dice, table: Table): string {
  const columns = table.columns.filter((column) => column !== table.key || dice.below(3) === 0);
  const hidden = dice.below(5) === 0 ? [dice.of(HIDDEN) ?? 'rowid'] : [];
  const names = [...columns.map((column) => `"${column}"`), ...hidden];
  const values = [...columns, ...hidden].map((column) =>
    value(dice, table, hidden.includes(column) ? table.key : column),
  );
  return `INSERT ${dice.of(CLASH)}INTO "${table.name}" (${names.join(', ')}) VALUES (${values.join(', ')})`;
}

/** Writes that must work together to get somewhere: steps with their listing, a number with its format. */
const CHAINS = [
  "INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date) SELECT id, standing, 'sent', '2026-03-02' FROM listing",
  "INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date) SELECT id, standing, 'unsent', '2026-03-02' FROM listing",
  "INSERT INTO listing_step (id, listing_id, from_standing, to_standing, on_date) SELECT -id, id, standing, 'selling', '2026-03-02' FROM listing",
  "INSERT INTO correction (edition_id, made_on, reason) SELECT id, '2026-03-02', 'x' FROM edition",
  'UPDATE correction SET closed_on = NULL',
  'DELETE FROM listing_step; DELETE FROM listing',
  "UPDATE format SET cancelled_on = '2026-03-02', cancel_reason = 'x'",
  'UPDATE number SET format_id = (SELECT max(id) FROM format)',
  "UPDATE channel SET locks_more = 'not json'",
  'INSERT INTO number_run_place (block_id, place) VALUES (1, 50)',
  'UPDATE number_run SET last_index = last_index + 1',
  'UPDATE number_tally SET assigned = 0',
  "UPDATE journal SET at = 'x', operation = 'x', command_seq = 1, previous_hash = 'x', hash = hex(randomblob(32)) WHERE hash IS NULL",
];

/** One hostile statement, or a few that belong together, for a row of random numbers. */
export function hostileSql(numbers: readonly number[], tables: readonly Table[]): string {
  const dice = new Dice(numbers);
  const table = dice.of(tables);
  if (!table) return 'SELECT 1';
  switch (dice.below(9)) {
    case 0:
    case 1:
      return copy(dice, table);
    case 2:
      return insert(dice, table);
    case 3:
      return `DELETE FROM "${table.name}"${where(dice, table)}`;
    case 4:
      return dice.of(CHAINS) ?? '';
    case 5:
      return `BEGIN; ${[0, 1, 2].map(() => `UPDATE "${table.name}" SET ${assignments(dice, table)}${where(dice, table)};`).join(' ')} COMMIT`;
    default:
      return `UPDATE ${dice.of(CLASH)}"${table.name}" SET ${assignments(dice, table)}${where(dice, table)}`;
  }
}
