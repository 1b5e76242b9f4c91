import type { z } from 'zod';
import { edition } from '../contract/editions.ts';
import type { Step } from '../contract/jobs.ts';
import { Refusal } from '../contract/refusal.ts';
import { Rehearsal } from '../contract/rehearsal.ts';
import { type WholeCatalogue, wholeCatalogue } from '../contract/whole.ts';
import { work } from '../contract/works.ts';
import { editionFacts } from '../records/editions.ts';
import type { ReadDb, WriteDb } from '../store/connection.ts';
import { editionsByIds } from '../store/editions.ts';
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

const bareWork = work.omit({ editions: true });
/** Editions looked at together. */
const AT_ONCE = 200;

/**
 * Refuses a file of which something could be stored but never be shown again: texts, lists and numbers beyond the bounds
 * of the contract. Everything that was taken over is read as the Work screen reads it.
 */
function refuseUnreadable(db: ReadDb, step: Step): void {
  const works = db.all<{ id: number; title: string; note: string }>('SELECT id, title, note FROM work');
  const ids = db.all<{ id: number }>('SELECT id FROM edition ORDER BY id').map(({ id }) => id);
  const refuse = (what: string, issue: z.core.$ZodIssue | undefined) => {
    const where = issue?.path.length ? ` at ${issue.path.join('.').slice(0, 100)}` : '';
    throw new Refusal(
      'BAD_INPUT',
      `${what} of this file cannot be taken over${where}: ${issue?.message ?? 'it has an odd shape'} Nothing was changed; mend it where the file was made.`,
      'file',
    );
  };
  for (const row of works) {
    const { error } = bareWork.safeParse(row);
    if (error) refuse(`Work ${row.id}`, error.issues[0]);
  }
  for (let at = 0; at < ids.length; at += AT_ONCE) {
    for (const facts of editionFacts(db, editionsByIds(db, ids.slice(at, at + AT_ONCE)))) {
      const { error } = edition.safeParse(facts);
      if (error) refuse(`Edition ${facts.id}`, error.issues[0]);
    }
    step(Math.min(at + AT_ONCE, ids.length), ids.length, 'editions looked at');
  }
}

/** Puts the tables in and looks at what came of them. */
function takeIn(db: WriteDb, whole: WholeCatalogue, step: Step): void {
  try {
    loadWhole(db, whole, step);
    refuseUnreadable(db, step);
  } catch (error) {
    // Some columns hold JSON of their own, which SQLite reads when it is looked at.
    if (!(error instanceof Error) || !/malformed JSON/.test(error.message)) throw error;
    throw new Refusal(
      'BAD_INPUT',
      'A value in this file that should be JSON is damaged. Nothing was changed; export the catalogue anew.',
      'file',
    );
  }
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
    takeIn(db, whole, step);
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
