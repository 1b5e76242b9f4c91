import { existsSync, renameSync, rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import { Refusal } from '../contract/refusal.ts';
import { schemaVersionOf } from './migrate.ts';

/** Where the backup taken before an upgrade goes: beside the file, with its form and moment in the name. */
function backupPath(file: string, version: number, at: string): string {
  return `${file}-before-upgrade-from-${version}-${at.replaceAll(/[:.]/g, '-')}`;
}

/**
 * Takes a whole copy before an upgrade, checks it, and only then gives it its name; an unproven copy is never
 * kept under a backup's name. VACUUM INTO reads through the WAL, which a plain file copy would miss.
 */
export function backUpBefore(raw: Database.Database, file: string, at: string): string {
  const target = backupPath(file, schemaVersionOf(raw), at);
  const unproven = `${target}.unproven`;
  if (existsSync(unproven)) rmSync(unproven);
  raw.prepare('VACUUM INTO ?').run(unproven);
  const copy = new Database(unproven, { readonly: true });
  const state = copy.pragma('integrity_check(1)', { simple: true });
  copy.close();
  if (state !== 'ok') {
    rmSync(unproven);
    throw new Refusal(
      'CATALOGUE_DAMAGED',
      'The backup before the upgrade did not prove sound; nothing was changed.',
    );
  }
  renameSync(unproven, target);
  return target;
}
