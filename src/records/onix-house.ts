import type { ReadDb } from '../store/connection.ts';
import { readSettings } from '../store/settings.ts';

/** What a reader of messages must know of the house to tell its own words from others'. */
export function readingHouse(db: ReadDb) {
  const settings = readSettings(db);
  return {
    publisher: settings.publisher,
    sender: settings.publisher || settings.catalogueName,
    country: settings.countryOfPublication,
    language: settings.language,
    currency: null,
  };
}
