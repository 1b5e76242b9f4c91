import { existsSync, mkdirSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { Refusal } from '../contract/refusal.ts';
import { backUpBefore } from './backup.ts';
import { type ReadDb, type WriteDb, wrap } from './connection.ts';
import { type Hold, hold } from './hold.ts';
import { sealJournal } from './journal.ts';
import { APPLICATION_ID, applyMigrations, checkHistory, readMigrations, schemaVersionOf } from './migrate.ts';
import { refusalOf } from './sqlite-errors.ts';

const MIGRATIONS = fileURLToPath(new URL('../../migrations', import.meta.url));

export interface CatalogueFile {
  readonly file: string;
  readonly fileName: string;
  readonly readOnly: boolean;
  readonly schemaVersion: number;
  /** Reading connection: sees what is committed. */
  readonly read: ReadDb;
  readonly rawRead: Database.Database;
  /** Runs a command in one transaction, seals its journal entries, and returns its result once it is on disk. */
  change<T>(operation: string, at: string, work: (db: WriteDb) => T): { value: T; seq: number | null };
  close(): void;
}

export interface OpenFileOptions {
  readOnly?: boolean;
  /** Moment for the record of applied migrations and backup names, ISO UTC. */
  at: string;
  migrations?: string;
}

/** WAL, and FULL so that a commit that was acknowledged is on disk (HOUSES.md lesson: durability). */
function setPragmas(raw: Database.Database, readOnly: boolean): void {
  raw.pragma('foreign_keys = ON');
  raw.pragma('busy_timeout = 5000');
  raw.pragma('recursive_triggers = OFF');
  raw.pragma('trusted_schema = OFF');
  if (readOnly) return;
  raw.pragma('journal_mode = WAL');
  raw.pragma('synchronous = FULL');
  if (process.platform === 'darwin') raw.pragma('checkpoint_fullfsync = ON');
}

/** Refuses what is not a sound catalogue file of a form this program knows; never changes the file. */
function probe(raw: Database.Database, file: string, newest: number, readOnly: boolean): void {
  const name = basename(file);
  const application = raw.pragma('application_id', { simple: true });
  const version = schemaVersionOf(raw);
  const tables = raw.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() as number;
  if (tables > 0 && application !== APPLICATION_ID)
    throw new Refusal(
      'CATALOGUE_FOREIGN',
      `${name} is not a catalogue file of Edition Ledger; choose another file.`,
    );
  if (version > newest && !readOnly)
    throw new Refusal(
      'CATALOGUE_NEWER',
      `${name} was last used with a newer Edition Ledger (form ${version}, this one knows ${newest}); update Edition Ledger, or open it for reading only.`,
    );
  const state = raw.pragma('quick_check(1)', { simple: true });
  if (state !== 'ok')
    throw new Refusal(
      'CATALOGUE_DAMAGED',
      `${name} is damaged (${String(state)}); restore the newest backup beside it.`,
    );
}

function openWriter(file: string, options: OpenFileOptions): Database.Database {
  const migrations = readMigrations(options.migrations ?? MIGRATIONS);
  const raw = new Database(file);
  try {
    probe(raw, file, migrations.length, false);
    setPragmas(raw, false);
    checkHistory(raw, migrations);
    const from = schemaVersionOf(raw);
    if (from > 0 && from < migrations.length) backUpBefore(raw, file, options.at);
    applyMigrations(raw, migrations, options.at);
    return raw;
  } catch (error) {
    raw.close();
    throw error;
  }
}

function openReader(file: string, readOnly: boolean, newest: number): Database.Database {
  const raw = new Database(file, { readonly: true, fileMustExist: true });
  try {
    if (readOnly) probe(raw, file, newest, true);
    setPragmas(raw, true);
    return raw;
  } catch (error) {
    raw.close();
    throw error;
  }
}

/** One transaction per command; the journal is sealed inside it, so no change is ever without its entry. */
function changer(raw: Database.Database, db: WriteDb): CatalogueFile['change'] {
  return (operation, at, work) => {
    try {
      raw.exec('BEGIN IMMEDIATE');
      const value = work(db);
      const seq = sealJournal(db, operation, at);
      raw.exec('COMMIT');
      return { value, seq };
    } catch (error) {
      if (raw.inTransaction) raw.exec('ROLLBACK');
      throw refusalOf(error);
    }
  };
}

function refuseChange(): never {
  throw new Refusal(
    'READ_ONLY',
    'This catalogue is open for reading only; open it without --read-only to change it.',
  );
}

/**
 * Opens a catalogue file, making or upgrading it as needed. One writer at a time: a second one is told who
 * holds the file. Throws a Refusal (CATALOGUE_IN_USE, _NEWER, _DAMAGED, _FOREIGN, DISK_TROUBLE).
 */
export function openCatalogueFile(path: string, options: OpenFileOptions): CatalogueFile {
  const file = resolve(path);
  const readOnly = options.readOnly ?? false;
  const newest = readMigrations(options.migrations ?? MIGRATIONS).length;
  let held: Hold | undefined;
  let rawWrite: Database.Database | undefined;
  try {
    if (readOnly && !existsSync(file))
      throw new Refusal(
        'NOT_FOUND',
        `There is no catalogue file at ${file}; start Edition Ledger once to make one.`,
      );
    if (!readOnly) {
      mkdirSync(dirname(file), { recursive: true });
      held = hold(file);
      rawWrite = openWriter(file, options);
    }
    const rawRead = openReader(file, readOnly, newest);
    const change = rawWrite ? changer(rawWrite, wrap(rawWrite)) : refuseChange;
    return {
      file,
      fileName: basename(file),
      readOnly,
      schemaVersion: schemaVersionOf(rawRead),
      read: wrap(rawRead),
      rawRead,
      change,
      close: () => {
        rawRead.close();
        if (rawWrite) {
          rawWrite.pragma('optimize');
          rawWrite.close();
        }
        held?.release();
      },
    };
  } catch (error) {
    rawWrite?.close();
    held?.release();
    throw refusalOf(error);
  }
}
