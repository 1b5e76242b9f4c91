import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type Database from 'better-sqlite3';
import { Refusal } from '../contract/refusal.ts';
import { wrap } from './connection.ts';
import { newestEntry, sealJournal } from './journal.ts';
import { dropJournalTriggers, raiseJournalTriggers } from './journal-triggers.ts';
import { divergences } from './replay.ts';

/** Marks a SQLite file as a catalogue file ('EdLg'). */
export const APPLICATION_ID = 0x45644c67;

/** The migrations this program ships. */
export const MIGRATIONS = fileURLToPath(new URL('../../migrations', import.meta.url));

/** The operation under which an upgrade stands in the journal. */
export const UPGRADE = 'catalogue.upgrade';

export interface Migration {
  version: number;
  name: string;
  sql: string;
  sha256: string;
}

/** The migrations of a folder in order; names are `0001_name.sql` without gaps. */
export function readMigrations(folder: string): Migration[] {
  const names = readdirSync(folder)
    .filter((name) => name.endsWith('.sql'))
    .sort();
  return names.map((name, index) => {
    const version = Number(name.slice(0, 4));
    if (version !== index + 1)
      throw new Error(`Migration ${name} is out of order: expected number ${index + 1}.`);
    const sql = readFileSync(join(folder, name), 'utf8');
    return { version, name, sql, sha256: createHash('sha256').update(sql).digest('hex') };
  });
}

/** The newest form this program knows; a file of a higher `user_version` is refused for writing. */
export function schemaVersionOf(raw: Database.Database): number {
  return raw.pragma('user_version', { simple: true }) as number;
}

/** Refuses a file whose applied migrations are not the ones this program ships (an edited or foreign history). */
export function checkHistory(raw: Database.Database, migrations: readonly Migration[]): void {
  if (schemaVersionOf(raw) === 0) return;
  const applied = raw.prepare('SELECT version, sha256 FROM migration ORDER BY version').all() as {
    version: number;
    sha256: string;
  }[];
  for (const row of applied) {
    const known = migrations[row.version - 1];
    if (known && known.sha256 !== row.sha256)
      throw new Refusal(
        'CATALOGUE_FOREIGN',
        `This file was made by a different build of Edition Ledger (step ${row.version} differs); open it with that build.`,
      );
  }
}

/**
 * Enters in the journal what the steps did to the rows, a new column included, as one command: so a replay gives
 * the tables as they stand in the new form.
 */
function journalUpgrade(raw: Database.Database, at: string): void {
  const db = wrap(raw);
  const since = newestEntry(db);
  for (const { table, key, told, held } of divergences(db)) {
    const action = told === null ? 'added' : held === null ? 'removed' : 'changed';
    db.run(
      'INSERT INTO journal (entity, row_key, action, before, after) VALUES (?, ?, ?, ?, ?)',
      table,
      key,
      action,
      told,
      held,
    );
  }
  sealJournal(db, UPGRADE, at, since);
}

/**
 * Brings the file to the newest form, all steps or none: foreign keys off → BEGIN IMMEDIATE → steps without the
 * journal's triggers → those triggers anew → journal → foreign_key_check → user_version → COMMIT → foreign keys
 * on. The caller proves the file sound and backs it up first.
 */
export function applyMigrations(raw: Database.Database, migrations: readonly Migration[], at: string): void {
  const from = schemaVersionOf(raw);
  const pending = migrations.filter((migration) => migration.version > from);
  if (pending.length === 0) return;
  raw.pragma('foreign_keys = OFF');
  try {
    raw.exec('BEGIN IMMEDIATE');
    raw.exec(
      'CREATE TABLE IF NOT EXISTS migration (version INTEGER PRIMARY KEY, name TEXT NOT NULL, sha256 TEXT NOT NULL) STRICT',
    );
    const record = raw.prepare('INSERT INTO migration (version, name, sha256) VALUES (?, ?, ?)');
    dropJournalTriggers(raw);
    for (const migration of pending) {
      raw.exec(migration.sql);
      record.run(migration.version, migration.name, migration.sha256);
    }
    raiseJournalTriggers(raw);
    if (from > 0) journalUpgrade(raw, at);
    const broken = raw.pragma('foreign_key_check') as unknown[];
    if (broken.length > 0) throw new Error(`The upgrade would leave ${broken.length} broken references.`);
    raw.pragma(`application_id = ${APPLICATION_ID}`);
    raw.pragma(`user_version = ${pending.at(-1)?.version ?? from}`);
    raw.exec('COMMIT');
  } catch (error) {
    if (raw.inTransaction) raw.exec('ROLLBACK');
    throw error;
  } finally {
    raw.pragma('foreign_keys = ON');
  }
}
