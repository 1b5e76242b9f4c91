import { basename } from 'node:path';
import Database from 'better-sqlite3';
import { Refusal } from '../contract/refusal.ts';
import { wrap } from './connection.ts';
import { examine } from './examine.ts';
import { APPLICATION_ID, type Migration, schemaVersionOf } from './migrate.ts';
import { schemaFaults } from './schema-check.ts';

// What is done to any file before it is used.

/** WAL, and FULL so that a commit that was acknowledged is on disk (HOUSES.md lesson: durability). */
export function setPragmas(raw: Database.Database, readOnly: boolean): void {
  raw.pragma('foreign_keys = ON');
  raw.pragma('busy_timeout = 5000');
  raw.pragma('recursive_triggers = OFF');
  raw.pragma('trusted_schema = OFF');
  if (readOnly) return;
  raw.pragma('journal_mode = WAL');
  raw.pragma('synchronous = FULL');
  // What a statement may take back is noted in memory: in a file beside it costs more than the statement itself.
  raw.pragma('temp_store = MEMORY');
  if (process.platform === 'darwin') raw.pragma('checkpoint_fullfsync = ON');
}

/** A reading connection to a file. */
export function openReader(file: string): Database.Database {
  const raw = new Database(file, { readonly: true, fileMustExist: true });
  setPragmas(raw, true);
  return raw;
}

/** What is known of a file before it is looked at: nobody wrote to it since it was closed here, or see `proven`. */
export type Known = 'as left' | 'proven' | null;

/**
 * Refuses what is not a sound catalogue file of a form this program knows; never changes the file. The pages of a file
 * that stands as it was left, proven sound, are not read through again.
 */
export function probe(
  raw: Database.Database,
  file: string,
  newest: number,
  readOnly: boolean,
  known: Known,
): void {
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
      `${name} was last used with a newer Edition Ledger (form ${version}, this one knows ${newest}), so it is open for reading only; update Edition Ledger to change it.`,
    );
  if (known !== null) return;
  const state = raw.pragma('quick_check(1)', { simple: true });
  if (state !== 'ok') throw new Refusal('CATALOGUE_DAMAGED', `${name} is damaged (${String(state)}).`);
}

/**
 * Refuses a file whose rules were altered or whose pages and indexes are damaged, and answers in sentences what else
 * is wrong. A file that stands as it was left, proven sound, is not read through again.
 */
export function inspect(
  raw: Database.Database,
  file: string,
  migrations: readonly Migration[],
  known: Known,
): string[] {
  const db = wrap(raw);
  const damaged = (what: string) => new Refusal('CATALOGUE_DAMAGED', `${basename(file)} ${what}.`);
  const [altered] = schemaFaults(db, migrations);
  if (altered) throw damaged(`was altered by another program (${altered}), so its rules cannot be trusted`);
  if (known === 'as left') return [];
  const found = examine(db, migrations, known === 'proven');
  if (found.integrity !== 'ok') throw damaged(`is damaged (${found.integrity})`);
  return found.faults;
}
