import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { APPLICATION_ID, applyMigrations, checkHistory, type Migration, schemaVersionOf } from './migrate.ts';
import { type Known, openReader, probe, setPragmas } from './opening.ts';

/**
 * A file of an older form is looked at through a copy that is brought up: it stays as it is itself. Answers the copy's
 * path, alone in a folder of its own.
 */
export function broughtUpCopy(file: string, migrations: readonly Migration[], at: string): string {
  const copy = join(mkdtempSync(join(tmpdir(), 'edition-ledger-look-')), basename(file));
  const from = openReader(file);
  try {
    checkHistory(from, migrations);
    from.prepare('VACUUM INTO ?').run(copy);
  } finally {
    from.close();
  }
  const raw = new Database(copy);
  try {
    setPragmas(raw, false);
    applyMigrations(raw, migrations, at);
  } finally {
    raw.close();
  }
  return copy;
}

/** Whether a sound file is of a form that came before this program's. */
export function isOlder(file: string, migrations: readonly Migration[], known: Known): boolean {
  const raw = openReader(file);
  try {
    probe(raw, file, migrations.length, true, known);
    return (
      raw.pragma('application_id', { simple: true }) === APPLICATION_ID &&
      schemaVersionOf(raw) < migrations.length
    );
  } finally {
    raw.close();
  }
}

/** Lets a copy go that was made for a look. */
export function dropCopy(copy: string): void {
  rmSync(dirname(copy), { recursive: true, force: true });
}
