import Database from 'better-sqlite3';
import { type ReadDb, wrap } from './connection.ts';
import { applyMigrations, type Migration } from './migrate.ts';

/** Everything a schema declares: 'trigger step_kept' → its SQL. */
type Schema = Map<string, string>;

/**
 * Reads what a file declares, but for the statistics that `optimize` keeps. Of a file of an older form the
 * journal's derived triggers are left out: the program of its day wrote them, and the upgrade writes them anew.
 */
function schemaOf(db: ReadDb, derived: boolean): Schema {
  const rows = db.all<{ type: string; name: string; tbl_name: string; sql: string | null }>(
    "SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_stat%'",
  );
  const isDerived = (row: (typeof rows)[number]) =>
    row.type === 'trigger' && row.name.startsWith('journal_') && row.tbl_name !== 'journal';
  return new Map(
    rows
      .filter((row) => derived || !isDerived(row))
      .map((row) => [`${row.type} ${row.name}`, `${row.tbl_name}: ${row.sql ?? ''}`]),
  );
}

const made = new Map<string, Schema>();

/** What the migrations make, from a catalogue made in memory; kept for as long as the program runs. */
function schemaMadeBy(migrations: readonly Migration[], derived: boolean): Schema {
  const key = `${derived} ${migrations.map((migration) => migration.sha256).join()}`;
  const known = made.get(key);
  if (known) return known;
  const raw = new Database(':memory:');
  try {
    applyMigrations(raw, migrations, '');
    const schema = schemaOf(wrap(raw), derived);
    made.set(key, schema);
    return schema;
  } finally {
    raw.close();
  }
}

/** Steps of the recorded history that are missing, other than the program's, or too many. */
function historyFaults(db: ReadDb, migrations: readonly Migration[]): string[] {
  const recorded = new Map(
    db
      .all<{ version: number; name: string; sha256: string }>('SELECT version, name, sha256 FROM migration')
      .map((row) => [row.version, `${row.name} ${row.sha256}`]),
  );
  const wrong = migrations.filter(
    ({ version, name, sha256 }) => recorded.get(version) !== `${name} ${sha256}`,
  );
  const surplus = [...recorded.keys()].filter((version) => version > migrations.length);
  return [...wrong.map(({ version }) => version), ...surplus].map((version) => `step ${version} is altered`);
}

/**
 * Sets tables, indexes, views, triggers and the recorded steps of a file against what its migrations make.
 * Answers what differs ('trigger step_kept is missing'); none means that every rule is in force as written.
 * Of a form newer than the migrations nothing can be said.
 */
export function schemaFaults(db: ReadDb, migrations: readonly Migration[]): string[] {
  const version = db.one<{ user_version: number }>('PRAGMA user_version')?.user_version ?? 0;
  if (version > migrations.length) return [];
  const own = migrations.slice(0, Math.max(0, version));
  const derived = version === migrations.length;
  const [held, must] = [schemaOf(db, derived), schemaMadeBy(own, derived)];
  const differing = [...must].filter(([name, sql]) => held.get(name) !== sql);
  const strange = [...held.keys()].filter((name) => !must.has(name));
  const faults = [
    ...differing.map(([name]) => `${name} is ${held.has(name) ? 'altered' : 'missing'}`),
    ...strange.map((name) => `${name} is not of this program`),
  ];
  const readable = held.get('table migration') === must.get('table migration');
  return readable ? [...faults, ...historyFaults(db, own)] : faults;
}
