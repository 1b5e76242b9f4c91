import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type App, type OpenOptions, openApp } from '../../src/app.ts';
import type { LongCommandContext } from '../../src/commands/context.ts';
import type { InputOf, OperationName, OutputOf, ReadingName } from '../../src/contract/index.ts';
import type { Answer } from '../../src/contract/operation.ts';
import type { RefusalBody } from '../../src/contract/refusal.ts';
import { Refusal } from '../../src/contract/refusal.ts';
import type { LongQueryContext } from '../../src/queries/context.ts';
import { KeptAudit } from '../../src/records/kept-audit.ts';
import { type CatalogueFile, openCatalogueFile } from '../../src/store/catalogue-file.ts';
import { Staging } from '../../src/store/staging.ts';

/** A Monday; the clock of a test catalogue stands here until it is set. */
export const MONDAY = '2026-03-02';

const moment = (day: string) => `${day}T10:00:00.000Z`;

function temporaryFolder(): { path: string; remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'edition-ledger-'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}

export interface TestCatalogue {
  readonly app: App;
  /** Path of the real file, in a folder of its own that `close` removes. */
  readonly file: string;
  /** Runs an operation and gives its value; a refusal is thrown as a Refusal. */
  call<N extends OperationName>(name: N, input: InputOf<N>): OutputOf<N>;
  /** Runs an operation that must be refused and gives the refusal; throws when it was carried out. */
  refusal<N extends OperationName>(name: N, input: InputOf<N>): RefusalBody;
  /** Reads a file in its thread and gives what it answers. */
  read<N extends ReadingName>(name: N, input: InputOf<N>): Promise<OutputOf<N>>;
  /** Sets the clock to a day. */
  setToday(day: string): void;
  close(): void;
}

/** Opens a new catalogue file in a temporary folder, through the whole app, with a clock that stands still. */
export function openTestCatalogue(today = MONDAY, options: Partial<OpenOptions> = {}): TestCatalogue {
  const folder = temporaryFolder();
  const file = join(folder.path, 'test.ledger');
  let day = today;
  const app = openApp({ file, today: () => day, now: () => new Date(moment(day)), ...options });
  const told = <N extends OperationName>(answer: Answer<unknown>): OutputOf<N> => {
    if (!answer.ok) throw new Refusal(answer.error.code, answer.error.message, answer.error.field);
    return answer.value as OutputOf<N>;
  };
  return {
    app,
    file,
    call: (name, input) => told(app.call(name, input)),
    read: async (name, input) => told<typeof name>(await app.read(name, input)),
    refusal: (name, input) => {
      const answer = app.call(name, input);
      if (answer.ok) throw new Error(`${name} was carried out: ${JSON.stringify(answer.value)}`);
      return answer.error;
    },
    setToday: (next) => {
      day = next;
    },
    close: () => {
      app.close();
      folder.remove();
    },
  };
}

export interface TestFile {
  readonly file: CatalogueFile;
  /** Runs work as one command, in its transaction, at the clock's day. */
  command<T>(work: (context: LongCommandContext) => T): T;
  /** Runs work as a query, at the clock's day. */
  query<T>(work: (context: LongQueryContext) => T): T;
  setToday(day: string): void;
  close(): void;
}

/** Opens a new catalogue file below the dispatcher, for tests of single command and query functions. */
export function openTestFile(today = MONDAY): TestFile {
  const folder = temporaryFolder();
  let day = today;
  const files = new Staging();
  const step = () => {};
  const file = openCatalogueFile(join(folder.path, 'test.ledger'), { at: moment(day) });
  return {
    file,
    command: (work) => file.change('test', moment(day), (db) => work({ db, today: day, files, step })).value,
    query: (work) =>
      work({
        db: file.read,
        on: () => file.read,
        audit: new KeptAudit(file.read),
        today: day,
        files,
        step,
        file: {
          path: file.file,
          name: file.fileName,
          readOnly: file.readOnly,
          warnings: [],
          schemaVersion: file.schemaVersion,
        },
      }),
    setToday: (next) => {
      day = next;
    },
    close: () => {
      files.close();
      file.close();
      folder.remove();
    },
  };
}

/** The Refusal that work throws; an error of another kind, or none, fails the test. */
export function refusalOf(work: () => unknown): Refusal {
  try {
    work();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('Nothing was refused.');
}
