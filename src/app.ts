import Database from 'better-sqlite3';
import type { Follower } from './contract/jobs.ts';
import type { Answer } from './contract/operation.ts';
import { Refusal } from './contract/refusal.ts';
import { type Clock, dispatcher, readingDispatcher, type Session } from './dispatch.ts';
import { keepCalendar } from './errands/calendar.ts';
import { type BackupOptions, backUpToday, type DailyBackup, USUAL_BACKUP } from './errands/daily-backup.ts';
import type { QueryContext } from './queries/context.ts';
import type { ReaderOptions } from './readings/context.ts';
import { KeptAudit } from './records/kept-audit.ts';
import { adoptRangeTable } from './records/ranges.ts';
import { rewind } from './store/as-of.ts';
import { ASKED_FOR, type CatalogueFile, openCatalogueFile } from './store/catalogue-file.ts';
import type { ReadDb } from './store/connection.ts';
import { exchangeFile } from './store/exchange-file.ts';
import { journalHead } from './store/journal.ts';
import { Staging } from './store/staging.ts';
import { clockWarning, folderWarning } from './store/surroundings.ts';

/** How a catalogue is opened. `today` and `now` are the clock, replaceable in tests. */
export interface OpenOptions {
  /** Path of the `.ledger` file; it is made when missing. */
  file: string;
  readOnly?: boolean;
  /** Full path of the program's error log, for the user to read; left out where none is kept. */
  log?: string;
  /** How users' files are read, where it differs from the usual. */
  reader?: Partial<ReaderOptions>;
  /** How the day's backup is taken, where it differs from the usual. */
  backup?: Partial<BackupOptions>;
  /** Local calendar day, YYYY-MM-DD. */
  today?: () => string;
  /** Moment for the journal. */
  now?: () => Date;
}

/** An open catalogue: the one import for electron, host, command line and tests. Calls are synchronous inside. */
export interface App {
  /** Runs an operation of the contract by name; never throws for refusals. A follower hears how far it has come. */
  call(name: string, input: unknown, follower?: Follower): Answer<unknown>;
  /** Runs a reading of the contract in a thread of its own; other calls are answered meanwhile. Never rejects. */
  read(name: string, input: unknown, follower?: Follower): Promise<Answer<unknown>>;
  /** Calls back after every command that changed something, with the journal's newest sequence number. */
  onChange(listener: (seq: number) => void): () => void;
  /**
   * Works today's audit out by one small part, where it is not at hand; true when nothing is left to do. Whoever has
   * time between calls calls it again and again, so that nobody has to wait for the whole.
   */
  advance(): boolean;
  close(): void;
}

/** The calendar day where this computer is. */
function localDay(now: Date): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

interface PastDays {
  on(day: string): ReadDb;
  forget(): void;
}

/** Keeps the last few days that were looked at. A connection goes on to another day: opening one reads the whole schema. */
function pastDays(file: CatalogueFile): PastDays {
  const kept = new Map<string, { raw: Database.Database; db: ReadDb; seq: number }>();
  /** The connection of this day before the file was changed, or the one longest away once there are enough. */
  const free = (day: string): Database.Database | undefined => {
    const from = kept.has(day) ? day : kept.size >= 3 ? kept.keys().next().value : undefined;
    const raw = from === undefined ? undefined : kept.get(from)?.raw;
    if (from !== undefined) kept.delete(from);
    return raw;
  };
  return {
    on: (day) => {
      const seq = journalHead(file.read).seq;
      const known = kept.get(day);
      if (known?.seq === seq) return known.db;
      const raw = free(day) ?? new Database(file.readFrom, { readonly: true, fileMustExist: true });
      try {
        const db = rewind(raw, day);
        kept.set(day, { raw, db, seq });
        return db;
      } catch (error) {
        raw.close();
        throw error;
      }
    },
    forget: () => {
      for (const { raw } of kept.values()) raw.close();
      kept.clear();
    },
  };
}

/** Cautions about the file as it was opened: where it lies, the clock, why it is read only, backups that fail. */
function warningsOf(file: CatalogueFile, clock: Clock): string[] {
  const head = journalHead(file.read);
  const last = file.read.one<{ at: string }>('SELECT at FROM journal WHERE seq = ?', head.seq)?.at;
  const asked = file.readOnlyReason === ASKED_FOR ? null : file.readOnlyReason;
  const own = [asked, folderWarning(file.file), clockWarning(clock.now(), last)];
  return [...file.cautions, ...own.filter((text) => text !== null)];
}

/** What queries work with, always of the file that is open now. */
function queryContext(
  session: { file: CatalogueFile; warnings: string[]; past: PastDays; audit: KeptAudit },
  clock: Clock,
): QueryContext {
  return {
    get db() {
      return session.file.read;
    },
    on: (day) => {
      if (day === undefined) return session.file.read;
      if (day > clock.today())
        throw new Refusal('BAD_INPUT', `${day} is not a past day; choose today or earlier.`, 'asOf');
      return session.past.on(day);
    },
    get audit() {
      return session.audit;
    },
    get today() {
      return clock.today();
    },
    get file() {
      const { file, fileName, readOnly, schemaVersion } = session.file;
      return { path: file, name: fileName, readOnly, schemaVersion, warnings: session.warnings };
    },
  };
}

/** Work for the first command of each later day: a window left open for days still gets its backup. */
function onceADay(now: () => Date, work: (at: string) => void): () => void {
  let done = now().toISOString().slice(0, 10);
  return () => {
    const at = now().toISOString();
    if (at.slice(0, 10) === done) return;
    done = at.slice(0, 10);
    work(at);
  };
}

/** A caution is told once, however often it would be. */
function noteOnce(warnings: string[], caution: string | null): void {
  if (caution !== null && !warnings.includes(caution)) warnings.push(caution);
}

/** A 300-page interior takes seconds; what takes minutes is no book. */
const USUAL_READER: ReaderOptions = {
  entry: new URL('./readings/worker.ts', import.meta.url),
  timeMs: 120_000,
  heapMb: 1_024,
};

/** What of a session lies beside the catalogue. */
function beside(options: OpenOptions, closing: AbortSignal): Pick<Session, 'log' | 'reader' | 'closing'> {
  return { log: options.log ?? null, reader: { ...USUAL_READER, ...options.reader }, closing };
}

function backUp(options: OpenOptions, file: CatalogueFile, at: string, warnings: string[]): DailyBackup {
  return backUpToday(file, at, { ...USUAL_BACKUP, ...options.backup }, (trouble) =>
    noteOnce(warnings, trouble),
  );
}

/** The open file, and what is kept beside it as long as it is open; `proven` as in OpenFileOptions. */
function openParts(options: OpenOptions, clock: Clock, proven: boolean) {
  const at = clock.now().toISOString();
  const file = openCatalogueFile(options.file, { readOnly: options.readOnly ?? false, at, proven });
  adoptRangeTable(file.read);
  const warnings = warningsOf(file, clock);
  const backup = backUp(options, file, at, warnings);
  return { file, past: pastDays(file), audit: new KeptAudit(file.read), warnings, backup };
}

/** Opens a catalogue. Throws a Refusal when the file cannot be used. */
export function openApp(options: OpenOptions): App {
  const now = options.now ?? (() => new Date());
  const clock: Clock = { now, today: options.today ?? (() => localDay(now())) };
  const open = (proven = false) => openParts(options, clock, proven);
  const opened = open();
  const listeners = new Set<(seq: number) => void>();
  const close = () => {
    opened.past.forget();
    opened.backup.end();
    opened.file.close();
  };
  const files = new Staging();
  const closing = new AbortController();
  const session: Session = {
    get file() {
      return opened.file;
    },
    query: queryContext(opened, clock),
    files,
    ...beside(options, closing.signal),
    changed: (seq) => {
      adoptRangeTable(opened.file.read);
      noteOnce(opened.warnings, keepCalendar(opened.file));
      for (const listener of listeners) listener(seq);
    },
    beforeCommand: onceADay(now, (at) => {
      opened.backup.end();
      opened.backup = backUp(options, opened.file, at, opened.warnings);
    }),
    exchange: ({ to }) => {
      const path = opened.file.file;
      close();
      try {
        // What is put in its place is proven before (src/errands/backups.ts) and compared byte by byte.
        exchangeFile(path, to, () => Object.assign(opened, open(true)));
      } catch (error) {
        Object.assign(opened, open());
        throw error;
      }
      session.changed(journalHead(opened.file.read).seq);
    },
  };
  return {
    call: dispatcher(session, clock),
    read: readingDispatcher(session),
    onChange: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    advance: () => opened.audit.advance(clock.today()),
    close: () => {
      closing.abort();
      files.close();
      close();
    },
  };
}
