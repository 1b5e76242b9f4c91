import { Refusal } from '../contract/refusal.ts';
import { Rehearsal } from '../contract/rehearsal.ts';
import { type WholeCatalogue, wholeCatalogue } from '../contract/whole.ts';
import type { ReadDb } from '../store/connection.ts';
import { loadWhole } from '../store/whole.ts';
import type { Commands } from './context.ts';
import { readJsonFile } from './json-file.ts';

function readWhole(bytes: Uint8Array, known: number): WholeCatalogue {
  const content = readJsonFile(bytes);
  const form = (content as { form?: unknown } | null)?.form;
  if (typeof form === 'number' && form > known)
    throw new Refusal(
      'CATALOGUE_NEWER',
      `This file was written by a newer Edition Ledger (form ${form}, this one knows ${known}); update Edition Ledger first.`,
      'file',
    );
  const parsed = wholeCatalogue.safeParse(content);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  const where = issue?.path.map(String).join('.') ?? '';
  throw new Refusal(
    'BAD_INPUT',
    `This file is no whole catalogue of Edition Ledger${where === '' ? '' : ` (at ${where.slice(0, 100)})`}; export it anew as JSON.`,
    'file',
  );
}

function refuseFilled(db: ReadDb): void {
  const filled = ['work', 'number_block', 'number', 'channel', 'task'].some((table) =>
    db.one(`SELECT 1 FROM "${table}"`),
  );
  if (filled)
    throw new Refusal(
      'ALREADY_EXISTS',
      'A whole catalogue is taken over into an empty one only; open a new catalogue file for it.',
    );
}

/** The form of the open file, which is the newest this program knows. */
const formOf = (db: ReadDb) => db.one<{ user_version: number }>('PRAGMA user_version')?.user_version ?? 0;

const count = (db: ReadDb, table: string) =>
  db.one<{ n: number }>(`SELECT count(*) AS n FROM "${table}"`)?.n ?? 0;

export const wholeCommands = {
  'catalogue.import': ({ db, files, step }, { file, dryRun }) => {
    refuseFilled(db);
    step(0, null, 'reading the file');
    const whole = readWhole(files.read(file), formOf(db));
    loadWhole(db, whole, step);
    const taken = {
      tables: Object.entries(whole.tables)
        .map(([table, rows]) => ({ table, rows: rows.length }))
        .filter(({ rows }) => rows > 0),
      works: count(db, 'work'),
      formats: count(db, 'format'),
      numbers: count(db, 'number'),
    };
    if (dryRun) throw new Rehearsal(taken);
    return taken;
  },
} satisfies Commands<'catalogue.import'>;
