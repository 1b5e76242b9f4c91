import { randomBytes } from 'node:crypto';
import {
  appendFileSync,
  closeSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  readSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Refusal } from '../contract/refusal.ts';

/** Largest file that can lie ready, and how many may: the oldest goes when there are more. */
export const MOST_BYTES = 1024 * 1024 * 1024;
export const MOST_FILES = 40;

/** Where work writes a file piece by piece, so that it never stands in memory as a whole. */
export interface Sink {
  write(piece: string | Uint8Array): void;
}

/** Pieces are gathered to this many characters before they are written. */
const GATHER = 256 * 1024;

const FOLDER = 'edition-ledger-files-';
const DAY_MS = 86_400_000;

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== 'ESRCH';
  }
}

/**
 * Throws away what programs have left that were ended in the midst of their work: folders of processes that are gone,
 * untouched for a day, since a process elsewhere may share the folder of temporary files and not be seen from here.
 */
function sweep(parent: string): void {
  for (const name of readdirSync(parent)) {
    const owner = new RegExp(`^${FOLDER}(\\d+)-`).exec(name)?.[1];
    if (owner === undefined || isRunning(Number(owner))) continue;
    const path = join(parent, name);
    try {
      if (Date.now() - statSync(path).mtimeMs > DAY_MS) rmSync(path, { recursive: true, force: true });
    } catch {
      // Somebody else's folder, or gone by now: none of it keeps the work from going on.
    }
  }
}

/** A folder of this process's own. */
function newFolder(): string {
  sweep(tmpdir());
  return mkdtempSync(join(tmpdir(), `${FOLDER}${process.pid}-`));
}

/** Files on their way in or out of the catalogue, in a folder of their own that goes when the catalogue is closed. */
export class Staging {
  #folder: string | undefined;
  readonly #names = new Map<string, string>();

  /** Begins an empty file under this name; answers its id. */
  begin(name: string): string {
    this.#folder ??= newFolder();
    const [oldest] = this.#names.keys();
    if (this.#names.size >= MOST_FILES && oldest !== undefined) this.drop(oldest);
    const id = randomBytes(16).toString('hex');
    writeFileSync(join(this.#folder, id), '', { mode: 0o600 });
    this.#names.set(id, name);
    return id;
  }

  /** Adds to a file; answers its size. Throws NOT_FOUND, or BAD_INPUT once it is too large. */
  append(id: string, bytes: Uint8Array): number {
    const size = this.size(id) + bytes.byteLength;
    if (size > MOST_BYTES) {
      this.drop(id);
      throw new Refusal('BAD_INPUT', 'This file is larger than 1 GiB; split it and send the parts.', 'file');
    }
    appendFileSync(this.pathOf(id), bytes);
    return size;
  }

  /** Makes a file by writing to a sink; what was begun is thrown away when `work` throws. */
  make(name: string, work: (sink: Sink) => void): { file: string; bytes: number } {
    const file = this.begin(name);
    const handle = openSync(this.pathOf(file), 'w', 0o600);
    let gathered = '';
    const flush = () => {
      if (gathered !== '') writeSync(handle, gathered);
      gathered = '';
    };
    try {
      work({
        write: (piece) => {
          if (typeof piece === 'string') {
            gathered += piece;
            if (gathered.length > GATHER) flush();
            return;
          }
          flush();
          for (let at = 0; at < piece.length; ) at += writeSync(handle, piece, at);
        },
      });
      flush();
    } catch (error) {
      closeSync(handle);
      this.drop(file);
      throw error;
    }
    closeSync(handle);
    return { file, bytes: this.size(file) };
  }

  /** The whole file. Throws NOT_FOUND. */
  read(id: string): Uint8Array {
    return readFileSync(this.pathOf(id));
  }

  /** At most `most` bytes from one on. Throws NOT_FOUND. */
  part(id: string, from: number, most: number): Uint8Array {
    const handle = openSync(this.pathOf(id), 'r');
    try {
      const bytes = Buffer.alloc(most);
      return bytes.subarray(0, readSync(handle, bytes, 0, most, from));
    } finally {
      closeSync(handle);
    }
  }

  /** Size in bytes. Throws NOT_FOUND. */
  size(id: string): number {
    return statSync(this.pathOf(id)).size;
  }

  /** The name it was given. Throws NOT_FOUND. */
  nameOf(id: string): string {
    this.pathOf(id);
    return this.#names.get(id) ?? '';
  }

  /** Throws a file away; answers whether there was one. */
  drop(id: string): boolean {
    if (!this.#names.delete(id) || this.#folder === undefined) return false;
    rmSync(join(this.#folder, id), { force: true });
    return true;
  }

  close(): void {
    this.#names.clear();
    if (this.#folder !== undefined) rmSync(this.#folder, { recursive: true, force: true });
    this.#folder = undefined;
  }

  /**
   * Where a file lies, for a thread that reads it. Only ids that were given out lead anywhere, so that no text from
   * outside becomes a path. Throws NOT_FOUND.
   */
  pathOf(id: string): string {
    if (this.#folder === undefined || !this.#names.has(id))
      throw new Refusal('NOT_FOUND', 'This file no longer lies ready; choose it again.', 'file');
    return join(this.#folder, id);
  }
}
