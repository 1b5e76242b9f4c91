import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import Database from 'better-sqlite3';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openApp } from '../../src/app.ts';
import { undoCommands } from '../../src/commands/undo.ts';
import { unsoundness } from '../../src/store/backup.ts';
import { type CatalogueFile, openCatalogueFile } from '../../src/store/catalogue-file.ts';
import { wrap } from '../../src/store/connection.ts';
import { examine } from '../../src/store/examine.ts';
import { readCommand } from '../../src/store/journal.ts';
import { MIGRATIONS, readMigrations } from '../../src/store/migrate.ts';
import { contentOf, grownCatalogue, reading } from '../faults/files.ts';
import { type Rows, rowsOf } from '../fixtures/rows.ts';
import { refusalOf } from '../support/catalogue.ts';

const FIXTURES = join(import.meta.dirname, '../fixtures');
const AT = '2026-03-09T10:00:00.000Z';
const SHIPPED = readMigrations(MIGRATIONS);
const NEXT = SHIPPED.length + 1;
/** The forms in which users may have a file; node tests/fixtures/make.ts makes the catalogue of the present one. */
const GIVEN_OUT = [4, 14, 19, 20];

let folder: string;
let file: string;
let steps: string;
let opened: CatalogueFile | undefined;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'edition-ledger-'));
  file = join(folder, 'press.ledger');
  steps = mkdtempSync(join(folder, 'migrations-'));
  for (const { name } of SHIPPED) copyFileSync(join(MIGRATIONS, name), join(steps, name));
});
afterEach(() => {
  opened?.close();
  opened = undefined;
  rmSync(folder, { recursive: true, force: true });
});

const open = (migrations = MIGRATIONS) => {
  opened = openCatalogueFile(file, { at: AT, migrations });
  return opened;
};
const close = () => {
  opened?.close();
  opened = undefined;
};
const addStep = (number: number, sql: string) =>
  writeFileSync(join(steps, `${String(number).padStart(4, '0')}_step.sql`), sql);
const backups = () => {
  const kept = join(folder, 'press backups');
  try {
    return readdirSync(kept).map((name) => join(kept, name));
  } catch {
    return [];
  }
};

/** All a file holds and declares, and its form. */
const wholeOf = (path: string) =>
  reading(path, (raw) => ({
    content: contentOf(raw),
    schema: raw.prepare('SELECT type, name, sql FROM sqlite_schema ORDER BY name').all(),
    form: raw.pragma('user_version', { simple: true }),
  }));

const fixtures = readdirSync(FIXTURES)
  .filter((name) => name.endsWith('.ledger.gz'))
  .map((name) => name.slice(0, -'.ledger.gz'.length));

describe('a catalogue of an earlier form', () => {
  it('is kept for every form that was given out', () => {
    expect(fixtures.toSorted()).toEqual(GIVEN_OUT.map((form) => `catalogue-form-${form}`).toSorted());
    expect(GIVEN_OUT.at(-1)).toBeLessThanOrEqual(SHIPPED.length);
  });

  it.each(fixtures)('opens with all its content: %s', (name) => {
    writeFileSync(file, gunzipSync(readFileSync(join(FIXTURES, `${name}.ledger.gz`))));
    const form = reading(file, (raw) => raw.pragma('user_version', { simple: true }));
    const hint =
      'Steps or journal triggers changed: while this form is not released, run node tests/fixtures/make.ts.';
    expect(() => open(), hint).not.toThrow();
    expect(opened?.cautions).toEqual([]);
    const must = JSON.parse(gunzipSync(readFileSync(join(FIXTURES, `${name}.json.gz`))).toString()) as Rows;
    const is = reading(file, rowsOf);
    for (const [table, rows] of Object.entries(must)) {
      // A later form may know more of a row, and its journal goes on.
      const shared = (is[table] ?? []).slice(0, table === 'journal' ? rows.length : undefined);
      const known = shared.map((row, at) =>
        Object.fromEntries(Object.keys(rows[at] ?? row).map((column) => [column, row[column]])),
      );
      expect([table, known]).toEqual([table, rows]);
    }
    expect(opened && examine(opened.read).faults).toEqual([]);
    expect(backups().length).toBe(form === SHIPPED.length ? 0 : 1);
  });
});

describe('a file of an older form that is only looked at', () => {
  const look = () => openApp({ file, readOnly: true, today: () => '2027-01-05' });

  it.each(fixtures)('answers as it would when brought up, and stays as it is: %s', (name) => {
    writeFileSync(file, gunzipSync(readFileSync(join(FIXTURES, `${name}.ledger.gz`))));
    const before = readFileSync(file);
    const app = look();
    const seen = ['works.list', 'audit.run', 'catalogue.check'].map((query) => app.call(query, {}));
    const then = app.call('works.list', { asOf: '2026-11-20' });
    expect([...seen, then].map(({ ok }) => ok)).toEqual([true, true, true, true]);
    expect(app.call('works.create', { title: 'Not here' })).toMatchObject({
      ok: false,
      error: { code: 'READ_ONLY' },
    });
    app.close();
    expect(readFileSync(file).equals(before)).toBe(true);
    open();
    close();
    const brought = look();
    expect(brought.call('works.list', {})).toEqual(seen[0]);
    brought.close();
  });
});

describe('an upgrade', () => {
  const grown = join(mkdtempSync(join(tmpdir(), 'edition-ledger-')), 'grown.ledger');
  beforeAll(() => grownCatalogue(grown, 40));
  afterAll(() => rmSync(dirname(grown), { recursive: true, force: true }));
  beforeEach(() => copyFileSync(grown, file));

  it('is made whole or not at all', () => {
    const before = wholeOf(file);
    addStep(
      NEXT,
      'ALTER TABLE work ADD COLUMN mood TEXT; CREATE TABLE mood (id INTEGER PRIMARY KEY) STRICT;',
    );
    addStep(NEXT + 1, "UPDATE work SET mood = 'calm'; INSERT INTO nowhere VALUES (1);");
    expect(() => open(steps)).toThrow('no such table: nowhere');
    expect(wholeOf(file)).toEqual(before);
    expect(open().cautions).toEqual([]);
    expect(opened && examine(opened.read).ok).toBe(true);
  });

  it('is not made when it would leave references that lead nowhere', () => {
    const before = wholeOf(file);
    addStep(NEXT, 'DELETE FROM channel;');
    expect(() => open(steps)).toThrow('broken references');
    expect(wholeOf(file)).toEqual(before);
  });

  it('is backed up before it, soundly and in the old form', () => {
    const before = wholeOf(file);
    for (const path of backups()) rmSync(path);
    addStep(NEXT, 'ALTER TABLE work ADD COLUMN mood TEXT;');
    open(steps);
    const [backup = ''] = backups();
    expect(backup).toContain('before-upgrade');
    expect(unsoundness(backup)).toBeNull();
    expect(wholeOf(backup)).toEqual(before);
  });

  it('stands in the journal, so that a replay still gives the tables, and is not undone', () => {
    addStep(
      NEXT,
      "ALTER TABLE work ADD COLUMN mood TEXT NOT NULL DEFAULT 'calm'; UPDATE work SET mood = 'glad' WHERE id = 1;",
    );
    const catalogue = open(steps);
    expect(examine(catalogue.read, readMigrations(steps)).faults).toEqual([]);
    const entries = readCommand(catalogue.read);
    expect(entries.every((entry) => entry.operation === 'catalogue.upgrade' && entry.entity === 'work')).toBe(
      true,
    );
    expect(entries.find((entry) => entry.rowKey === '1')?.after).toMatchObject({ mood: 'glad' });
    const commandSeq = entries[0]?.commandSeq ?? 0;
    const undo = () =>
      catalogue.change('journal.undo', AT, (db) =>
        undoCommands['journal.undo']({ db, today: AT.slice(0, 10) }, { commandSeq }),
      );
    expect(refusalOf(undo)).toMatchObject({ code: 'STEP_REFUSED' });
    catalogue.change('works.update', AT, (db) => db.run("UPDATE work SET note = 'x' WHERE id = 1"));
    expect(examine(catalogue.read, readMigrations(steps)).ok).toBe(true);
  });

  it('that builds a table anew takes no row of another table with it', () => {
    const before = wholeOf(file).content;
    const declared = reading(file, (raw) =>
      raw
        .prepare('SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY rowid')
        .all(),
    ) as { type: string; name: string; tbl_name: string; sql: string }[];
    // Views and triggers name the table that is away for a moment, so they go first and come back last; the
    // journal's derived triggers are taken away and raised by the upgrade itself.
    const rules = declared.filter(
      (row) =>
        row.type === 'view' ||
        (row.type === 'trigger' && (!row.name.startsWith('journal_') || row.tbl_name === 'journal')),
    );
    const index = declared.find((row) => row.name === 'edition_by_work');
    const table = declared.find((row) => row.type === 'table' && row.name === 'edition');
    const shape = table?.sql
      .replace('CREATE TABLE edition', 'CREATE TABLE edition_new')
      .replace('work_id', 'mood TEXT, work_id');
    const columns = Object.keys(reading(file, rowsOf).edition?.[0] ?? {}).join(', ');
    addStep(
      NEXT,
      [
        ...rules.filter((row) => row.type === 'trigger').map((row) => `DROP TRIGGER ${row.name}`),
        ...rules.filter((row) => row.type === 'view').map((row) => `DROP VIEW ${row.name}`),
        shape,
        `INSERT INTO edition_new (${columns}) SELECT ${columns} FROM edition`,
        'DROP TABLE edition',
        'ALTER TABLE edition_new RENAME TO edition',
        index?.sql,
        ...rules.map((row) => row.sql),
      ].join(';\n'),
    );
    const catalogue = open(steps);
    expect(examine(catalogue.read, readMigrations(steps)).faults).toEqual([]);
    const after = wholeOf(file).content;
    for (const child of [
      'edition_contributor',
      'edition_keyword',
      'format',
      'listing',
      'plan',
      'task',
      'number',
    ])
      expect([child, after[child]]).toEqual([child, before[child]]);
    expect(after.edition?.length).toBe(before.edition?.length);
  });

  it('is not made on a file whose tables differ from its journal', () => {
    const raw = new Database(file);
    const trigger = raw
      .prepare("SELECT sql FROM sqlite_schema WHERE name = 'journal_work_changed'")
      .pluck()
      .get();
    raw.exec('DROP TRIGGER journal_work_changed');
    raw.exec("UPDATE work SET note = 'forged' WHERE id = 2");
    raw.exec(String(trigger));
    raw.close();
    const before = wholeOf(file);
    addStep(NEXT, 'ALTER TABLE work ADD COLUMN mood TEXT;');
    const refusal = refusalOf(() => open(steps));
    expect(refusal.code).toBe('CATALOGUE_DAMAGED');
    expect(refusal.message).toContain('work 2');
    expect(wholeOf(file)).toEqual(before);
  });
});

describe('the steps', () => {
  it('that were applied are never edited: such a file is refused as foreign and left alone', () => {
    grownCatalogue(file, 0);
    const before = wholeOf(file);
    const [first = ''] = readdirSync(steps).sort();
    writeFileSync(join(steps, first), `${readFileSync(join(steps, first), 'utf8')}\n-- edited`);
    expect(refusalOf(() => open(steps))).toMatchObject({ code: 'CATALOGUE_FOREIGN' });
    expect(wholeOf(file)).toEqual(before);
  });

  it.each([
    ['leave a gap', `${String(NEXT + 1).padStart(4, '0')}_later.sql`],
    ['are put in before applied ones', '0002_earlier.sql'],
    ['have a name without a number', 'first.sql'],
  ])('are refused when they %s', (_what, name) => {
    writeFileSync(join(steps, name), 'SELECT 1;');
    expect(() => open(steps)).toThrow('out of order');
  });

  it('make a new file without any entry in its journal, and every table of content journalled', () => {
    addStep(NEXT, 'CREATE TABLE mood (id INTEGER PRIMARY KEY, word TEXT NOT NULL) STRICT;');
    const catalogue = open(steps);
    expect(catalogue.read.one('SELECT count(*) AS n FROM journal')).toEqual({ n: 0 });
    const names = (type: string) =>
      catalogue.read
        .all<{ name: string }>('SELECT name FROM sqlite_schema WHERE type = ?', type)
        .map(({ name }) => name)
        .filter((name) => !name.startsWith('sqlite_'));
    const triggers = new Set(names('trigger'));
    const bare = names('table').filter((table) =>
      ['added', 'changed', 'removed', 'key_stays', 'no_replace'].some(
        (what) => !triggers.has(`journal_${table}_${what}`),
      ),
    );
    expect(bare.filter((table) => !table.startsWith('search_')).sort()).toEqual([
      'journal',
      'migration',
      'number_run',
      'number_tally',
      'proof_check_facts',
      'proof_check_picture',
    ]);
    catalogue.change('moods.add', AT, (db) => db.run("INSERT INTO mood (word) VALUES ('calm')"));
    expect(examine(wrap(catalogue.rawRead), readMigrations(steps)).ok).toBe(true);
    close();
  });
});
