import { readSettings } from '../store/settings.ts';
import type { Queries } from './context.ts';

export const settingQueries = {
  'settings.get': ({ db }) => readSettings(db),
} satisfies Queries<'settings.get'>;
