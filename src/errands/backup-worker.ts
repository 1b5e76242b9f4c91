import { parentPort, workerData } from 'node:worker_threads';
import Database from 'better-sqlite3';
import type { z } from 'zod';
import { backupTask, type backupWord, STATE, takeDaily, troubleOf } from './daily-backup.ts';

// The whole of the thread that takes the day's backup of a large catalogue: one backup, then it ends.

const task = backupTask.parse(workerData);
const cell = new Int32Array(task.state);

function letGo(raw: Database.Database): void {
  raw.close();
  Atomics.store(cell, 0, STATE.copied);
  Atomics.notify(cell, 0);
}

function take(): void {
  const raw = new Database(task.file, { readonly: true, fileMustExist: true });
  try {
    // Once it is copied, the catalogue itself is not read any more, and can be closed while the copy is proven.
    takeDaily(raw, task, () => letGo(raw));
  } finally {
    if (raw.open) letGo(raw);
  }
}

function carryOut(): string | null {
  try {
    take();
    return null;
  } catch (error) {
    return troubleOf(error);
  }
}

if (Atomics.compareExchange(cell, 0, STATE.waiting, STATE.copying) === STATE.waiting)
  parentPort?.postMessage({ trouble: carryOut() } satisfies z.infer<typeof backupWord>);
