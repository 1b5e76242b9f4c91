import { rmSync } from 'node:fs';
import { hostname } from 'node:os';
import Database from 'better-sqlite3';
import { Refusal } from '../contract/refusal.ts';
import { isAsLeft, markOf, notedMark, noteMark } from './left-as.ts';

export interface Hold {
  /** Whether nobody wrote to the catalogue file since it was last released as sound. */
  readonly asLeft: boolean;
  /** Lets the closed file go. `sound` notes how it stands, so that the next opening need not examine it whole. */
  release(sound: boolean): void;
}

/** Notes who holds the file, forgets how it was left, and keeps a transaction open until the release. */
function take(side: Database.Database, file: string): boolean {
  side.exec('BEGIN IMMEDIATE');
  const asLeft = isAsLeft(file, notedMark(side));
  side.exec(
    'CREATE TABLE IF NOT EXISTS holder (id INTEGER PRIMARY KEY, host TEXT, pid INTEGER, since TEXT) STRICT',
  );
  side
    .prepare('INSERT OR REPLACE INTO holder (id, host, pid, since) VALUES (1, ?, ?, ?)')
    .run(hostname(), process.pid, new Date().toISOString());
  noteMark(side, null);
  side.exec('COMMIT; BEGIN IMMEDIATE');
  return asLeft;
}

function letGo(side: Database.Database, file: string, sound: boolean): void {
  try {
    if (sound) noteMark(side, markOf(file));
    side.exec('COMMIT');
  } catch {
    // Without the note (the disk may be full) the next opening examines the file whole; nothing else is lost.
    if (side.inTransaction) side.exec('ROLLBACK');
  } finally {
    side.close();
  }
}

function holdBy(file: string): Hold {
  const side = new Database(`${file}-hold`, { timeout: 200 });
  try {
    return { asLeft: take(side, file), release: (sound) => letGo(side, file, sound) };
  } catch (error) {
    const busy = codeOf(error) === 'SQLITE_BUSY';
    const sentence = busy ? whoHolds(side) : null;
    side.close();
    if (sentence) throw new Refusal('CATALOGUE_IN_USE', sentence);
    throw error;
  }
}

const codeOf = (error: unknown): string => String((error as { code?: unknown }).code);

/**
 * Holds a catalogue file for one writer: a transaction kept open on a small side file, which the operating
 * system lets go when the process ends in any way. A damaged side file is made anew: nothing in it is missed.
 * Throws CATALOGUE_IN_USE naming who holds it.
 */
export function hold(file: string): Hold {
  try {
    return holdBy(file);
  } catch (error) {
    if (!/^SQLITE_(NOTADB|CORRUPT)/.test(codeOf(error))) throw error;
    for (const path of [`${file}-hold`, `${file}-hold-journal`]) rmSync(path, { force: true });
    return holdBy(file);
  }
}

function whoHolds(side: Database.Database): string {
  const noted = side.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'holder'").get() !== undefined;
  const holder = noted
    ? (side.prepare('SELECT host, pid, since FROM holder').get() as
        | { host: string; pid: number; since: string }
        | undefined)
    : undefined;
  const who = holder ? `process ${holder.pid} on ${holder.host} since ${holder.since}` : 'another process';
  return `This catalogue is already open in Edition Ledger (${who}); use that window, or close it first.`;
}
