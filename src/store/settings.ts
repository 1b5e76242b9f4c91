import { DEFAULT_SETTINGS, type Settings, settings } from '../contract/settings.ts';
import type { ReadDb } from './connection.ts';

/** The settings of this catalogue: what is stored over the defaults; a stored value of a wrong shape counts as not stored. */
export function readSettings(db: ReadDb): Settings {
  const merged: Record<string, unknown> = { ...DEFAULT_SETTINGS };
  for (const row of db.all<{ name: string; value: string }>('SELECT name, value FROM setting')) {
    const shape = settings.shape[row.name as keyof Settings];
    const parsed = shape?.safeParse(JSON.parse(row.value));
    if (parsed?.success) merged[row.name] = parsed.data;
  }
  return merged as Settings;
}
