import { hostname } from 'node:os';
import Database from 'better-sqlite3';
import { Refusal } from '../contract/refusal.ts';

export interface Hold {
  release(): void;
}

/**
 * Holds a catalogue file for one writer: a transaction kept open on a small side file, which the operating
 * system lets go when the process ends in any way. Throws CATALOGUE_IN_USE naming who holds it.
 */
export function hold(file: string): Hold {
  const raw = new Database(`${file}-hold`, { timeout: 200 });
  try {
    raw.exec(
      'CREATE TABLE IF NOT EXISTS holder (id INTEGER PRIMARY KEY, host TEXT, pid INTEGER, since TEXT) STRICT',
    );
    raw
      .prepare('INSERT OR REPLACE INTO holder (id, host, pid, since) VALUES (1, ?, ?, ?)')
      .run(hostname(), process.pid, new Date().toISOString());
    raw.exec('BEGIN IMMEDIATE');
  } catch (error) {
    const busy = (error as { code?: string }).code === 'SQLITE_BUSY';
    const sentence = busy ? whoHolds(raw) : null;
    raw.close();
    if (sentence) throw new Refusal('CATALOGUE_IN_USE', sentence);
    throw error;
  }
  return {
    release: () => {
      if (raw.inTransaction) raw.exec('ROLLBACK');
      raw.close();
    },
  };
}

function whoHolds(raw: Database.Database): string {
  const holder = raw.prepare('SELECT host, pid, since FROM holder').get() as
    | { host: string; pid: number; since: string }
    | undefined;
  const who = holder ? `process ${holder.pid} on ${holder.host} since ${holder.since}` : 'another process';
  return `This catalogue is already open in Edition Ledger (${who}); use that window, or close it first.`;
}
