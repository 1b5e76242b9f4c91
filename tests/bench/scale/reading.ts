import Database from 'better-sqlite3';
import { FORMAT_SORTS } from '../../../src/contract/format-list.ts';
import type { Line, Sides } from './line.ts';
import type { World } from './world.ts';

// Opening a catalogue, its list, and the search.

const opening: Line = {
  name: 'open a catalogue that is as it was left',
  against: 'SQLite opening the file, one row read',
  most: { growth: 0.15 },
  sides: (world) => ({
    once: true,
    ours: world.reopen,
    bare: () => {
      const raw = new Database(world.file, { readonly: true });
      raw.prepare('SELECT title FROM work LIMIT 1').get();
      raw.close();
    },
  }),
};

const PAGE = 100;

const firstPage: Line = {
  name: 'works, first page',
  against: 'the same works and formats by index',
  most: { growth: 0.15 },
  sides: (world) => {
    const works = world.raw.prepare(
      `SELECT id, title FROM work ORDER BY title COLLATE NOCASE, id LIMIT ${PAGE}`,
    );
    const formats = world.raw.prepare(
      `SELECT f.id, f.form, f.form_detail, e.title, e.number, n.isbn13, s.standing FROM json_each(?) w
       CROSS JOIN edition e ON e.work_id = w.value CROSS JOIN format f ON f.edition_id = e.id
       JOIN format_standing s ON s.format_id = f.id LEFT JOIN number n ON n.format_id = f.id`,
    );
    return {
      ours: () => world.call('works.list', {}),
      bare: () => {
        const page = works.all() as { id: number }[];
        formats.all(JSON.stringify(page.map(({ id }) => id)));
      },
    };
  },
};

const BARE_ORDER: Record<(typeof FORMAT_SORTS)[number], string> = {
  title: 'e.title COLLATE NOCASE',
  form: 'f.form',
  number: '(SELECT isbn13 FROM number n WHERE n.format_id = f.id)',
  standing: '(SELECT standing FROM format_standing s WHERE s.format_id = f.id)',
  publication: 'f.publication_date',
  'on sale': 'f.on_sale_date',
  language: 'e.language',
  imprint: 'e.imprint COLLATE NOCASE',
  price: "(SELECT amount_minor FROM format_price p WHERE p.format_id = f.id AND p.currency = 'EUR')",
};

/** The table of formats in an order or under a filter: every id and the rows first seen, against SQL for the same. */
function table(world: World, input: object, bare: string): Sides {
  const ids = world.raw
    .prepare(`SELECT f.id FROM format f JOIN edition e ON e.id = f.edition_id ${bare}`)
    .pluck();
  const rows = world.raw.prepare(
    'SELECT f.*, e.* FROM json_each(?) j JOIN format f ON f.id = j.value JOIN edition e ON e.id = f.edition_id',
  );
  return {
    ours: () => {
      const found = world.call<{ ids: number[] }>('formats.find', input);
      world.call('formats.rows', { ids: found.ids.slice(0, 50) });
    },
    bare: () => {
      rows.all(JSON.stringify((ids.all() as number[]).slice(0, 50)));
    },
  };
}

const against = 'SQL for the same ids and rows';

const sorted = FORMAT_SORTS.map(
  (by): Line => ({
    name: `formats by ${by}`,
    against,
    most: { ratio: 5 },
    sides: (world) => table(world, { sort: { by, down: false } }, `ORDER BY ${BARE_ORDER[by]}, f.id`),
  }),
);

const FILTERS: [name: string, terms: object, where: string][] = [
  [
    'standing',
    { standings: ['proofing'] },
    "WHERE f.id IN (SELECT format_id FROM format_standing WHERE standing = 'proofing')",
  ],
  ['form', { forms: ['AJ'] }, "WHERE f.form = 'AJ'"],
  [
    'channel and standing',
    { channelIds: [1], listingStandings: ['leaving'] },
    "WHERE f.id IN (SELECT format_id FROM listing WHERE channel_id = 1 AND standing = 'leaving')",
  ],
  ['language', { languages: ['ger'] }, "WHERE e.language = 'ger'"],
  ['imprint', { imprints: ['Fen Juniors'] }, "WHERE e.imprint = 'Fen Juniors'"],
  [
    'days',
    { from: '2020-01-01', to: '2020-03-31' },
    "WHERE f.on_sale_date BETWEEN '2020-01-01' AND '2020-03-31'",
  ],
];

const filtered = FILTERS.map(
  ([name, terms, where]): Line => ({
    name: `formats filtered by ${name}`,
    against,
    most: { ratio: 5 },
    sides: (world) => table(world, { terms }, `${where} ORDER BY e.title COLLATE NOCASE, f.id`),
  }),
);

/** What is typed, letter by letter, and the bare look-up of the same works in the index. */
const searching: Line = {
  name: 'search as you type (10 letters)',
  against: 'a bare look-up in the index of words, letter by letter',
  most: { growth: 0.2 },
  sides: (world) => {
    const typed = Array.from({ length: 10 }, (_, letters) => 'lantern of'.slice(0, letters + 1));
    const words = world.raw.prepare(
      'SELECT s.record_id, s.name FROM search_words x JOIN search_entry s ON s.id = x.rowid WHERE x.search_words MATCH ? LIMIT 200',
    );
    const begin = world.raw.prepare(
      "SELECT record_id, name FROM search_entry WHERE kind = 'work' AND name >= ? COLLATE NOCASE AND name < ? || char(1114111) COLLATE NOCASE ORDER BY name COLLATE NOCASE LIMIT 6",
    );
    return {
      ours: () => {
        for (const text of typed) world.call('search.find', { text, count: 6 });
      },
      bare: () => {
        for (const text of typed) text.length < 3 ? begin.all(text, text) : words.all(`"${text}"`);
      },
    };
  },
};

const digits: Line = {
  name: 'search of a number (last four, then all digits)',
  against: 'the same numbers by index',
  most: { growth: 0.2 },
  sides: (world) => {
    const isbn =
      world.db.one<{ isbn13: string }>('SELECT isbn13 FROM number WHERE format_id = 40')?.isbn13 ?? '';
    const last = world.raw.prepare(
      'SELECT * FROM number WHERE substr(isbn13, -4) = ? ORDER BY isbn13 LIMIT 6',
    );
    const whole = world.raw.prepare('SELECT * FROM number WHERE isbn13 = ?');
    return {
      ours: () => {
        world.call('search.find', { text: isbn.slice(-4), count: 6 });
        world.call('search.find', { text: isbn, count: 6 });
      },
      bare: () => {
        last.all(isbn.slice(-4));
        whole.all(isbn);
      },
    };
  },
};

export const READING: readonly Line[] = [opening, firstPage, ...sorted, ...filtered, searching, digits];
