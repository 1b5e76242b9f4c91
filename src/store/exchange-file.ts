import {
  closeSync,
  copyFileSync,
  existsSync,
  fsyncSync,
  openSync,
  readSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { Refusal } from '../contract/refusal.ts';

/** Files SQLite keeps beside a catalogue file; stale ones must never meet another file's pages. */
const COMPANIONS = ['-wal', '-shm', '-journal'];

function flush(path: string): void {
  const handle = openSync(path, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

const AT_ONCE = 1 << 20;

/** Whether two files hold the same bytes. */
function areAlike(one: string, other: string): boolean {
  const handles = [openSync(one, 'r'), openSync(other, 'r')] as const;
  const [a, b] = [Buffer.allocUnsafe(AT_ONCE), Buffer.allocUnsafe(AT_ONCE)];
  try {
    for (;;) {
      const [read, readOther] = [readSync(handles[0], a), readSync(handles[1], b)];
      if (read !== readOther || a.compare(b, 0, read, 0, read) !== 0) return false;
      if (read === 0) return true;
    }
  } finally {
    for (const handle of handles) closeSync(handle);
  }
}

/**
 * Puts a copy of another file in the place of a closed catalogue file. The old one is kept beside it until
 * `proveSound` has opened the new one; when that throws, the old one is put back and the error goes on.
 */
export function exchangeFile<T>(file: string, replacement: string, proveSound: () => T): T {
  const arriving = `${file}.restoring`;
  const leaving = `${file}.replaced`;
  copyFileSync(replacement, arriving);
  flush(arriving);
  if (!areAlike(replacement, arriving)) {
    rmSync(arriving);
    throw new Refusal(
      'DISK_TROUBLE',
      `${replacement} could not be copied whole, so nothing was changed; check the disk and try again.`,
    );
  }
  for (const companion of COMPANIONS)
    if (existsSync(file + companion)) renameSync(file + companion, leaving + companion);
  renameSync(file, leaving);
  renameSync(arriving, file);
  try {
    const value = proveSound();
    for (const companion of ['', ...COMPANIONS]) rmSync(leaving + companion, { force: true });
    return value;
  } catch (error) {
    for (const companion of COMPANIONS) rmSync(file + companion, { force: true });
    renameSync(leaving, file);
    for (const companion of COMPANIONS)
      if (existsSync(leaving + companion)) renameSync(leaving + companion, file + companion);
    throw error;
  }
}
