import { z } from 'zod';
import { progress } from '../contract/jobs.ts';
import { refusalBody } from '../contract/refusal.ts';

/** How the store is opened, as plain data that crosses to its thread. */
export const storeOptions = z.object({
  /** Path of the `.ledger` file. */
  file: z.string().min(1),
  readOnly: z.boolean().optional(),
  /** Full path of the program's error log. */
  log: z.string().min(1).optional(),
  /** A fixed day instead of the clock's, for tests and pictures. */
  today: z.iso.date().optional(),
});
export type StoreOptions = z.infer<typeof storeOptions>;

/** What a call brings back; the value was built from the operation's own output schema. */
export const anyAnswer = z.discriminatedUnion('ok', [
  z.object({ ok: z.literal(true), value: z.unknown() }),
  z.object({ ok: z.literal(false), error: refusalBody }),
]);

const callMessage = z.object({
  kind: z.literal('call'),
  id: z.int().positive(),
  name: z.string().max(100),
  input: z.unknown(),
});

/** To the store's thread. */
export const toStore = z.discriminatedUnion('kind', [callMessage, z.object({ kind: z.literal('close') })]);
export type ToStore = z.infer<typeof toStore>;

/** From the store's thread: how opening went, answers, changes, and that the file is closed. */
export const fromStore = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('open') }),
  z.object({ kind: z.literal('refused'), error: refusalBody }),
  z.object({ kind: z.literal('answer'), id: z.int().positive(), answer: anyAnswer }),
  progress.extend({ kind: z.literal('progress'), id: z.int().positive() }),
  z.object({ kind: z.literal('changed'), topic: z.literal('changed'), seq: z.int().nonnegative() }),
  z.object({ kind: z.literal('closed') }),
]);
export type FromStore = z.infer<typeof fromStore>;

/** The client's end of the line: a worker thread or a utility process. */
export interface StoreLine {
  post(message: ToStore): void;
  /** Calls off the work of one call; told beside the messages, which a busy store does not read. */
  cancel(id: number): void;
  onMessage(listener: (message: unknown) => void): void;
  /** Called once when the thread has ended, for whatever reason. */
  onEnd(listener: (reason: string) => void): void;
  /** Ends the thread at once; called when it has said its last word, or does not say it in time. */
  kill(): void;
}

/** The store's end of the line. */
export interface ClientLine {
  post(message: FromStore): void;
  /** Whether the client has called off the work of this call. */
  cancelled(id: number): boolean;
  onMessage(listener: (message: unknown) => void): void;
}
