import type { CatalogueFile } from '../../../src/store/catalogue-file.ts';
import type { WriteDb } from '../../../src/store/connection.ts';
import { readCommand } from '../../../src/store/journal.ts';
import { takeBack } from '../../../src/store/replay.ts';
import { randomNumbers } from '../history.ts';

// Random histories below the commands, so that rows also do what no command does today: keys are given out anew, rows
// are led to other parents, and what is dated and when it was recorded have nothing to do with each other.

/** Days in order, the first of a history to some weeks after its last. */
export function dayAt(number: number): string {
  return new Date(Date.UTC(2020, 0, 1 + number)).toISOString().slice(0, 10);
}

interface Turn {
  db: WriteDb;
  /** A whole number from 0 to n − 1. */
  below(n: number): number;
  /** The key of some row, null where there is none. */
  some(table: string): number | null;
  /** A day before or after the present one. */
  day(): string;
}

const LISTS: Record<string, (turn: Turn, parent: number, place: number) => [sql: string, ...unknown[]]> = {
  edition_contributor: ({ below }, parent, place) => [
    "INSERT INTO edition_contributor (edition_id, position, role, name) VALUES (?, ?, 'A01', ?)",
    parent,
    place,
    `Person ${below(50)}`,
  ],
  edition_subject: ({ below }, parent, place) => [
    "INSERT INTO edition_subject (edition_id, position, scheme, code) VALUES (?, ?, 'own', ?)",
    parent,
    place,
    `S${below(50)}`,
  ],
  edition_keyword: ({ below }, parent, place) => [
    'INSERT INTO edition_keyword (edition_id, position, keyword) VALUES (?, ?, ?)',
    parent,
    place,
    `word ${below(50)}`,
  ],
  format_price: ({ below }, parent, place) => [
    'INSERT INTO format_price (format_id, currency, amount_minor) VALUES (?, ?, ?)',
    parent,
    ['EUR', 'GBP', 'USD', 'CAD'][place] ?? 'AUD',
    below(5_000),
  ],
  print_quote: ({ below }, parent) => [
    "INSERT INTO print_quote (card_id, pages, amount_minor, currency) VALUES (?, ?, ?, 'EUR')",
    parent,
    1 + below(500),
    below(900),
  ],
};

const PARENT = {
  edition_contributor: ['edition', 'edition_id'],
  edition_subject: ['edition', 'edition_id'],
  edition_keyword: ['edition', 'edition_id'],
  format_price: ['format', 'format_id'],
  print_quote: ['print_card', 'card_id'],
} as Record<string, [parent: string, key: string]>;

/** Writes a list anew, as a command does, or changes a single row of it. */
function list(turn: Turn): void {
  const table = Object.keys(LISTS)[turn.below(5)] ?? '';
  const [parent = '', key = ''] = PARENT[table] ?? [];
  const id = turn.some(parent);
  const one = turn.some(table);
  if (id === null) return;
  const kind = turn.below(6);
  if (kind === 0 && one !== null) turn.db.run(`DELETE FROM ${table} WHERE id = ?`, one);
  else if (kind === 1 && one !== null) turn.db.run(`UPDATE ${table} SET ${key} = ? WHERE id = ?`, id, one);
  else if (kind === 2 && table === 'format_price' && one !== null)
    turn.db.run('UPDATE format_price SET amount_minor = ? WHERE id = ?', turn.below(5_000), one);
  else {
    if (kind !== 3) turn.db.run(`DELETE FROM ${table} WHERE ${key} = ?`, id);
    const most = turn.below(4);
    for (let place = 1; place <= most; place += 1) {
      const [sql, ...values] = LISTS[table]?.(turn, id, place) ?? [''];
      turn.db.run(sql, ...values);
    }
  }
}

function step(turn: Turn): void {
  const id = turn.some('listing');
  const at = turn.db.one<{ standing: string; last: string | null }>(
    'SELECT standing, last_step_on AS last FROM listing WHERE id = ?',
    id,
  );
  const next: Record<string, string> = {
    unsent: 'sent',
    sent: turn.below(3) === 0 ? 'unsent' : 'proof',
    proof: 'cleared',
    cleared: 'selling',
    selling: 'leaving',
    leaving: turn.below(2) === 0 ? 'gone' : 'selling',
  };
  const day = turn.day();
  turn.db.run(
    'INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date) VALUES (?, ?, ?, ?)',
    id,
    at?.standing,
    next[at?.standing ?? ''],
    at?.last && at.last > day ? at.last : day,
  );
}

const NUMBERS = Array.from({ length: 60 }, (_, at) => {
  const first = `979896999${String(at).padStart(3, '0')}`;
  const sum = [...first].reduce(
    (total, digit, place) => total + Number(digit) * (place % 2 === 0 ? 1 : 3),
    0,
  );
  return `${first}${(10 - (sum % 10)) % 10}`;
});

function number({ db, below, some, day }: Turn): void {
  const isbn13 = NUMBERS.find((one) => !db.one('SELECT 1 FROM number WHERE isbn13 = ?', one)) ?? '';
  const reserved = db.one<{ isbn13: string }>('SELECT isbn13 FROM number WHERE format_id IS NULL')?.isbn13;
  const kind = below(4);
  if (kind === 0)
    db.run("INSERT INTO number (isbn13, reserved_for, reserved_on) VALUES (?, 'later', ?)", isbn13, day());
  else if (kind === 1 && reserved !== undefined)
    db.run(
      'UPDATE number SET format_id = ?, assigned_on = ? WHERE isbn13 = ?',
      some('format'),
      day(),
      reserved,
    );
  else
    db.run(
      'INSERT INTO number (isbn13, format_id, assigned_on) VALUES (?, ?, ?)',
      isbn13,
      some('format'),
      day(),
    );
}

type Move = (turn: Turn) => unknown;

const NEW: Move[] = [
  ({ db, below }) => db.run('INSERT INTO work (title) VALUES (?)', `Work ${below(99)}`),
  ({ db, below, some }) =>
    db.run(
      "INSERT INTO edition (work_id, title, language) VALUES (?, ?, 'eng')",
      some('work'),
      `Title ${below(99)}`,
    ),
  ({ db, some, day }) =>
    db.run("INSERT INTO format (edition_id, form, planned_on) VALUES (?, 'BC', ?)", some('edition'), day()),
  ({ db, some, day }) =>
    db.run("INSERT INTO format (edition_id, form, planned_on) VALUES (?, 'BB', ?)", some('edition'), day()),
  ({ db, below }) => db.run('INSERT INTO channel (name) VALUES (?)', `Channel ${below(20)}`),
  ({ db, some }) =>
    db.run('INSERT INTO listing (format_id, channel_id) VALUES (?, ?)', some('format'), some('channel')),
  ({ db, some, below }) =>
    db.run(
      "INSERT INTO print_card (channel_id, currency, pages_from) VALUES (?, 'EUR', ?)",
      some('channel'),
      1 + below(9),
    ),
  ({ db, some, day }) =>
    db.run(
      "INSERT INTO plan (edition_id, kind, day, made_on) VALUES (?, 'release', '2020-12-01', ?)",
      some('edition'),
      day(),
    ),
];

const CHANGES: Move[] = [
  ({ db, below, some }) =>
    db.run('UPDATE work SET title = ? WHERE id = ?', `Work ${below(99)}`, some('work')),
  ({ db, below, some }) =>
    db.run('UPDATE edition SET title = ? WHERE id = ?', `Title ${below(99)}`, some('edition')),
  ({ db, some }) => db.run('UPDATE edition SET work_id = ? WHERE id = ?', some('work'), some('edition')),
  ({ db, below, some }) => db.run('UPDATE format SET pages = ? WHERE id = ?', 1 + below(900), some('format')),
  ({ db, some }) => db.run('UPDATE format SET edition_id = ? WHERE id = ?', some('edition'), some('format')),
  ({ db, some, day }) =>
    db.run(
      "UPDATE format SET cancelled_on = ?, cancel_reason = 'not now' WHERE id = ?",
      day(),
      some('format'),
    ),
  ({ db, below, some }) =>
    db.run('UPDATE channel SET note = ? WHERE id = ?', `n ${below(99)}`, some('channel')),
  ({ db, below, some }) =>
    db.run('UPDATE listing SET note = ? WHERE id = ?', `n ${below(99)}`, some('listing')),
  ({ db, below, some }) =>
    db.run('UPDATE print_card SET note = ? WHERE id = ?', `n ${below(99)}`, some('print_card')),
];

const REMOVED = ['work', 'edition', 'edition', 'format', 'format', 'channel', 'listing', 'print_card'];

/** Removes a row with its lists, most often the newest, whose key is given out again. */
function remove({ db, below, some }: Turn): void {
  const table = REMOVED[below(REMOVED.length)] ?? '';
  const newest = db.one<{ id: number | null }>(`SELECT max(id) AS id FROM ${table}`)?.id ?? null;
  const id = below(4) === 0 ? some(table) : newest;
  for (const [child, [parent, key]] of Object.entries(PARENT))
    if (parent === table) db.run(`DELETE FROM ${child} WHERE ${key} = ?`, id);
  db.run(`DELETE FROM ${table} WHERE id = ?`, id);
}

const MOVES: Move[] = [
  ...NEW,
  ...NEW,
  ...CHANGES,
  ...CHANGES,
  ...[list, list, list, list, list, list, list, list],
  ...[step, step, step, step, number, number, number],
  ...[remove, remove, remove, remove],
  ({ db }) => takeBack(db, readCommand(db)),
];

/** Plays a history of some commands on a new file, most of them on another day than the one before; answers the last day. */
export function playHistory(file: CatalogueFile, seed: number, commands: number): number {
  const next = randomNumbers(seed);
  const below = (n: number) => next() % Math.max(1, n);
  let today = 60;
  for (let done = 0; done < commands; done += 1) {
    today += below(3);
    try {
      file.change('random', `${dayAt(today)}T10:00:00.000Z`, (db) => {
        const some = (table: string) => {
          const ids = db.all<{ id: number }>(`SELECT id FROM ${table}`);
          return ids[below(ids.length)]?.id ?? null;
        };
        MOVES[below(MOVES.length)]?.({ db, below, some, day: () => dayAt(today - 40 + below(60)) });
      });
    } catch {
      // What the catalogue does not allow has not happened.
    }
  }
  return today;
}
