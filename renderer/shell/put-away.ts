import { recall, remember } from '../lib/memory.ts';

/** One memory for each catalogue file. */
const memoryOf = (file: string) => `put away ${file}`;

/** The texts that were put away, as kept by the window; whatever cannot be read as texts is forgotten. */
export function readPutAway(kept: string | undefined): string[] {
  try {
    const texts: unknown = JSON.parse(kept ?? '[]');
    return Array.isArray(texts) ? texts.filter((text) => typeof text === 'string') : [];
  } catch {
    return [];
  }
}

/** What stays put away: a text that is gone is forgotten, so that it shows when it comes again. */
export function stillPutAway(away: readonly string[], warnings: readonly string[]): string[] {
  return away.filter((text) => warnings.includes(text));
}

/** The texts of a file's warnings that were put away. */
export function recallPutAway(file: string): string[] {
  return readPutAway(recall(memoryOf(file)));
}

/** Keeps which warnings of a file are put away, over launches too. */
export function rememberPutAway(file: string, away: readonly string[]): void {
  remember(memoryOf(file), JSON.stringify(away));
}
