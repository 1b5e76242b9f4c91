import { hash } from 'node:crypto';
import type { Step } from '../contract/jobs.ts';
import type { JournalEntry, JournalSort } from '../contract/journal.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { type JournalRow, type WorksFound, workOf } from './journal-works.ts';

/** Entries sealed at once; between two such pages the work can be called off. */
const SEALED_AT_ONCE = 5_000;

/** What the first entry is chained to. */
export const CHAIN_START = '0'.repeat(64);

interface EntryRow {
  seq: number;
  entity: string;
  row_key: string;
  action: JournalEntry['action'];
  before: string | null;
  after: string | null;
  at: string;
  operation: string;
  command_seq: number;
  work_id: number | null;
  previous_hash: string;
  hash: string;
}

/** The hash that seals an entry: SHA-256 over the previous hash and every fact of the entry, in this order. */
export function sealOf(entry: Omit<EntryRow, 'hash'>): string {
  const facts = [
    entry.previous_hash,
    entry.seq,
    entry.at,
    entry.operation,
    entry.command_seq,
    entry.entity,
    entry.row_key,
    entry.action,
    entry.work_id,
    entry.before,
    entry.after,
  ];
  return hash('sha256', JSON.stringify(facts));
}

/** Hash of the newest sealed entry. */
export function journalHead(db: ReadDb): { seq: number; hash: string } {
  return (
    db.one<{ seq: number; hash: string }>(
      'SELECT seq, hash FROM journal WHERE hash IS NOT NULL ORDER BY seq DESC LIMIT 1',
    ) ?? { seq: 0, hash: CHAIN_START }
  );
}

/** The newest entry's sequence number, sealed or not. */
export function newestEntry(db: ReadDb): number {
  return db.one<{ seq: number }>('SELECT coalesce(max(seq), 0) AS seq FROM journal')?.seq ?? 0;
}

/**
 * Seals the entries that the triggers wrote in this transaction: moment, operation, work and chained hash.
 * Entries up to `since` that stand unsealed were written by another program and stay so, for the check to name.
 * Returns the newest sequence number, or null when nothing changed. `step` hears of each page and may throw CANCELLED.
 */
export function sealJournal(
  db: WriteDb,
  operation: string,
  at: string,
  since: number,
  step?: Step,
): number | null {
  // A page at a time: an import writes more entries than should stand in memory at once.
  const pageAfter = (seq: number) =>
    db.all<EntryRow>(
      'SELECT * FROM journal WHERE hash IS NULL AND seq > ? ORDER BY seq LIMIT ?',
      seq,
      SEALED_AT_ONCE,
    );
  let page = pageAfter(since);
  const first = page[0];
  if (!first) return null;
  const before = db.one<{ hash: string; at: string }>(
    'SELECT hash, at FROM journal WHERE seq < ? AND hash IS NOT NULL ORDER BY seq DESC LIMIT 1',
    first.seq,
  );
  let previous = before?.hash ?? CHAIN_START;
  // A clock set back must not put the journal out of order; the user is warned of it elsewhere.
  const moment = before && before.at > at ? before.at : at;
  const works: WorksFound = new Map();
  const total = newestEntry(db) - since;
  let newest = first.seq;
  for (; page.length > 0; page = pageAfter(newest)) {
    const seals: Seal[] = [];
    for (const entry of page) {
      const row = JSON.parse(entry.after ?? entry.before ?? '{}') as JournalRow;
      const work_id = workOf(db, entry.entity, row, works);
      const stamp = { at: moment, operation, command_seq: first.seq, previous_hash: previous };
      const hash = sealOf({ ...entry, ...stamp, work_id });
      seals.push([entry.seq, work_id, previous, hash]);
      previous = hash;
      newest = entry.seq;
    }
    writeSeals(db, moment, operation, first.seq, seals);
    step?.(newest - since, total, 'entries sealed in the journal');
  }
  return newest;
}

/** Sequence number, work, hash before and own hash of an entry. */
type Seal = [number, number | null, string, string];

/** Writes the seals of one command's entries together: a statement an entry takes three times as long. */
function writeSeals(db: WriteDb, at: string, operation: string, commandSeq: number, seals: Seal[]): void {
  db.run(
    `UPDATE journal SET at = ?, operation = ?, command_seq = ?, work_id = seal.work_id,
       previous_hash = seal.previous_hash, hash = seal.hash
     FROM (SELECT value ->> 0 AS seq, value ->> 1 AS work_id, value ->> 2 AS previous_hash, value ->> 3 AS hash
       FROM json_each(?)) AS seal
     WHERE journal.seq = seal.seq`,
    at,
    operation,
    commandSeq,
    JSON.stringify(seals),
  );
}

/**
 * The facts of an entry as its seal covers them, written by SQLite: half the cost of reading every column. It may write a
 * rare character in another way than `sealOf`, so what does not match is asked of `sealOf` before it is called broken;
 * what matches is the very text that was sealed.
 */
const FACTS =
  'json_array(previous_hash, seq, at, operation, command_seq, entity, row_key, action, work_id, before, after)';

interface Sealed {
  facts: string;
  hash: string | null;
}

/** Whether the entry of a number follows on the one before and is as it was sealed. */
function holds(db: ReadDb, { facts, hash: seal }: Sealed, seq: number, previous: string): boolean {
  if (facts.startsWith(`["${previous}",${seq},`) && hash('sha256', facts) === seal) return true;
  const row = db.one<EntryRow>('SELECT * FROM journal WHERE seq = ?', seq);
  return row !== undefined && row.previous_hash === previous && sealOf(row) === row.hash;
}

/** Walks the whole chain; names the first entry that is unsealed, altered or out of order. */
export function verifyJournal(db: ReadDb): {
  entries: number;
  ok: boolean;
  firstBroken: number | null;
  head: string;
} {
  let previous = CHAIN_START;
  let entries = 0;
  const page = 2_000;
  for (;;) {
    const rows = db.all<Sealed>(
      `SELECT ${FACTS} AS facts, hash FROM journal WHERE seq > ? ORDER BY seq LIMIT ?`,
      entries,
      page,
    );
    for (const row of rows) {
      // Entries are numbered from 1 without a gap.
      const seq = entries + 1;
      if (row.hash === null || !holds(db, row, seq, previous))
        return { entries, ok: false, firstBroken: seq, head: previous };
      previous = row.hash;
      entries += 1;
    }
    if (rows.length < page) return { entries, ok: true, firstBroken: null, head: previous };
  }
}

interface JournalFilter {
  workId?: number | undefined;
  entity?: string | undefined;
  before?: number | undefined;
}

/** The sealed entries of a filter, as a condition. */
function passing(filter: JournalFilter): { where: string; params: unknown[] } {
  const where = ['hash IS NOT NULL'];
  const params: unknown[] = [];
  const also = (condition: string, value: unknown) => {
    if (value === undefined) return;
    where.push(condition);
    params.push(value);
  };
  also('work_id = ?', filter.workId);
  also('entity = ?', filter.entity);
  also('seq < ?', filter.before);
  return { where: where.join(' AND '), params };
}

/** Entries newest first; one more than asked for is read to know whether there are more. */
export function readJournal(
  db: ReadDb,
  filter: JournalFilter & { count: number },
): Omit<JournalEntry, 'about'>[] {
  const { where, params } = passing(filter);
  const rows = db.all<EntryRow>(
    `SELECT * FROM journal WHERE ${where} ORDER BY seq DESC LIMIT ?`,
    ...params,
    filter.count + 1,
  );
  return rows.map(entryOf);
}

const ORDER: Record<JournalSort['by'], string> = {
  time: 'seq',
  operation: 'operation',
  record: 'entity',
  action: 'action',
};

/** A page of the entries in any order, and how many there are in all. */
export function journalPage(
  db: ReadDb,
  filter: JournalFilter & { sort: JournalSort; from: number; count: number },
): { rows: Omit<JournalEntry, 'about'>[]; total: number } {
  const { where, params } = passing(filter);
  const { by, down } = filter.sort;
  const rows = db.all<EntryRow>(
    `SELECT j.* FROM (SELECT seq FROM journal WHERE ${where} ORDER BY ${ORDER[by]} ${down ? 'DESC' : 'ASC'}, seq DESC
       LIMIT ? OFFSET ?) p JOIN journal j ON j.seq = p.seq
     ORDER BY j.${ORDER[by]} ${down ? 'DESC' : 'ASC'}, j.seq DESC`,
    ...params,
    filter.count,
    filter.from,
  );
  const total = db.one<{ n: number }>(`SELECT count(*) AS n FROM journal WHERE ${where}`, ...params)?.n ?? 0;
  return { rows: rows.map(entryOf), total };
}

/** The entries of the newest command, newest first. */
export function readCommand(db: ReadDb): Omit<JournalEntry, 'about'>[] {
  const rows = db.all<EntryRow>(
    `SELECT * FROM journal WHERE hash IS NOT NULL AND command_seq = (
       SELECT command_seq FROM journal WHERE hash IS NOT NULL ORDER BY seq DESC LIMIT 1) ORDER BY seq DESC`,
  );
  return rows.map(entryOf);
}

/** Whether this journal holds exactly this entry. */
export function hasEntry(db: ReadDb, entry: { seq: number; hash: string }): boolean {
  return db.one('SELECT 1 FROM journal WHERE seq = ? AND hash = ?', entry.seq, entry.hash) !== undefined;
}

/** The commands carried out after an entry, newest first, at most `most` of them, and how many there are. */
export function commandsSince(
  db: ReadDb,
  seq: number,
  most: number,
): { commands: { at: string; operation: string; entries: number }[]; total: number } {
  const commands = db.all<{ at: string; operation: string; entries: number }>(
    `SELECT max(at) AS at, max(operation) AS operation, count(*) AS entries FROM journal
     WHERE seq > ? AND hash IS NOT NULL GROUP BY command_seq ORDER BY command_seq DESC LIMIT ?`,
    seq,
    most,
  );
  const total =
    db.one<{ n: number }>('SELECT count(DISTINCT command_seq) AS n FROM journal WHERE seq > ?', seq)?.n ?? 0;
  return { commands, total };
}

function entryOf(row: EntryRow): Omit<JournalEntry, 'about'> {
  return {
    seq: row.seq,
    at: row.at,
    operation: row.operation,
    commandSeq: row.command_seq,
    entity: row.entity,
    rowKey: row.row_key,
    action: row.action,
    workId: row.work_id,
    before: row.before === null ? null : (JSON.parse(row.before) as JournalRow),
    after: row.after === null ? null : (JSON.parse(row.after) as JournalRow),
    hash: row.hash,
  };
}
