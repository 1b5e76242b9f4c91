import { z } from 'zod';
import { type JobProgress, jobName } from '../contract/jobs.ts';
import type { Answer } from '../contract/operation.ts';
import { Refusal } from '../contract/refusal.ts';
import { type FromStore, fromStore, type StoreLine, toStore } from './messages.ts';

interface Pending {
  resolve(answer: Answer<unknown>): void;
  reject(refusal: Refusal): void;
}

/** A call whose input names a job can be followed and called off by that name. */
const withJob = z.object({ job: jobName });

/** How long a store may take to write its last pages before its thread is ended from outside. */
const CLOSE_MS = 10_000;

/** Talks to an open catalogue in its own thread: the same class for the loopback host and for Electron. */
export class StoreClient {
  readonly #line: StoreLine;
  readonly #pending = new Map<number, Pending>();
  readonly #changes = new Set<(seq: number) => void>();
  readonly #progress = new Set<(progress: JobProgress) => void>();
  readonly #jobs = new Map<number, string>();
  readonly #ended: Promise<void>;
  #nextId = 1;
  #over: string | undefined;
  #closing = false;

  private constructor(line: StoreLine, ended: Promise<void>) {
    this.#line = line;
    this.#ended = ended;
  }

  /**
   * Waits until the store at the other end is open.
   * Rejects with the store's own `Refusal` (CATALOGUE_IN_USE, CATALOGUE_NEWER, …), or INTERNAL if the thread ends.
   */
  static connect(line: StoreLine): Promise<StoreClient> {
    return new Promise((resolve, reject) => {
      let end = () => {};
      const client = new StoreClient(line, new Promise((done) => (end = done)));
      line.onMessage((raw) => {
        const message = fromStore.safeParse(raw);
        if (!message.success) return console.error('The store sent a message that is not known.');
        if (message.data.kind === 'open') resolve(client);
        else if (message.data.kind === 'refused') {
          reject(new Refusal(message.data.error.code, message.data.error.message, message.data.error.field));
          line.kill();
        } else client.#receive(message.data);
      });
      line.onEnd((reason) => {
        client.#stop(reason);
        reject(client.#gone());
        end();
      });
    });
  }

  /** Carries out one operation. Refusals come back as answers; rejects with INTERNAL when the thread dies. */
  call(name: string, input: unknown): Promise<Answer<unknown>> {
    if (this.#over !== undefined || this.#closing) return Promise.reject(this.#gone());
    const id = this.#nextId;
    this.#nextId += 1;
    const message = toStore.safeParse({ kind: 'call', id, name, input });
    if (!message.success) {
      const error = { code: 'UNKNOWN_OPERATION', message: 'There is no operation of that name.' } as const;
      return Promise.resolve({ ok: false, error });
    }
    return new Promise((resolve, reject) => {
      this.#pending.set(id, { resolve, reject });
      const named = withJob.safeParse(input);
      if (named.success) this.#jobs.set(id, named.data.job);
      try {
        this.#line.post(message.data);
      } catch {
        this.#forget(id);
        const message = `The input of ${name} cannot be read: pass plain data, not nested too deeply.`;
        resolve({ ok: false, error: { code: 'BAD_INPUT', message } });
      }
    });
  }

  /** Calls back after every change, with the journal's newest sequence number; returns the function that ends it. */
  onChange(listener: (seq: number) => void): () => void {
    this.#changes.add(listener);
    return () => this.#changes.delete(listener);
  }

  /** Calls back with how far work has come whose input names a job; returns the function that ends it. */
  onProgress(listener: (progress: JobProgress) => void): () => void {
    this.#progress.add(listener);
    return () => this.#progress.delete(listener);
  }

  /** Calls off the work of this name; its call is then answered CANCELLED. Answers whether there was such work. */
  cancel(job: string): boolean {
    const ids = [...this.#jobs].filter(([, name]) => name === job).map(([id]) => id);
    for (const id of ids) this.#line.cancel(id);
    return ids.length > 0;
  }

  /** Settles when the thread has ended, closed or dead. */
  get ended(): Promise<void> {
    return this.#ended;
  }

  /** Lets calls already made finish, closes the file and waits for the thread to end. */
  async close(): Promise<void> {
    if (this.#over === undefined && !this.#closing) {
      this.#closing = true;
      this.#line.post({ kind: 'close' });
      const late = setTimeout(() => this.#line.kill(), CLOSE_MS);
      await this.#ended;
      clearTimeout(late);
    }
    await this.#ended;
  }

  #receive(message: Extract<FromStore, { kind: 'answer' | 'changed' | 'progress' | 'closed' }>): void {
    if (message.kind === 'changed') for (const listener of this.#changes) listener(message.seq);
    if (message.kind === 'closed') this.#line.kill();
    if (message.kind === 'progress') this.#tell(message);
    if (message.kind !== 'answer') return;
    this.#pending.get(message.id)?.resolve(message.answer);
    this.#forget(message.id);
  }

  #tell({ id, done, total, what }: Extract<FromStore, { kind: 'progress' }>): void {
    const job = this.#jobs.get(id);
    if (job !== undefined) for (const listener of this.#progress) listener({ job, done, total, what });
  }

  #forget(id: number): void {
    this.#pending.delete(id);
    this.#jobs.delete(id);
  }

  #stop(reason: string): void {
    this.#over = reason;
    for (const { reject } of this.#pending.values()) reject(this.#gone());
    this.#pending.clear();
    this.#jobs.clear();
  }

  #gone(): Refusal {
    const why = this.#over ?? 'it is closing';
    return new Refusal(
      'INTERNAL',
      `The catalogue is no longer open (${why}); start Edition Ledger again. What was saved is safe.`,
    );
  }
}
