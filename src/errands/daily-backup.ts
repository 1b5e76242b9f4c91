import { statSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { z } from 'zod';
import { Refusal } from '../contract/refusal.ts';
import { backupFolder, backupsIn, dropUnproven, takeBackup, thinBackups } from '../store/backup.ts';
import type { CatalogueFile } from '../store/catalogue-file.ts';
import { journalHead } from '../store/journal.ts';
import { readSettings } from '../store/settings.ts';
import { refusalOf } from '../store/sqlite-errors.ts';

/** How the day's backup is taken. Tests and the bundled program give their own. */
export interface BackupOptions {
  /** The file of the thread that takes it beside the catalogue's own. */
  entry: URL;
  /** Bytes of a catalogue from which on nobody waits for it. */
  besideFrom: number;
}

/** A smaller file is copied and proven in the time of a blink. */
export const USUAL_BACKUP: BackupOptions = {
  entry: new URL('./backup-worker.ts', import.meta.url),
  besideFrom: 16 * 2 ** 20,
};

/** What the thread is given. `state` is a cell of shared memory that tells both sides how far it is. */
export const backupTask = z.object({
  file: z.string().min(1),
  folder: z.string().min(1),
  at: z.string().min(1),
  state: z.instanceof(SharedArrayBuffer),
});
export type BackupTask = z.infer<typeof backupTask>;

export const STATE = { waiting: 0, copying: 1, copied: 2, calledOff: 3 } as const;
/** What the thread tells at its end: what went wrong, or null. */
export const backupWord = z.object({ trouble: z.string().nullable() });

/** Milliseconds that closing waits for a copy under way; after that the file is examined at its next opening. */
const LONGEST_COPY_MS = 120_000;

/** Where today's backup belongs, or null where one was taken since the last change. */
function dueIn(file: CatalogueFile, at: string): string | null {
  const head = journalHead(file.read);
  if (file.readOnly || head.seq === 0) return null;
  const folder = backupFolder(file.file, readSettings(file.read).backupFolder);
  const [newest] = backupsIn(file.file, folder).filter((backup) => backup.kind === 'daily');
  if (newest?.at.slice(0, 10) === at.slice(0, 10)) return null;
  const changed = file.read.one<{ at: string }>('SELECT at FROM journal WHERE seq = ?', head.seq)?.at ?? '';
  return newest && newest.at > changed ? null : folder;
}

/** Takes the day's backup of a file and thins the older ones by the rota. Throws a Refusal. */
export function takeDaily(
  raw: CatalogueFile['rawRead'],
  { file, folder, at }: Pick<BackupTask, 'file' | 'folder' | 'at'>,
  copied?: () => void,
): void {
  dropUnproven(file, folder, 'daily');
  takeBackup(raw, file, folder, 'daily', at, copied);
  thinBackups(file, folder);
}

/** Says that a backup failed, and what to do about it. */
export function troubleOf(error: unknown): string {
  const refusal = refusalOf(error);
  const why = refusal instanceof Refusal ? refusal.message : String(refusal);
  return `Today's backup could not be taken: ${why} Choose another folder in Settings.`;
}

/** A backup that may still be under way. */
export interface DailyBackup {
  /** Lets go of the catalogue file before it is closed: waits for a copy that is being made, and drops its proof. */
  end(): void;
}

const DONE: DailyBackup = { end: () => {} };

function besideTheCatalogue(
  task: Omit<BackupTask, 'state'>,
  entry: URL,
  tell: (trouble: string) => void,
): DailyBackup {
  const state = new SharedArrayBuffer(4);
  const cell = new Int32Array(state);
  const worker = new Worker(entry, { workerData: { ...task, state } satisfies BackupTask });
  let over = false;
  worker.on('message', (raw) => {
    const { trouble } = backupWord.parse(raw);
    if (trouble !== null && !over) tell(trouble);
  });
  worker.on('error', (error) => {
    // A thread that died holds nothing any more.
    Atomics.store(cell, 0, STATE.copied);
    if (!over) tell(troubleOf(error));
  });
  // The program may end while the copy is being proven: it is dropped then, and taken at the next opening.
  worker.unref();
  return {
    end: () => {
      over = true;
      if (Atomics.compareExchange(cell, 0, STATE.waiting, STATE.calledOff) === STATE.copying)
        Atomics.wait(cell, 0, STATE.copying, LONGEST_COPY_MS);
      void worker.terminate();
    },
  };
}

/**
 * Takes today's backup if none was taken since the last change: at once, or for a large file in a thread beside the
 * catalogue's own, so that nobody waits for it; what is entered meanwhile may or may not be in it. A backup that fails
 * never keeps the user from working, but is told.
 */
export function backUpToday(
  file: CatalogueFile,
  at: string,
  { entry, besideFrom }: BackupOptions,
  tell: (trouble: string) => void,
): DailyBackup {
  try {
    const folder = dueIn(file, at);
    if (folder === null) return DONE;
    const task = { file: file.file, folder, at };
    if (statSync(file.file).size >= besideFrom) return besideTheCatalogue(task, entry, tell);
    takeDaily(file.rawRead, task);
  } catch (error) {
    tell(troubleOf(error));
  }
  return DONE;
}
