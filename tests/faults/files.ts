import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { openApp } from '../../src/app.ts';
import { play, stepsFor } from '../support/history.ts';
import { worldReader } from './world.ts';

export const DAY = '2026-03-02';
const clock = { today: () => DAY, now: () => new Date(`${DAY}T10:00:00.000Z`) };

/** Opens a catalogue whose clock stands still. */
export const openStill = (file: string, readOnly = false) => openApp({ file, readOnly, ...clock });

/** Runs work with a folder of its own, which is removed afterwards. */
export function inFolder<T>(work: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-faults-'));
  const remove = () => rmSync(folder, { recursive: true, force: true });
  try {
    const value = work(folder);
    if (value instanceof Promise) return value.finally(remove) as T;
    remove();
    return value;
  } catch (error) {
    remove();
    throw error;
  }
}

/** Runs work on a reading connection of its own. */
export function reading<T>(file: string, work: (raw: Database.Database) => T): T {
  const raw = new Database(file, { readonly: true, fileMustExist: true });
  try {
    return work(raw);
  } finally {
    raw.close();
  }
}

/** Every row of every table but SQLite's own and the search index, which is made anew at opening, as text by table. */
export function contentOf(raw: Database.Database): Record<string, string[]> {
  const tables = raw
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT GLOB 'sqlite_*' ORDER BY name")
    .pluck()
    .all() as string[];
  return Object.fromEntries(
    tables
      .filter((name) => !name.startsWith('search_words'))
      .map((table) => {
        const rows = raw.prepare(`SELECT * FROM "${table}"`).raw().all() as unknown[][];
        return [table, rows.map((row) => JSON.stringify(row)).sort()];
      }),
  );
}

/** A closed catalogue with the demo press and some history: spent numbers, steps, plans, corrections. */
export function grownCatalogue(file: string, commands: number, seed = 7): void {
  const app = openStill(file);
  try {
    app.call('catalogue.demo', {});
    app.call('numbers.spend', { isbn: '979-8-969999-99-2', reason: 'misprinted' });
    app.call('numbers.reserve', { isbn: '979-8-969999-98-5', reservedFor: 'a series' });
    reading(file, (raw) => play(app, worldReader(raw), stepsFor(seed, 5), DAY, commands));
  } finally {
    app.close();
  }
}
