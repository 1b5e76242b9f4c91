import { existsSync, statSync } from 'node:fs';
import Database from 'better-sqlite3';

/**
 * What tells that nobody wrote to a file since: its size, the moments of its last writing and of its last change of any
 * kind, to the nanosecond, and its place on the disk. Whoever writes to a file changes the last moment, which no program
 * can set back. Null when the file is not there, or changes still stand in a log beside it. Costs the same at every size.
 */
export function markOf(file: string): string | null {
  if (existsSync(`${file}-wal`) && statSync(`${file}-wal`).size > 0) return null;
  const stat = statSync(file, { bigint: true, throwIfNoEntry: false });
  return stat ? [stat.size, stat.mtimeNs, stat.ctimeNs, stat.ino].join(' ') : null;
}

/**
 * Whether a file was not written to since it was last closed here, proven sound. False is no accusation: nothing may
 * have been noted, for example after a power cut, or it is a copy; the file is then examined whole.
 */
export function isAsLeft(file: string, noted: string | null): boolean {
  return noted !== null && markOf(file) === noted;
}

const TABLE = 'CREATE TABLE IF NOT EXISTS left_mark (id INTEGER PRIMARY KEY, mark TEXT) STRICT';

/** Notes in the side file how the catalogue file was left; null forgets it. */
export function noteMark(side: Database.Database, mark: string | null): void {
  side.exec(TABLE);
  side.prepare('INSERT OR REPLACE INTO left_mark (id, mark) VALUES (1, ?)').run(mark);
}

export function notedMark(side: Database.Database): string | null {
  const there = side.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'left_mark'").get();
  if (!there) return null;
  return (side.prepare('SELECT mark FROM left_mark').pluck().get() as string | null | undefined) ?? null;
}

/** The same, asked by a reader that holds nothing. */
export function notedMarkBeside(file: string): string | null {
  const path = `${file}-hold`;
  if (!existsSync(path)) return null;
  try {
    const side = new Database(path, { readonly: true, fileMustExist: true });
    try {
      return notedMark(side);
    } finally {
      side.close();
    }
  } catch {
    // A side file that cannot be read tells nothing; the catalogue is then examined whole.
    return null;
  }
}
