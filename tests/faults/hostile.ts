import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import Database from 'better-sqlite3';
import { wrap } from '../../src/store/connection.ts';
import { examine } from '../../src/store/examine.ts';
import { randomNumbers } from '../support/history.ts';
import { type Figure, Tally } from './figure.ts';
import { contentOf, grownCatalogue, inFolder } from './files.ts';
import { Shadow } from './shadow.ts';
import { hostileSql, type Mode, setMode, tablesOf } from './sql.ts';

/** Every way a connection can be set, the program's own first. */
export const MODES: readonly Mode[] = [false, true].flatMap((ignoreChecks) =>
  [true, false].flatMap((foreignKeys) =>
    [false, true].map((recursiveTriggers) => ({ recursiveTriggers, foreignKeys, ignoreChecks })),
  ),
);

/** Runs a statement; a transaction left open is ended. Answers whether it was taken. */
function run(raw: Database.Database, sql: string): boolean {
  try {
    raw.exec(sql);
    return true;
  } catch {
    if (raw.inTransaction) raw.exec('ROLLBACK');
    return false;
  }
}

interface Attack {
  faults: string[];
  taken: number;
  named: boolean;
}

/** Attacks one file with so many statements, and has it examined as the program would. */
function attack(file: string, mode: Mode, next: () => number, statements: number): Attack {
  const raw = new Database(file);
  try {
    setMode(raw, mode);
    const before = contentOf(raw);
    const shadow = new Shadow(raw);
    const faults = shadow.observe();
    const tables = tablesOf(raw);
    let taken = 0;
    for (let at = 0; at < statements && faults.length === 0; at += 1) {
      const numbers = Array.from({ length: 24 }, () => next() % 1_000_003);
      const sql = hostileSql(numbers, tables);
      if (!run(raw, sql)) continue;
      taken += 1;
      faults.push(...shadow.observe().map((fault) => `${fault}, by: ${sql}`));
    }
    const changed = !isDeepStrictEqual(contentOf(raw), before);
    const found = examine(wrap(raw));
    if (changed && found.ok) faults.push('the content changed and the check says nothing');
    return { faults, taken, named: changed && !found.ok };
  } finally {
    raw.close();
  }
}

const nameOf = (mode: Mode) =>
  `foreign keys ${mode.foreignKeys ? 'on' : 'off'}, recursive triggers ${mode.recursiveTriggers ? 'on' : 'off'}, checks ${mode.ignoreChecks ? 'ignored' : 'on'}`;

/** Hostile statements past the program, in every mode, on copies of one grown catalogue. */
export function hostileStatements(statements: number, seed: number, perFile = 60): Figure {
  return inFolder((folder) => {
    const tally = new Tally('hostile SQL statements');
    const base = join(folder, 'base.ledger');
    grownCatalogue(base, 150);
    const next = randomNumbers(seed);
    for (let run = 0; tally.tried < statements; run += 1) {
      const mode = MODES[run % MODES.length] as Mode;
      const file = join(folder, 'attacked.ledger');
      copyFileSync(base, file);
      const { faults, taken, named } = attack(file, mode, next, perFile);
      tally.add(faults.length > 0 ? [`${nameOf(mode)}: ${faults.slice(0, 2).join('; ')}`] : [], perFile);
      tally.count('statements the file took', taken);
      tally.count('files attacked');
      if (named) tally.count('files whose check names the change');
    }
    return tally.figure();
  });
}
