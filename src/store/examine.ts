import type { ReadDb } from './connection.ts';
import { CHAIN_START, journalHead, verifyJournal } from './journal.ts';
import { MIGRATIONS, type Migration, readMigrations } from './migrate.ts';
import { replayDifferences } from './replay.ts';
import { schemaFaults } from './schema-check.ts';

/** What a whole examination of a catalogue file found. */
export interface Examination {
  ok: boolean;
  /** 'ok', or the first damage SQLite names. */
  integrity: string;
  /** References that lead nowhere. */
  foreignKeys: number;
  journal: ReturnType<typeof verifyJournal>;
  /** Rows that differ from what the journal says. */
  replay: string[];
  /** Tables, indexes, views and triggers that are not as this program makes them. */
  schema: string[];
  /** One sentence for each part, sound or not. */
  sentences: string[];
  /** The sentences that tell of something wrong. */
  faults: string[];
}

/** Each part as whether it is sound, and its sentence. */
function sentencesOf(found: Omit<Examination, 'ok' | 'sentences' | 'faults'>, unsealed: number) {
  const { integrity, foreignKeys, journal, replay, schema } = found;
  const strange = unsealed === 1 ? '1 entry was' : `${unsealed} entries were`;
  const sealing = unsealed > 0 ? ` (${strange} written by another program)` : '';
  const parts: [sound: boolean, good: string, bad: string][] = [
    [integrity === 'ok', 'The pages of the file are sound.', `The file is damaged: ${integrity}.`],
    [
      schema.length === 0,
      'Its rules are in force as this program writes them.',
      `Its rules were altered by another program: ${schema.slice(0, 5).join(', ')}.`,
    ],
    [
      foreignKeys === 0,
      'Every reference leads somewhere.',
      foreignKeys === 1 ? '1 reference leads nowhere.' : `${foreignKeys} references lead nowhere.`,
    ],
    [
      journal.ok,
      `The journal's ${journal.entries} entries form one unbroken chain.`,
      journal.firstBroken === null
        ? 'The journal cannot be read.'
        : `The journal is broken at entry ${journal.firstBroken}${sealing}.`,
    ],
    [
      replay.length === 0,
      'Replaying the journal gives exactly what the tables hold.',
      `The tables differ from the journal at ${replay.join(', ')}.`,
    ],
  ];
  return parts.map(([sound, good, bad]) => ({ sound, sentence: sound ? good : bad }));
}

/** The parts that need sound pages and tables. */
function readContent(db: ReadDb, proven: boolean) {
  const { seq, hash } = journalHead(db);
  return {
    foreignKeys: proven ? 0 : db.all('PRAGMA foreign_key_check').length,
    journal: proven ? { entries: seq, ok: true, firstBroken: null, head: hash } : verifyJournal(db),
    replay: replayDifferences(db),
    unsealed: db.one<{ n: number }>('SELECT count(*) AS n FROM journal WHERE hash IS NULL')?.n ?? 0,
  };
}

const UNREADABLE = {
  foreignKeys: 0,
  journal: { entries: 0, ok: false, firstBroken: null, head: CHAIN_START },
  replay: [],
  unsealed: 0,
};

/**
 * SQLite's check of the search index goes by what the connection last knew of it, and takes another connection's
 * newer writing for damage; asking the index anything makes the connection look again.
 */
function lookAtSearchAgain(db: ReadDb): void {
  if (db.one("SELECT 1 FROM sqlite_schema WHERE name = 'search_words'") === undefined) return;
  try {
    db.one('SELECT rowid FROM search_words WHERE search_words MATCH ? LIMIT 1', '"zzz"');
  } catch {
    // The check itself says what is wrong with it.
  }
}

/**
 * Examines a whole file: pages and indexes, rules, references, the journal's chain, and the tables against a replay
 * of the journal. Takes as long as reading everything once. Of a file that was `proven` a moment ago pages, references and
 * chain are not gone through again.
 */
export function examine(
  db: ReadDb,
  migrations: readonly Migration[] = readMigrations(MIGRATIONS),
  proven = false,
): Examination {
  lookAtSearchAgain(db);
  const integrity = proven
    ? 'ok'
    : (db.one<{ integrity_check: string }>('PRAGMA integrity_check(1)')?.integrity_check ?? 'no answer');
  const schema = schemaFaults(db, migrations);
  const readable = integrity === 'ok' && !schema.some((fault) => fault.startsWith('table '));
  const { unsealed, ...content } = readable ? readContent(db, proven) : UNREADABLE;
  const found = { integrity, schema, ...content };
  const parts = sentencesOf(found, unsealed);
  return {
    ...found,
    ok: parts.every((part) => part.sound),
    sentences: parts.map((part) => part.sentence),
    faults: parts.filter((part) => !part.sound).map((part) => part.sentence),
  };
}
