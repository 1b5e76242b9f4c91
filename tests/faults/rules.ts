import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { Refusal } from '../../src/contract/refusal.ts';
import { wrap } from '../../src/store/connection.ts';
import { examine } from '../../src/store/examine.ts';
import { journalledTables } from '../../src/store/journal-triggers.ts';
import { MIGRATIONS, readMigrations } from '../../src/store/migrate.ts';
import { schemaFaults } from '../../src/store/schema-check.ts';
import { type Figure, Tally } from './figure.ts';
import { grownCatalogue, inFolder, openStill } from './files.ts';

interface Declared {
  type: string;
  name: string;
  tbl_name: string;
  sql: string;
}

const declared = (raw: Database.Database) =>
  raw
    .prepare('SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY rowid')
    .all() as Declared[];

/** Statements that take a rule away or change it, each on its own, for everything the file declares. */
export function attacksOn(raw: Database.Database): string[] {
  // What SQLite keeps for the search index it lets nobody reshape.
  const rows = declared(raw).filter((row) => !/^sqlite_|^search_words_(?!of_|leave)/.test(row.name));
  const drops = rows.map((row) => `DROP ${row.type} "${row.name}"`);
  const tables = rows
    .filter((row) => row.type === 'table' && row.name !== 'search_words')
    .map((row) => row.name);
  const reshaped = tables.flatMap((name) => [
    `ALTER TABLE "${name}" ADD COLUMN strange TEXT`,
    `ALTER TABLE "${name}" RENAME TO "${name}_before"`,
    `CREATE TRIGGER strange BEFORE UPDATE ON "${name}" BEGIN SELECT RAISE(IGNORE); END`,
  ]);
  const blinded = rows
    .filter((row) => row.type === 'trigger')
    .map((row) => `DROP TRIGGER "${row.name}"; ${row.sql.replace(/\bBEGIN\b/, '/* never */ BEGIN')}`);
  return [
    ...drops,
    ...reshaped,
    ...blinded,
    'CREATE TABLE strange (x)',
    "CREATE VIEW strange AS SELECT 'x'",
    "DROP VIEW format_standing; CREATE VIEW format_standing AS SELECT id AS format_id, 'live' AS standing FROM format",
    'DELETE FROM migration WHERE version = 1',
    "UPDATE migration SET name = 'other' WHERE version = 2",
    "INSERT INTO migration (version, name, sha256) VALUES (90, 'later', '')",
    'PRAGMA user_version = 0',
    'PRAGMA user_version = 1',
    'PRAGMA user_version = -1',
  ];
}

/** The same past the parser, where a tool allows it: text of the schema changed in place. */
const SCHEMA_EDITS = [
  "UPDATE sqlite_schema SET sql = replace(sql, 'CHECK (spent_on', 'CHECK (1 OR spent_on') WHERE name = 'number'",
  "UPDATE sqlite_schema SET sql = replace(sql, 'WHEN OLD.hash', 'WHEN 0 AND OLD.hash') WHERE name = 'journal_sealed'",
  "UPDATE sqlite_schema SET sql = replace(sql, 'retired', 'live') WHERE name = 'format_standing'",
  "DELETE FROM sqlite_schema WHERE name = 'step_kept'",
  "UPDATE sqlite_schema SET tbl_name = 'work' WHERE name = 'number_kept'",
];

/** Takes a row out with every trigger of its table out of the way, then puts the very same triggers back. */
function removeUnseen(raw: Database.Database, table: string, key: string): void {
  const triggers = declared(raw).filter((row) => row.type === 'trigger' && row.tbl_name === table);
  for (const { name } of triggers) raw.exec(`DROP TRIGGER "${name}"`);
  raw.exec(`DELETE FROM "${table}" WHERE "${key}" = (SELECT max("${key}") FROM "${table}")`);
  for (const { sql } of triggers) raw.exec(sql);
}

/** Runs work inside a transaction that is rolled back. */
function undone<T>(raw: Database.Database, work: () => T): T {
  raw.exec('BEGIN');
  try {
    return work();
  } finally {
    raw.exec('ROLLBACK');
  }
}

/** Opens a file whose rules were altered; answers what came of it. */
function refusalAtOpening(file: string, attack: string): string | null {
  const raw = new Database(file);
  raw.exec(attack);
  raw.close();
  try {
    openStill(file).close();
    return `it opens after: ${attack}`;
  } catch (error) {
    return error instanceof Refusal && error.code === 'CATALOGUE_DAMAGED' ? null : String(error);
  }
}

/** Rules taken away, changed or added, and rows changed while they were away. */
export function alteredRules(opened = 8): Figure {
  return inFolder((folder) => {
    const tally = new Tally('rules altered or taken away');
    const file = join(folder, 'rules.ledger');
    grownCatalogue(file, 100);
    const raw = new Database(file);
    const migrations = readMigrations(MIGRATIONS);
    const attacks = attacksOn(raw);
    const names = (attack: string) =>
      schemaFaults(wrap(raw), migrations).length > 0 ? [] : [`not named: ${attack}`];
    raw.pragma('foreign_keys = OFF');
    for (const attack of attacks)
      tally.add(
        undone(raw, () => {
          raw.exec(attack);
          return names(attack);
        }),
      );
    raw.unsafeMode(true);
    raw.pragma('writable_schema = ON');
    for (const edit of SCHEMA_EDITS)
      tally.add(
        undone(raw, () =>
          raw.prepare(edit).run().changes === 1 ? names(edit) : [`it changes nothing: ${edit}`],
        ),
      );
    raw.pragma('writable_schema = OFF');
    raw.unsafeMode(false);
    for (const { table, key } of journalledTables(wrap(raw)).filter(({ table }) =>
      raw.prepare(`SELECT 1 FROM "${table}"`).get(),
    ))
      tally.add(
        undone(raw, () => {
          removeUnseen(raw, table, key);
          const found = examine(wrap(raw), migrations);
          const told = found.schema.length === 0 && found.replay.some((row) => row.startsWith(`${table} `));
          return told
            ? []
            : [`a row of ${table} taken out unseen is not named: ${found.sentences.join(' ')}`];
        }),
      );
    raw.close();
    const every = Math.ceil(attacks.length / opened);
    for (const attack of attacks
      .filter((_, at) => at % every === 0)
      .filter((one) => !/^PRAGMA|table/i.test(one))) {
      const copy = join(folder, `opened-${tally.tried}.ledger`);
      copyFileSync(file, copy);
      const fault = refusalAtOpening(copy, attack);
      tally.add(fault ? [fault] : []);
      tally.count('refused at opening', fault ? 0 : 1);
    }
    return tally.figure();
  });
}
