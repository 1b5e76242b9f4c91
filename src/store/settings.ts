import { DEFAULT_SETTINGS, type Settings, settings } from '../contract/settings.ts';
import type { ReadDb, WriteDb } from './connection.ts';

/** The settings of this catalogue: what is stored over the defaults; a stored value of a wrong shape counts as not stored. */
export function readSettings(db: ReadDb): Settings {
  const merged: Record<string, unknown> = { ...DEFAULT_SETTINGS };
  for (const row of db.all<{ name: string; value: string }>('SELECT name, value FROM setting')) {
    // A file from outside may name anything, such as what every object has.
    if (!Object.hasOwn(settings.shape, row.name)) continue;
    const parsed = settings.shape[row.name as keyof Settings].safeParse(JSON.parse(row.value));
    if (parsed.success) merged[row.name] = parsed.data;
  }
  return merged as Settings;
}

/** Keeps one setting; its shape was checked at the boundary. An unchanged value writes nothing to the journal. */
export function writeSetting(db: WriteDb, name: string, value: unknown): void {
  db.run(
    'INSERT INTO setting (name, value) SELECT ?1, ?2 WHERE NOT EXISTS (SELECT 1 FROM setting WHERE name = ?1)',
    name,
    JSON.stringify(value),
  );
  db.run('UPDATE setting SET value = ?2 WHERE name = ?1 AND value <> ?2', name, JSON.stringify(value));
}

/** Whether this catalogue holds the invented demo press. */
export function isDemo(db: ReadDb): boolean {
  return db.one<{ value: string }>("SELECT value FROM setting WHERE name = 'demo'")?.value === 'true';
}
