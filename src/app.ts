import Database from 'better-sqlite3';
import type { Answer } from './contract/operation.ts';
import { Refusal } from './contract/refusal.ts';
import { type Clock, dispatcher } from './dispatch.ts';
import type { QueryContext } from './queries/context.ts';
import { rewind } from './store/as-of.ts';
import { type CatalogueFile, openCatalogueFile } from './store/catalogue-file.ts';
import type { ReadDb } from './store/connection.ts';
import { journalHead } from './store/journal.ts';
import { replayDifferences } from './store/replay.ts';

/** How a catalogue is opened. `today` and `now` are the clock, replaceable in tests. */
export interface OpenOptions {
  /** Path of the `.ledger` file; it is made when missing. */
  file: string;
  readOnly?: boolean;
  /** Local calendar day, YYYY-MM-DD. */
  today?: () => string;
  /** Moment for the journal. */
  now?: () => Date;
}

/** An open catalogue: the one import for electron, host, command line and tests. Calls are synchronous inside. */
export interface App {
  /** Runs an operation of the contract by name; never throws for refusals. */
  call(name: string, input: unknown): Answer<unknown>;
  /** Calls back after every command that changed something, with the journal's newest sequence number. */
  onChange(listener: (seq: number) => void): () => void;
  close(): void;
}

/** The calendar day where this computer is. */
function localDay(now: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Keeps the last few rewound connections; a change to the file lets them all go. */
function pastDays(file: CatalogueFile): { on(day: string): ReadDb; forget(): void } {
  const kept = new Map<string, { raw: Database.Database; db: ReadDb; seq: number }>();
  const drop = (day: string) => {
    kept.get(day)?.raw.close();
    kept.delete(day);
  };
  return {
    on: (day) => {
      const seq = journalHead(file.read).seq;
      const known = kept.get(day);
      if (known?.seq === seq) return known.db;
      drop(day);
      const oldest = kept.size >= 3 ? kept.keys().next().value : undefined;
      if (oldest) drop(oldest);
      const raw = new Database(file.file, { readonly: true, fileMustExist: true });
      const db = rewind(raw, day);
      kept.set(day, { raw, db, seq });
      return db;
    },
    forget: () => {
      for (const day of [...kept.keys()]) drop(day);
    },
  };
}

/** Opens a catalogue. Throws a Refusal when the file cannot be used. */
export function openApp(options: OpenOptions): App {
  const now = options.now ?? (() => new Date());
  const clock: Clock = { now, today: options.today ?? (() => localDay(now())) };
  const file = openCatalogueFile(options.file, {
    readOnly: options.readOnly ?? false,
    at: now().toISOString(),
  });
  const past = pastDays(file);
  const listeners = new Set<(seq: number) => void>();
  const query: QueryContext = {
    db: file.read,
    on: (day) => {
      if (day === undefined) return file.read;
      if (day > clock.today())
        throw new Refusal('BAD_INPUT', `${day} is not a past day; choose today or earlier.`, 'asOf');
      return past.on(day);
    },
    get today() {
      return clock.today();
    },
    replayDifferences: () => replayDifferences(file.rawRead, file.read),
    file: {
      path: file.file,
      name: file.fileName,
      readOnly: file.readOnly,
      schemaVersion: file.schemaVersion,
    },
  };
  const call = dispatcher(file, clock, query, (seq) => {
    for (const listener of listeners) listener(seq);
  });
  return {
    call,
    onChange: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: () => {
      past.forget();
      file.close();
    },
  };
}
