import { z } from 'zod';
import { operation, rowId } from './operation.ts';

const row = z.record(z.string(), z.union([z.string(), z.number(), z.null()]));

export const journalEntry = z.object({
  seq: z.int(),
  at: z.string(),
  operation: z.string(),
  /** First entry of the same command; entries of one command share it. */
  commandSeq: z.int(),
  entity: z.string(),
  rowKey: z.string(),
  action: z.enum(['added', 'changed', 'removed']),
  /** What the row is called, for reading: 'The Salt Almanac, 2nd edition · Paperback'. */
  about: z.string(),
  workId: rowId.nullable(),
  before: row.nullable(),
  after: row.nullable(),
  hash: z.string(),
});
export type JournalEntry = z.infer<typeof journalEntry>;

export const listJournal = operation({
  name: 'journal.list',
  kind: 'query',
  summary: 'Every change with what stood before and after, newest first; filter by work.',
  input: z.object({
    workId: rowId.optional(),
    entity: z.string().optional(),
    /** Entries before this sequence number, for paging. */
    before: z.int().optional(),
    count: z.int().min(1).max(1000).default(100),
  }),
  output: z.object({ entries: z.array(journalEntry), more: z.boolean() }),
  errors: [],
});

export const JOURNAL_SORTS = ['time', 'operation', 'record', 'action'] as const;
export type JournalSort = { by: (typeof JOURNAL_SORTS)[number]; down: boolean };

export const readJournalRows = operation({
  name: 'journal.rows',
  kind: 'query',
  summary:
    'The journal as a table, a page at a time in the order asked for; entries that are alike in it come newest first.',
  input: z.object({
    workId: rowId.optional(),
    entity: z.string().optional(),
    sort: z.object({ by: z.enum(JOURNAL_SORTS), down: z.boolean() }).default({ by: 'time', down: true }),
    from: z.int().nonnegative().default(0),
    count: z.int().min(1).max(1000).default(100),
  }),
  output: z.object({ rows: z.array(journalEntry), total: z.int() }),
  errors: [],
});

export const undoChange = operation({
  name: 'journal.undo',
  kind: 'command',
  summary:
    'Undo the last change, as a new entry, where the standings allow it: a number once assigned and a step once taken stay.',
  /** The command that is meant, so that nothing else is undone by mistake. */
  input: z.object({ commandSeq: z.int() }),
  output: z.object({ undone: z.string(), entries: z.int() }),
  errors: ['STEP_REFUSED'],
});
