import { isAbsolute } from 'node:path';
import { Refusal } from '../contract/refusal.ts';
import { readSettings, writeSetting } from '../store/settings.ts';
import type { Commands } from './context.ts';

export const settingCommands = {
  'settings.update': ({ db }, input) => {
    const folder = input.backupFolder?.trim() ?? '';
    if (folder !== '' && !isAbsolute(folder))
      throw new Refusal(
        'BAD_INPUT',
        'Give the whole path of the folder for backups, or leave it empty for a folder beside the catalogue file.',
        'backupFolder',
      );
    const calendarFolder = input.calendarFolder?.trim() ?? '';
    if (calendarFolder !== '' && !isAbsolute(calendarFolder))
      throw new Refusal(
        'BAD_INPUT',
        'Give the whole path of the folder for the calendar file, or leave it empty for beside the catalogue file.',
        'calendarFolder',
      );
    for (const [name, value] of Object.entries(input)) if (value !== undefined) writeSetting(db, name, value);
    return readSettings(db);
  },
} satisfies Commands<'settings.update'>;
