import type Database from 'better-sqlite3';
import { wrap } from '../../../src/store/connection.ts';
import { CHAIN_START, sealOf } from '../../../src/store/journal.ts';
import { journalledTables } from '../../../src/store/journal-triggers.ts';

type Value = string | number | null;
export type Row = Record<string, Value>;

interface Table {
  key: string;
  /** A row with what each column holds where nothing is said, in the order of the columns. */
  blank: Row;
  insert: Database.Statement;
  rows: number;
  /** Rows that may still change; they are written at the end, as they then stand. */
  open: Row[];
}

/** Tables whose rows change after they were added. */
const CHANGING = new Set([
  'edition',
  'format',
  'format_price',
  'listing',
  'number',
  'plan',
  'task',
  'correction',
]);

function tablesOf(raw: Database.Database): Map<string, Table> {
  const tables = new Map<string, Table>();
  for (const { table, columns, key } of journalledTables(wrap(raw))) {
    const defaults = new Map(
      (raw.pragma(`table_info(${table})`) as { name: string; dflt_value: string | null }[]).map((column) => [
        column.name,
        column.dflt_value === null
          ? null
          : (raw.prepare(`SELECT ${column.dflt_value}`).pluck().get() as Value),
      ]),
    );
    const list = columns.map((column) => `"${column}"`).join(', ');
    tables.set(table, {
      key,
      blank: Object.fromEntries(columns.map((column) => [column, defaults.get(column) ?? null])),
      insert: raw.prepare(`INSERT INTO "${table}" (${list}) VALUES (${columns.map(() => '?').join(', ')})`),
      rows: 0,
      open: [],
    });
  }
  return tables;
}

/**
 * Writes rows with their journal entries the way the triggers and the sealing would, without them: one sealed entry a
 * change, in the order of the days. `finish` writes the rows that may have changed.
 */
export class Ledger {
  readonly #tables: Map<string, Table>;
  readonly #entry: Database.Statement;
  #seq = 0;
  #head = CHAIN_START;
  #command = { at: '', operation: '', seq: 0 };

  constructor(raw: Database.Database) {
    this.#tables = tablesOf(raw);
    this.#entry = raw.prepare(
      `INSERT INTO journal (seq, entity, row_key, action, before, after, at, operation, command_seq, work_id, previous_hash, hash)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    );
  }

  #table(name: string): Table {
    const table = this.#tables.get(name);
    if (!table) throw new Error(`There is no table ${name}.`);
    return table;
  }

  #record(
    entity: string,
    key: Value,
    before: string | null,
    after: string | null,
    work: number | null,
  ): void {
    const action = before === null ? 'added' : 'changed';
    const { at, operation, seq: command_seq } = this.#command;
    this.#seq += 1;
    const entry = {
      seq: this.#seq,
      entity,
      row_key: String(key),
      action,
      before,
      after,
      at,
      operation,
    } as const;
    const sealed = { ...entry, command_seq, work_id: work, previous_hash: this.#head };
    this.#head = sealOf(sealed);
    const chained = [command_seq, work, sealed.previous_hash, this.#head];
    this.#entry.run(this.#seq, entity, entry.row_key, action, before, after, at, operation, ...chained);
  }

  /** What is added and changed from here on belongs to one command of this day. */
  command(day: string, operation: string): void {
    this.#command = { at: `${day}T10:00:00.000Z`, operation, seq: this.#seq + 1 };
  }

  /** Adds a row; where it has no key of its own it takes the next id. Rows of CHANGING tables are answered alive. */
  add(name: string, given: Row, work: number | null): Row {
    const table = this.#table(name);
    table.rows += 1;
    const row: Row = { ...table.blank, ...given };
    row[table.key] ??= table.rows;
    this.#record(name, row[table.key] ?? null, null, JSON.stringify(row), work);
    if (CHANGING.has(name)) table.open.push(row);
    else table.insert.run(...Object.values(row));
    return row;
  }

  change(name: string, row: Row, changes: Row, work: number | null): void {
    const before = JSON.stringify(row);
    Object.assign(row, changes);
    this.#record(name, row[this.#table(name).key] ?? null, before, JSON.stringify(row), work);
  }

  finish(): void {
    for (const table of this.#tables.values()) {
      for (const row of table.open) table.insert.run(...Object.values(row));
      table.open = [];
    }
  }
}
