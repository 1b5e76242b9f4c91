import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { calendarText } from '../exchange/calendar.ts';
import { calendarFacts } from '../store/calendar.ts';
import type { CatalogueFile } from '../store/catalogue-file.ts';
import { readSettings } from '../store/settings.ts';

/** Where the calendar file of a catalogue lies: beside it, or in the folder of the settings. */
export function calendarPath(cataloguePath: string, folder: string): string {
  const name = `${basename(cataloguePath).replace(/\.ledger$/, '')} agenda.ics`;
  return join(folder.trim() === '' ? dirname(cataloguePath) : folder, name);
}

/**
 * Writes the calendar file anew where the settings ask for one, whole or not at all. Answers a caution where that
 * fails; it never keeps anybody from working.
 */
export function keepCalendar(file: CatalogueFile): string | null {
  const { calendar, calendarFolder, catalogueName } = readSettings(file.read);
  if (calendar === 'off' || file.readOnly) return null;
  const path = calendarPath(file.file, calendarFolder);
  try {
    const text = calendarText(calendarFacts(file.read, catalogueName), calendar);
    if (existsSync(path) && readFileSync(path, 'utf8') === text) return null;
    writeFileSync(`${path}.part`, text);
    renameSync(`${path}.part`, path);
    return null;
  } catch {
    return `The calendar file could not be written to ${path}; choose another folder on the Agenda screen.`;
  }
}
