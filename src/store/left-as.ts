import { createHash } from 'node:crypto';
import { closeSync, existsSync, openSync, readSync, statSync } from 'node:fs';
import Database from 'better-sqlite3';

const CHUNK = 1 << 20;

/** SHA-256 of all bytes of a file that nobody writes to; null when changes still stand in a log beside it. */
export function bytesOf(file: string): string | null {
  if (existsSync(`${file}-wal`) && statSync(`${file}-wal`).size > 0) return null;
  if (!existsSync(file)) return null;
  const handle = openSync(file, 'r');
  try {
    const hash = createHash('sha256');
    const part = Buffer.allocUnsafe(CHUNK);
    for (let read = readSync(handle, part); read > 0; read = readSync(handle, part))
      hash.update(part.subarray(0, read));
    return hash.digest('hex');
  } finally {
    closeSync(handle);
  }
}

/**
 * Whether a file has the bytes it had when it was last closed here, proven sound. False is no accusation: nothing
 * may have been noted, for example after a power cut; the file is then examined whole.
 */
export function isAsLeft(file: string, noted: string | null): boolean {
  return noted !== null && bytesOf(file) === noted;
}

const TABLE = 'CREATE TABLE IF NOT EXISTS left_as (id INTEGER PRIMARY KEY, sha256 TEXT) STRICT';

/** Notes in the side file how the catalogue file was left; null forgets it. */
export function noteBytes(side: Database.Database, sha256: string | null): void {
  side.exec(TABLE);
  side.prepare('INSERT OR REPLACE INTO left_as (id, sha256) VALUES (1, ?)').run(sha256);
}

export function notedBytes(side: Database.Database): string | null {
  const there = side.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'left_as'").get();
  if (!there) return null;
  return (side.prepare('SELECT sha256 FROM left_as').pluck().get() as string | null | undefined) ?? null;
}

/** The same, asked by a reader that holds nothing. */
export function notedBytesBeside(file: string): string | null {
  const path = `${file}-hold`;
  if (!existsSync(path)) return null;
  try {
    const side = new Database(path, { readonly: true, fileMustExist: true });
    try {
      return notedBytes(side);
    } finally {
      side.close();
    }
  } catch {
    // A side file that cannot be read tells nothing; the catalogue is then examined whole.
    return null;
  }
}
