import { join } from 'node:path';
import Database from 'better-sqlite3';
import { type App, openApp } from '../../../src/app.ts';
import { type ReadDb, wrap } from '../../../src/store/connection.ts';
import { grownCopy, LAST_DAY } from '../../support/generator/index.ts';

/** A catalogue of some size as a line of the table finds it: the open program, and a bare connection beside it. */
export interface World {
  formats: number;
  file: string;
  folder: string;
  db: ReadDb;
  raw: Database.Database;
  /** Runs an operation; throws where it is refused. */
  call<T>(name: string, input: object): T;
  /** Closes the program and opens the file again. */
  reopen(): void;
  /** A file with the same tables and none of their triggers, for bare writes. */
  scratch: Database.Database;
  close(): void;
}

function scratchOf(file: string, from: Database.Database): Database.Database {
  const scratch = new Database(file);
  scratch.pragma('journal_mode = WAL');
  scratch.pragma('synchronous = FULL');
  const made = from
    .prepare(
      "SELECT sql FROM sqlite_schema WHERE type IN ('table', 'index') AND sql IS NOT NULL AND name NOT LIKE 'search%' AND name NOT LIKE 'sqlite%' ORDER BY type DESC, rowid",
    )
    .pluck()
    .all() as string[];
  for (const sql of made) scratch.exec(sql);
  return scratch;
}

export function worldOf(formats: number, folder: string): World {
  const file = grownCopy({ formats }, folder);
  const open = (): App =>
    openApp({ file, today: () => LAST_DAY, now: () => new Date(`${LAST_DAY}T10:00:00Z`) });
  let app = open();
  const raw = new Database(file, { readonly: true });
  const scratch = scratchOf(join(folder, `scratch-${formats}.ledger`), raw);
  return {
    formats,
    file,
    folder,
    raw,
    scratch,
    db: wrap(raw),
    call: <T>(name: string, input: object) => {
      const answer = app.call(name, input);
      if (!answer.ok) throw new Error(`${name}: ${answer.error.message}`);
      return answer.value as T;
    },
    reopen: () => {
      app.close();
      app = open();
    },
    close: () => {
      raw.close();
      scratch.close();
      app.close();
    },
  };
}
