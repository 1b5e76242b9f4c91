import type { JobProgress } from '../src/contract/jobs.ts';
import type { Answer } from '../src/contract/operation.ts';
import { Refusal } from '../src/contract/refusal.ts';
import type { StoreClient } from '../src/thread/client.ts';

/** A store process as the desk needs it. */
export type DeskStore = Pick<StoreClient, 'call' | 'cancel' | 'close' | 'ended' | 'onChange' | 'onProgress'>;

/** What the desk tells the shell. */
export interface DeskEvents {
  /** Something was written, here or by a restore; `seq` is the journal's newest number. */
  changed(seq: number): void;
  /** How far a named piece of work has come. */
  progressed(progress: JobProgress): void;
  /** The store's process ended without being asked to. */
  lost(): void;
}

/**
 * Holds the one open catalogue. Another is opened beside it first and takes its place only once it is open, so
 * that a refused file leaves everything as it was; the one before is then closed, calls under way included.
 */
export class Desk {
  readonly #connect: (file: string) => Promise<DeskStore>;
  readonly #events: DeskEvents;
  #open: { file: string; store: DeskStore } | undefined;
  #turn: Promise<unknown> = Promise.resolve();

  constructor(connect: (file: string) => Promise<DeskStore>, events: DeskEvents) {
    this.#connect = connect;
    this.#events = events;
  }

  /** Full path of the open catalogue. */
  get file(): string | undefined {
    return this.#open?.file;
  }

  /** Carries a call to the open catalogue. */
  call(name: string, input: unknown): Promise<Answer<unknown>> {
    if (this.#open === undefined) {
      return Promise.reject(new Refusal('INTERNAL', 'No catalogue is open; choose one in the File menu.'));
    }
    return this.#open.store.call(name, input);
  }

  /** Calls off the work of this name; answers whether there was such work. */
  cancel(job: string): boolean {
    return this.#open?.store.cancel(job) ?? false;
  }

  /** Opens a catalogue in place of the present one, one after the other when asked twice. Rejects with the store's Refusal. */
  exchange(file: string): Promise<void> {
    const next = this.#turn.then(() => this.#exchange(file));
    this.#turn = next.catch(() => {});
    return next;
  }

  /** Closes the catalogue; what was acknowledged is on disk already. */
  async close(): Promise<void> {
    const { store } = this.#open ?? {};
    this.#open = undefined;
    await store?.close();
  }

  async #exchange(file: string): Promise<void> {
    if (file === this.#open?.file) return;
    const store = await this.#connect(file);
    const before = this.#open?.store;
    this.#open = { file, store };
    store.onChange((seq) => {
      if (this.#open?.store === store) this.#events.changed(seq);
    });
    store.onProgress((progress) => {
      if (this.#open?.store === store) this.#events.progressed(progress);
    });
    void store.ended.then(() => {
      if (this.#open?.store === store) this.#events.lost();
    });
    await before?.close();
  }
}
