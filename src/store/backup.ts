import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import type { Backup } from '../contract/backups.ts';
import { Refusal } from '../contract/refusal.ts';
import { wrap } from './connection.ts';
import { verifyJournal } from './journal.ts';
import { APPLICATION_ID } from './migrate.ts';

type Kind = Backup['kind'];
const SLUGS: Record<Kind, string> = {
  daily: 'daily',
  'by hand': 'by-hand',
  'before upgrade': 'before-upgrade',
  'before restore': 'before-restore',
};

const stem = (file: string) => basename(file).replace(/\.ledger$/, '');

/** The folder backups are kept in: the one chosen in Settings, or one beside the catalogue file. */
export function backupFolder(file: string, chosen: string): string {
  return chosen.trim() === '' ? join(dirname(file), `${stem(file)} backups`) : chosen.trim();
}

/** `catalogue_2026-11-25T10-05-00-000Z_daily.ledger`; a later millisecond where that name is taken. */
function freePath(file: string, folder: string, kind: Kind, at: string): string {
  const path = join(folder, `${stem(file)}_${at.replaceAll(/[:.]/g, '-')}_${SLUGS[kind]}.ledger`);
  return existsSync(path) ? freePath(file, folder, kind, new Date(Date.parse(at) + 1).toISOString()) : path;
}

/** Reads a backup's name; null for a file of another name. */
function readName(file: string, folder: string, name: string): Backup | null {
  if (!name.startsWith(`${stem(file)}_`)) return null;
  const found = /_(\d{4}-\d\d-\d\dT)(\d\d)-(\d\d)-(\d\d)-(\d{3})Z_([a-z-]+)\.ledger$/.exec(name);
  const kind = (Object.keys(SLUGS) as Kind[]).find((known) => SLUGS[known] === found?.[6]);
  if (!found || !kind) return null;
  const path = join(folder, name);
  const at = `${found[1]}${found[2]}:${found[3]}:${found[4]}.${found[5]}Z`;
  return { name, path, kind, at, bytes: statSync(path).size };
}

/** The backups in a folder, newest first. */
export function backupsIn(file: string, folder: string): Backup[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .map((name) => readName(file, folder, name))
    .filter((backup) => backup !== null)
    .sort((a, b) => b.at.localeCompare(a.at));
}

/**
 * Why a file is no sound catalogue file, or null: pages, references, the journal's chain. Never changes it. `pages` is how
 * they are gone through: the quick check does not set every index against its table.
 */
export function unsoundness(
  path: string,
  pages: 'integrity_check' | 'quick_check' = 'integrity_check',
): string | null {
  let raw: Database.Database | undefined;
  try {
    raw = new Database(path, { readonly: true, fileMustExist: true });
    if (raw.pragma('application_id', { simple: true }) !== APPLICATION_ID)
      return 'it is not a catalogue file';
    const state = raw.pragma(`${pages}(1)`, { simple: true });
    if (state !== 'ok') return `its pages are damaged (${String(state)})`;
    if ((raw.pragma('foreign_key_check') as unknown[]).length > 0) return 'some references lead nowhere';
    const chain = verifyJournal(wrap(raw));
    return chain.ok ? null : `its journal is broken at entry ${chain.firstBroken}`;
  } catch (error) {
    return error instanceof Error ? error.message : 'it cannot be read';
  } finally {
    raw?.close();
  }
}

/**
 * Takes a whole copy, proves it by reading it back, and only then gives it its name: an unproven copy is never
 * kept under a backup's name and never replaces one. VACUUM INTO reads through the WAL, which a plain file
 * copy would miss. `copied` is called when `raw` is not needed any more.
 */
export function takeBackup(
  raw: Database.Database,
  file: string,
  folder: string,
  kind: Kind,
  at: string,
  copied: () => void = () => {},
): Backup {
  mkdirSync(folder, { recursive: true });
  const target = freePath(file, folder, kind, at);
  const unproven = `${target}.unproven`;
  if (existsSync(unproven)) rmSync(unproven);
  try {
    raw.prepare('VACUUM INTO ?').run(unproven);
    copied();
    // Its indexes were made from its tables a moment ago.
    const fault = unsoundness(unproven, 'quick_check');
    if (fault)
      throw new Refusal(
        'CATALOGUE_DAMAGED',
        `The backup did not prove sound (${fault}), so it was not kept; earlier backups are untouched.`,
      );
    renameSync(unproven, target);
  } catch (error) {
    if (existsSync(unproven)) rmSync(unproven);
    throw error;
  }
  const made = readName(file, folder, basename(target));
  if (!made) throw new Error('A backup was given a name that cannot be read.');
  return made;
}

/** Removes copies of a kind that were never proven, as the program ended before. */
export function dropUnproven(file: string, folder: string, kind: Kind): void {
  if (!existsSync(folder)) return;
  for (const name of readdirSync(folder))
    if (name.startsWith(`${stem(file)}_`) && name.endsWith(`_${SLUGS[kind]}.ledger.unproven`))
      rmSync(join(folder, name));
}

/** Days kept: the last 7 with a backup, then the last of each of 4 weeks, then the last of each of 12 months. */
function keptDaily(daily: Backup[]): Set<string> {
  const keep = new Set(daily.slice(0, 7).map((backup) => backup.name));
  const byPeriod = (period: (at: string) => string, most: number) => {
    const seen = new Set<string>();
    for (const backup of daily) {
      const key = period(backup.at);
      if (seen.has(key)) continue;
      if (seen.size >= most) break;
      seen.add(key);
      keep.add(backup.name);
    }
  };
  byPeriod((at) => String(Math.floor(Date.parse(at) / 604_800_000)), 4);
  byPeriod((at) => at.slice(0, 7), 12);
  return keep;
}

/** Removes daily backups the rota no longer keeps; those taken by hand or before an upgrade or restore stay. */
export function thinBackups(file: string, folder: string): string[] {
  const daily = backupsIn(file, folder).filter((backup) => backup.kind === 'daily');
  const keep = keptDaily(daily);
  const gone = daily.filter((backup) => !keep.has(backup.name));
  for (const backup of gone) rmSync(backup.path);
  return gone.map((backup) => backup.name);
}
