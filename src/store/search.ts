import type { ReadDb, WriteDb } from './connection.ts';

/** Kinds of record that are found by their words, with the place of each in the index (migration 0010). */
export const KIND = { work: 1, person: 2, channel: 3, task: 4 } as const;
export type SearchKind = keyof typeof KIND;

/** A trigram index finds nothing shorter than this. */
const GRAM = 3;
export const PLACES = 2 ** 40;

/** Where the words are looked up: in the index, or on a past day in the records as they stood then. */
export interface Sought {
  terms: string[];
  past: boolean;
}

/** The words of a typed text; signs that cannot be seen part words like spaces do. */
export function soughtIn(text: string, past: boolean): Sought {
  const terms = text
    .replaceAll(/[\p{C}\s]+/gu, ' ')
    .trim()
    .split(' ')
    .filter((term) => term !== '');
  return { terms, past };
}

const escapeLike = (text: string) => text.replaceAll(/[\\%_]/g, (sign) => `\\${sign}`);

interface Condition {
  sql: string;
  params: unknown[];
}

/**
 * Picks the entries of a kind that hold every word, as SQL that answers `id` (of the record). Words of three letters
 * and more are looked up in the trigram index, shorter ones in what that left.
 */
export function entriesHolding(kind: SearchKind, { terms, past }: Sought): Condition {
  const long = past ? [] : terms.filter((term) => [...term].length >= GRAM);
  const short = terms.filter((term) => !long.includes(term));
  const like = short.map(() => `s.words LIKE ? ESCAPE '\\'`);
  const likes = short.map((term) => `%${escapeLike(term)}%`);
  if (long.length === 0) {
    const from = past ? 'search_source' : 'search_entry';
    const where = ['s.kind = ?', ...like].join(' AND ');
    return {
      sql: `SELECT s.record_id AS id, s.name FROM ${from} s WHERE ${where}`,
      params: [kind, ...likes],
    };
  }
  const match = long.map((term) => `"${term.replaceAll('"', '""')}"`).join(' AND ');
  const where = ['x.search_words MATCH ?', 'x.rowid >= ?', 'x.rowid < ?', ...like].join(' AND ');
  return {
    sql: `SELECT s.record_id AS id, s.name FROM search_words x JOIN search_entry s ON s.id = x.rowid WHERE ${where}`,
    params: [match, KIND[kind] * PLACES, (KIND[kind] + 1) * PLACES, ...likes],
  };
}

export interface FoundEntry {
  id: number;
  name: string;
}

/** Names of a kind that begin with a text, by name. */
function beginningWith(db: ReadDb, kind: SearchKind, text: string, past: boolean, count: number) {
  return db.all<FoundEntry>(
    `SELECT record_id AS id, name FROM ${past ? 'search_source' : 'search_entry'}
     WHERE kind = ?1 AND name >= ?2 COLLATE NOCASE AND name < ?2 || char(1114111) COLLATE NOCASE
     ORDER BY name COLLATE NOCASE LIMIT ?3`,
    kind,
    text,
    count,
  );
}

/** How many entries are looked at to find the best few of them. */
const LOOKED_AT = 200;

/** Whether one of the words of a name begins with a text, without regard to case. */
function hasWordWith(name: string, text: string): boolean {
  return ` ${name.toLocaleLowerCase()}`.includes(` ${text.toLocaleLowerCase()}`);
}

/** The best few records of a kind: those whose name begins with the text, then with a word that does, then others. */
export function bestEntries(db: ReadDb, kind: SearchKind, sought: Sought, count: number): FoundEntry[] {
  const { terms, past } = sought;
  const [first] = terms;
  if (first === undefined) return [];
  const found = beginningWith(db, kind, terms.join(' '), past, count);
  if (found.length < count && (past || terms.some((term) => [...term].length >= GRAM))) {
    const { sql, params } = entriesHolding(kind, sought);
    const others = db.all<FoundEntry>(`${sql} LIMIT ${LOOKED_AT}`, ...params);
    const isWord = (entry: FoundEntry) => Number(hasWordWith(entry.name, first));
    found.push(...others.toSorted((a, b) => isWord(b) - isWord(a)));
  }
  return [...new Map(found.map((entry) => [entry.id, entry])).values()].slice(0, count);
}

/**
 * Numbers that hold a run of digits (of at least four): those that end with it, then those that begin with it, and
 * where there are none of either those that hold it inside.
 */
export function numbersHolding(db: ReadDb, digits: string, count: number): string[] {
  const read = (where: string, ...params: string[]) =>
    db
      .all<{ isbn13: string }>(
        `SELECT isbn13 FROM number WHERE ${where} ORDER BY isbn13 LIMIT ${count}`,
        ...params,
      )
      .map((row) => row.isbn13);
  const ends = read('substr(isbn13, -4) = ? AND isbn13 LIKE ?', digits.slice(-4), `%${digits}`);
  const begins = ends.length < count ? read("isbn13 >= ?1 AND isbn13 < ?1 || ':'", digits) : [];
  const found = [...new Set([...ends, ...begins])].slice(0, count);
  return found.length > 0 ? found : read('isbn13 LIKE ?', `%${digits}%`);
}

/** How many works a person of this exact name has a part in. */
export function worksOfPerson(db: ReadDb, name: string): number {
  const row = db.one<{ n: number }>(
    `SELECT count(DISTINCT e.work_id) AS n FROM edition_contributor c JOIN edition e ON e.id = c.edition_id
     WHERE c.name = ?`,
    name,
  );
  return row?.n ?? 0;
}

/** A work's title and the people of its newest edition; undefined where it was not there yet. */
export function workInBrief(
  db: ReadDb,
  id: number,
): { id: number; title: string; people: string } | undefined {
  return db.one(
    `SELECT w.id, w.title, coalesce((SELECT group_concat(name, ', ') FROM (SELECT c.name FROM edition_contributor c
       WHERE c.edition_id = (SELECT e.id FROM edition e WHERE e.work_id = w.id
         ORDER BY coalesce(e.number, 1) DESC, e.id DESC LIMIT 1) ORDER BY c.position)), '') AS people
     FROM work w WHERE w.id = ?`,
    id,
  );
}

/**
 * Makes the index anew where it does not hold the words of the entries: of all the file holds it alone can be made
 * from the rest, so what harmed it need trouble nobody.
 */
export function mendSearchIndex(db: WriteDb): void {
  try {
    db.run("INSERT INTO search_words (search_words, rank) VALUES ('integrity-check', 1)");
  } catch {
    db.run("INSERT INTO search_words (search_words) VALUES ('rebuild')");
  }
}
