import Database from 'better-sqlite3';
import type { Backup } from '../contract/backups.ts';
import { Refusal } from '../contract/refusal.ts';
import { backupFolder, backupsIn, takeBackup, unsoundness } from '../store/backup.ts';
import type { CatalogueFile } from '../store/catalogue-file.ts';
import { type ReadDb, wrap } from '../store/connection.ts';
import { commandsSince, hasEntry, journalHead } from '../store/journal.ts';
import { readSettings } from '../store/settings.ts';
import type { Errands } from './context.ts';

const folderOf = (file: CatalogueFile) => backupFolder(file.file, readSettings(file.read).backupFolder);

function needBackup(file: CatalogueFile, name: string): Backup {
  const found = backupsIn(file.file, folderOf(file)).find((backup) => backup.name === name);
  if (!found)
    throw new Refusal('NOT_FOUND', `There is no backup called ${name} in ${folderOf(file)}.`, 'name');
  return found;
}

function counts(db: ReadDb): { works: number; formats: number; numbers: number } {
  const row = db.one<{ works: number; formats: number; numbers: number }>(
    'SELECT (SELECT count(*) FROM work) AS works, (SELECT count(*) FROM format) AS formats, (SELECT count(*) FROM number) AS numbers',
  );
  return row ?? { works: 0, formats: 0, numbers: 0 };
}

/** Most changes a preview names; the total says how many there are. */
const NAMED_CHANGES = 200;

export const backupErrands = {
  'backups.list': ({ file }) => ({ folder: folderOf(file), backups: backupsIn(file.file, folderOf(file)) }),

  'backups.make': ({ file, at }) => takeBackup(file.rawRead, file.file, folderOf(file), 'by hand', at),

  'backups.preview': ({ file }, { name }) => {
    const backup = needBackup(file, name);
    const fault = unsoundness(backup.path);
    if (fault)
      throw new Refusal(
        'CATALOGUE_DAMAGED',
        `${name} is not sound: ${fault}. Choose another backup.`,
        'name',
      );
    const raw = new Database(backup.path, { readonly: true, fileMustExist: true });
    try {
      const then = wrap(raw);
      const head = journalHead(then);
      const sameStory = head.seq === 0 || hasEntry(file.read, head);
      const lost = sameStory ? commandsSince(file.read, head.seq, NAMED_CHANGES) : { commands: [], total: 0 };
      return {
        backup,
        sound: true,
        sameStory,
        lost: lost.commands,
        lostTotal: lost.total,
        now: counts(file.read),
        restored: counts(then),
      };
    } finally {
      raw.close();
    }
  },

  'backups.restore': ({ file, at, exchange }, { name }) => {
    if (file.readOnly)
      throw new Refusal(
        'READ_ONLY',
        'This catalogue is open for reading only, so nothing can be restored into it.',
        'name',
      );
    const restored = needBackup(file, name);
    const fault = unsoundness(restored.path);
    if (fault)
      throw new Refusal(
        'CATALOGUE_DAMAGED',
        `${name} is not sound: ${fault}. Choose another backup; nothing was changed.`,
        'name',
      );
    const before = takeBackup(file.rawRead, file.file, folderOf(file), 'before restore', at);
    exchange({ to: restored.path });
    return { restored, before };
  },
} satisfies Errands<'backups.list' | 'backups.make' | 'backups.preview' | 'backups.restore'>;
