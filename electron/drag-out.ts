import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';

/** As much as is written for one drag; a bar code for print is some hundred kB. */
const LARGEST = 8 * 1024 * 1024;

/** Kinds of file the pages make; none of them is run by a system when it is opened. */
const dragged = z.tuple([
  z.string().regex(/^[\p{L}\p{N}][\p{L}\p{N} ._-]{0,100}\.(svg|png|eps|pdf|csv|txt|xml|ics|xlsx)$/u),
  z.instanceof(Uint8Array).refine((bytes) => bytes.byteLength > 0 && bytes.byteLength <= LARGEST),
]);

/** Files made to be dragged out of the window; they lie in a folder of this run that goes with it. */
export class DragFiles {
  #folder: Promise<string> | undefined;

  /** Writes what a page wants dragged; undefined when its name or size is none that a page of ours gives. */
  async write(given: readonly unknown[]): Promise<string | undefined> {
    const parsed = dragged.safeParse(given);
    if (!parsed.success) return undefined;
    const [name, bytes] = parsed.data;
    this.#folder ??= mkdtemp(join(tmpdir(), 'edition-ledger-drag-'));
    const file = join(await this.#folder, name);
    await writeFile(file, bytes);
    return file;
  }

  /** Removes the folder and all that was dragged; the copies dropped elsewhere are the receiver's own. */
  async clear(): Promise<void> {
    if (this.#folder) await rm(await this.#folder, { recursive: true, force: true });
    this.#folder = undefined;
  }
}
