import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { z } from 'zod';

const paths = z.array(z.string().min(1).max(4096)).max(100);

/** As many as a menu shows without becoming a list to search. */
const KEPT = 10;

/** The catalogues that were open lately, newest first, kept in one small file of the desktop program. */
export class RecentFiles {
  readonly #file: string;

  constructor(file: string) {
    this.#file = file;
  }

  /** Those that are still there; one on a disk that is away comes back with its disk. */
  present(): string[] {
    return this.#read().filter((path) => existsSync(path));
  }

  /** Puts a catalogue first. */
  add(path: string): void {
    this.#write([path, ...this.#read().filter((one) => one !== path)].slice(0, KEPT));
  }

  clear(): void {
    this.#write([]);
  }

  #read(): string[] {
    try {
      return paths.parse(JSON.parse(readFileSync(this.#file, 'utf8')));
    } catch {
      // A lost list is no reason not to work.
      return [];
    }
  }

  #write(list: string[]): void {
    try {
      writeFileSync(this.#file, JSON.stringify(list));
    } catch (error) {
      console.error('The list of recent catalogues was not saved.', error);
    }
  }
}
