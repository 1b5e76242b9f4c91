import { existsSync, mkdirSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import Database from 'better-sqlite3';
import type { Step } from '../contract/jobs.ts';
import { Refusal } from '../contract/refusal.ts';
import { backupFolder, backupsIn, takeBackup, unsoundness } from './backup.ts';
import { type ReadDb, type WriteDb, wrap } from './connection.ts';
import { hold } from './hold.ts';
import { newestEntry, sealJournal } from './journal.ts';
import { isAsLeft, notedMarkBeside } from './left-as.ts';
import {
  applyMigrations,
  checkHistory,
  MIGRATIONS,
  type Migration,
  readMigrations,
  schemaVersionOf,
} from './migrate.ts';
import { broughtUpCopy, dropCopy, isOlder } from './older-form.ts';
import { inspect, type Known, openReader, probe, setPragmas } from './opening.ts';
import { mendSearchIndex } from './search.ts';
import { refusalOf } from './sqlite-errors.ts';

export interface CatalogueFile {
  readonly file: string;
  /** Where it is read from: the file itself, or a copy brought up for a look at a file of an older form. */
  readonly readFrom: string;
  readonly fileName: string;
  readonly readOnly: boolean;
  /** Why it is open for reading only, or null. */
  readonly readOnlyReason: string | null;
  readonly schemaVersion: number;
  /** What the examination at opening found wrong with the content; the file can be used, but the user must know. */
  readonly cautions: readonly string[];
  /** Reading connection: sees what is committed. */
  readonly read: ReadDb;
  readonly rawRead: Database.Database;
  /** Runs a command in one transaction, seals its journal entries, and returns its result once it is on disk. */
  change<T>(
    operation: string,
    at: string,
    work: (db: WriteDb) => T,
    /** Told how far the sealing of the journal has come. */
    step?: Step,
  ): { value: T; seq: number | null };
  close(): void;
}

/** Why a file that the caller asked to read only is read only. */
export const ASKED_FOR = 'This catalogue is open for reading only; open it for writing to change it.';

export interface OpenFileOptions {
  readOnly?: boolean;
  /** Moment for the record of applied migrations and backup names, ISO UTC. */
  at: string;
  migrations?: string;
  /** Whether it is the very bytes of a file whose pages, references and chain were proven sound a moment ago. */
  proven?: boolean;
}

interface Writer {
  raw: Database.Database;
  cautions: string[];
}

/** Opens for writing and brings the file to the newest form; what is not sound is not upgraded. */
function openWriter(file: string, options: OpenFileOptions, known: Known): Writer {
  const migrations = readMigrations(options.migrations ?? MIGRATIONS);
  const raw = new Database(file);
  try {
    probe(raw, file, migrations.length, false, known);
    setPragmas(raw, false);
    const fresh = raw.prepare('SELECT 1 FROM sqlite_schema').get() === undefined;
    if (!fresh) checkHistory(raw, migrations);
    const upgrade = !fresh && schemaVersionOf(raw) < migrations.length;
    const cautions = fresh ? [] : inspect(raw, file, migrations, upgrade ? null : known);
    if (upgrade && cautions[0]) throw new Refusal('CATALOGUE_DAMAGED', cautions[0]);
    if (upgrade) takeBackup(raw, file, backupFolder(file, ''), 'before upgrade', options.at);
    applyMigrations(raw, migrations, options.at);
    if (!fresh && known !== 'as left') mendSearchIndex(wrap(raw));
    return { raw, cautions };
  } catch (error) {
    raw.close();
    throw error;
  }
}

/** One transaction per command; the journal is sealed inside it, so no change is ever without its entry. */
function changer(raw: Database.Database, db: WriteDb): CatalogueFile['change'] {
  return (operation, at, work, step) => {
    try {
      raw.exec('BEGIN IMMEDIATE');
      const before = newestEntry(db);
      const value = work(db);
      const seq = sealJournal(db, operation, at, before, step);
      raw.exec('COMMIT');
      return { value, seq };
    } catch (error) {
      if (raw.inTransaction) raw.exec('ROLLBACK');
      throw refusalOf(error);
    }
  };
}

function refuseChange(reason: string): CatalogueFile['change'] {
  return () => {
    throw new Refusal('READ_ONLY', reason);
  };
}

/** Opens for reading; says why when that was not asked for. */
function openForReading(
  file: string,
  migrations: readonly Migration[],
  reason: string,
  at: string,
): CatalogueFile {
  if (!existsSync(file))
    throw new Refusal(
      'NOT_FOUND',
      `There is no catalogue file at ${file}; start Edition Ledger once to make one.`,
    );
  const asLeft = isAsLeft(file, notedMarkBeside(file));
  const older = isOlder(file, migrations, asLeft ? 'as left' : null);
  const readFrom = older ? broughtUpCopy(file, migrations, at) : file;
  const rawRead = openReader(readFrom);
  const close = () => {
    rawRead.close();
    if (older) dropCopy(readFrom);
  };
  try {
    const newer = schemaVersionOf(rawRead) > migrations.length;
    return {
      ...readingParts(file, rawRead),
      readFrom,
      cautions: newer ? [] : inspect(rawRead, file, migrations, asLeft && !older ? 'as left' : null),
      readOnlyReason: reason,
      readOnly: true,
      change: refuseChange(reason),
      close,
    };
  } catch (error) {
    close();
    throw error;
  }
}

function readingParts(file: string, rawRead: Database.Database) {
  return {
    file,
    fileName: basename(file),
    schemaVersion: schemaVersionOf(rawRead),
    read: wrap(rawRead),
    rawRead,
  };
}

/** Whether no other program wrote to the file while it was open here, and every journal entry is sealed. */
function isAloneSince(raw: Database.Database, version: unknown): boolean {
  return (
    raw.pragma('data_version', { simple: true }) === version &&
    raw.prepare('SELECT 1 FROM journal WHERE hash IS NULL').get() === undefined
  );
}

/** Closes the writer; answers whether the file can be noted as sound. Statistics that find no room are left out. */
function closeWriter({ raw, cautions }: Writer, version: unknown): boolean {
  try {
    const sound = cautions.length === 0 && isAloneSince(raw, version);
    raw.pragma('optimize');
    return sound;
  } catch {
    return false;
  } finally {
    raw.close();
  }
}

function openForWriting(file: string, options: OpenFileOptions): CatalogueFile {
  mkdirSync(dirname(file), { recursive: true });
  const held = hold(file);
  let writer: Writer | undefined;
  try {
    const opened = openWriter(file, options, options.proven ? 'proven' : held.asLeft ? 'as left' : null);
    writer = opened;
    const version = opened.raw.pragma('data_version', { simple: true });
    const rawRead = openReader(file);
    return {
      ...readingParts(file, rawRead),
      readFrom: file,
      cautions: opened.cautions,
      readOnlyReason: null,
      readOnly: false,
      change: changer(opened.raw, wrap(opened.raw)),
      close: () => {
        rawRead.close();
        held.release(closeWriter(opened, version));
      },
    };
  } catch (error) {
    writer?.raw.close();
    held.release(false);
    throw error;
  }
}

/** Leads from a damaged file to the newest sound backup kept beside it. */
function withWayBack(error: unknown, file: string): unknown {
  if (!(error instanceof Refusal) || error.code !== 'CATALOGUE_DAMAGED') return error;
  const sound = backupsIn(file, backupFolder(file, '')).find((backup) => unsoundness(backup.path) === null);
  const way = sound
    ? `The newest sound backup is ${sound.path}; put it back with: npx edition-ledger restore "${sound.path}" --catalogue "${file}".`
    : 'No sound backup lies beside it; if you keep backups elsewhere, restore one with: npx edition-ledger restore BACKUP.';
  return new Refusal('CATALOGUE_DAMAGED', `${error.message} The file was not touched. ${way}`);
}

/**
 * Opens a catalogue file, making or upgrading it as needed; a file of a newer form is opened for reading only.
 * One writer at a time: a second one is told who holds the file. Throws a Refusal (CATALOGUE_IN_USE, _DAMAGED,
 * _FOREIGN, DISK_TROUBLE).
 */
export function openCatalogueFile(path: string, options: OpenFileOptions): CatalogueFile {
  const file = resolve(path);
  const migrations = readMigrations(options.migrations ?? MIGRATIONS);
  try {
    if (options.readOnly) return openForReading(file, migrations, ASKED_FOR, options.at);
    return openForWriting(file, options);
  } catch (error) {
    const refusal = withWayBack(refusalOf(error), file);
    if (refusal instanceof Refusal && refusal.code === 'CATALOGUE_NEWER' && !options.readOnly)
      return openForReading(file, migrations, refusal.message, options.at);
    throw refusal;
  }
}
