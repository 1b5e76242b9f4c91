import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import type { App } from '../app.ts';
import type { InputOf, OperationName, OutputOf, ReadingName } from '../contract/index.ts';
import type { Follower } from '../contract/jobs.ts';
import type { Answer } from '../contract/operation.ts';
import { Refusal } from '../contract/refusal.ts';
import type { Common } from './command.ts';
import { type ExitCode, Failure } from './failure.ts';
import type { Io } from './io.ts';

export const DEMO_CAUTION = 'Demo catalogue: its numbers are invented and must never be printed.';

/** An open catalogue as commands use it. */
export interface Catalogue {
  /** Carries out one operation; a refusal becomes a `Failure` with exit code 1, or the one given. */
  call<N extends OperationName>(name: N, input: InputOf<N>): OutputOf<N>;
  /** Reads a file of the user's beside the catalogue; a refusal becomes a `Failure` as well. */
  read<N extends ReadingName>(name: N, input: InputOf<N>): Promise<OutputOf<N>>;
}

async function open(file: string, readOnly: boolean): Promise<App> {
  const path = resolve(file);
  if (readOnly && !existsSync(path)) {
    const message = `There is no catalogue at ${path}; npm start, edition-ledger demo or edition-ledger block add makes one, or name another with --catalogue FILE.`;
    throw new Failure({ code: 'NOT_FOUND', message, field: 'catalogue' }, 2);
  }
  // The store is most of the program; help and misuse need not wait until it is loaded.
  const { openApp } = await import('../app.ts');
  try {
    // A command ends at once and would take no backup with it: it waits for the backup however large the file is.
    return openApp({ file: path, readOnly, backup: { besideFrom: Number.POSITIVE_INFINITY } });
  } catch (error) {
    if (error instanceof Refusal) throw new Failure(error.body(), 2);
    throw error;
  }
}

/** Milliseconds after which a person at the terminal is told how far long work has come, and between two words. */
const SPOKEN_MS = 2_000;

/** Tells on stderr how far long work has come. Ctrl+C ends it; what was not finished is taken back. */
function spoken(io: Io): Follower {
  let last = performance.now();
  return {
    progress: ({ done, total, what }) => {
      if (performance.now() - last < SPOKEN_MS) return;
      last = performance.now();
      const of = total === null ? '' : ` of ${total.toLocaleString('en')}`;
      io.err(`${done.toLocaleString('en')}${of} ${what}`);
    },
    cancelled: () => false,
  };
}

/**
 * Opens the catalogue, runs `work` and closes it again. 'read' opens for reading only, which works while the
 * window holds the file. When the catalogue is the demo, the caution is printed after the answer: with it in
 * text, on stderr beside JSON, whose form is the contract's.
 */
export async function withCatalogue<T>(
  flags: Common,
  io: Io,
  access: 'read' | 'write',
  work: (catalogue: Catalogue) => T | Promise<T>,
  refusedAs: ExitCode = 1,
): Promise<T> {
  const app = await open(flags.catalogue, access === 'read');
  try {
    const told = <N extends OperationName>(answer: Answer<unknown>): OutputOf<N> => {
      if (!answer.ok) throw new Failure(answer.error, refusedAs);
      return answer.value as OutputOf<N>;
    };
    const follower = () => (flags.json ? undefined : spoken(io));
    const call: Catalogue['call'] = (name, input) => told(app.call(name, input, follower()));
    const read: Catalogue['read'] = async (name, input) =>
      told<typeof name>(await app.read(name, input, follower()));
    const result = await work({ call, read });
    if (call('catalogue.info', {}).demo) (flags.json ? io.err : io.out)(DEMO_CAUTION);
    return result;
  } finally {
    app.close();
  }
}

/** Prints a value as JSON, indented for people who read it all the same. */
export function printJson(io: Io, value: unknown): void {
  io.out(JSON.stringify(value, null, 2));
}
