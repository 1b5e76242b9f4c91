import { readSettings, writeSetting } from '../store/settings.ts';
import { refuseUnknownPlaceholders } from './channels.ts';
import type { Commands } from './context.ts';

export const settingCommands = {
  'settings.update': ({ db }, input) => {
    refuseUnknownPlaceholders(input.requestTemplate);
    for (const [name, value] of Object.entries(input)) if (value !== undefined) writeSetting(db, name, value);
    return readSettings(db);
  },
} satisfies Commands<'settings.update'>;
