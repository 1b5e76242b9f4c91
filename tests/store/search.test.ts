import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openCatalogueFile } from '../../src/store/catalogue-file.ts';
import type { WriteDb } from '../../src/store/connection.ts';
import { replayDifferences } from '../../src/store/replay.ts';
import { bestEntries, entriesHolding, numbersHolding, soughtIn } from '../../src/store/search.ts';
import { withSearchLater } from '../../src/store/search-later.ts';
import { openTestFile, type TestFile } from '../support/catalogue.ts';
import { seedChannel, seedEdition, seedFormat } from '../support/seed.ts';

// The entries of the search follow every change by triggers; what they must be is the view search_source.

const MOMENT = '2026-03-02T10:00:00.000Z';
let t: TestFile;
beforeEach(() => {
  t = openTestFile();
});
afterEach(() => t.close());

const names = (kind: Parameters<typeof bestEntries>[1], text: string) =>
  t.query(({ db }) => bestEntries(db, kind, soughtIn(text, false), 6).map((entry) => entry.name));

const PEOPLE = ['Maren Oskarsdal', 'Tobias Wrenfield', 'Ilse Quayle'];
const person = (db: WriteDb, edition: number, position: number, name: string) =>
  db.run(
    "INSERT INTO edition_contributor (edition_id, position, role, name) VALUES (?, ?, 'A01', ?)",
    edition,
    position,
    name,
  ).lastInsertRowid;

describe('the search', () => {
  it('finds works by title, subtitle and people, people once however often they wrote, channels and tasks', () => {
    t.command(({ db }) => {
      const salt = seedEdition(db);
      const knots = seedEdition(db, { title: 'Knots for Small Hands' });
      db.run("UPDATE edition SET subtitle = 'A Harbour Book' WHERE id = ?", knots);
      for (const edition of [salt, knots]) person(db, edition, 1, 'Maren Oskarsdal');
      seedChannel(db, 'Printworks Direct');
      db.run("INSERT INTO task (kind, title, due_on) VALUES ('own', 'Order the proof', '2026-04-01')");
    });
    expect(names('work', 'almanac')).toEqual(['The Salt Almanac']);
    expect(names('work', 'HARBOUR')).toEqual(['Knots for Small Hands']);
    expect(names('work', 'oskársdal salt')).toEqual(['The Salt Almanac']);
    expect(names('work', 'kn')).toEqual(['Knots for Small Hands']);
    expect(names('person', 'maren')).toEqual(['Maren Oskarsdal']);
    expect(names('channel', 'works')).toEqual(['Printworks Direct']);
    expect(names('task', 'proof')).toEqual(['Order the proof']);
    expect(names('work', '"')).toEqual([]);
    expect(names('work', 'a" OR "b')).toEqual([]);
    expect(names('work', '%%%')).toEqual([]);
  });

  it('follows any change of the records', () => {
    const word = fc.constantFrom(...PEOPLE);
    const step = fc.oneof(
      fc.record({ what: fc.constant('add'), name: word, at: fc.nat(3) }),
      fc.record({ what: fc.constant('rename'), name: word, at: fc.nat(9) }),
      fc.record({ what: fc.constant('remove'), name: word, at: fc.nat(9) }),
      fc.record({ what: fc.constant('title'), name: word, at: fc.nat(3) }),
      fc.record({ what: fc.constant('put back'), name: word, at: fc.nat(9) }),
    );
    const editions = t.command(({ db }) => [1, 2, 3, 4].map((n) => seedEdition(db, { title: `Book ${n}` })));
    let position = 100;
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        t.command(({ db }) => {
          for (const { what, name, at } of steps) {
            position += 1;
            const edition = editions[at % editions.length] ?? 1;
            const [id] = db
              .all<{ id: number }>('SELECT id FROM edition_contributor ORDER BY id LIMIT 1 OFFSET ?', at)
              .map((row) => row.id);
            if (what === 'add') person(db, edition, position, name);
            else if (what === 'title') db.run('UPDATE edition SET title = ? WHERE id = ?', name, edition);
            else if (id === undefined) continue;
            else if (what === 'rename')
              db.run('UPDATE edition_contributor SET name = ? WHERE id = ?', name, id);
            else {
              db.run('DELETE FROM edition_contributor WHERE id = ?', id);
              // As an undo does: under its former id, which may be the lowest that bears the name.
              if (what === 'put back')
                db.run(
                  "INSERT INTO edition_contributor (id, edition_id, position, role, name) VALUES (?, ?, ?, 'A01', ?)",
                  id,
                  edition,
                  position,
                  name,
                );
            }
          }
        });
        expect(t.query(({ db }) => replayDifferences(db))).toEqual([]);
      }),
      { numRuns: 25 },
    );
    t.command(({ db }) => {
      for (const name of PEOPLE) {
        const [found] = bestEntries(db, 'person', soughtIn(name, false), 6);
        const held = db.one('SELECT 1 FROM edition_contributor WHERE name = ?', name) !== undefined;
        expect(found !== undefined).toBe(held);
      }
      db.run("INSERT INTO search_words (search_words, rank) VALUES ('integrity-check', 1)");
    });
  });

  it('tells when another program wrote past it', () => {
    t.command(({ db }) => {
      seedEdition(db);
      db.run('DELETE FROM search_entry');
    });
    expect(t.query(({ db }) => replayDifferences(db))).toEqual(['search_entry of work 1']);
  });

  it('looks words up in the index, one kind a range of it, and the ends of numbers in theirs', () => {
    t.command(({ db }) => {
      const format = seedFormat(db, seedEdition(db));
      expect(format).toBeGreaterThan(0);
    });
    const plan = (sql: string, ...params: unknown[]) =>
      t.query(({ db }) =>
        db
          .all<{ detail: string }>(`EXPLAIN QUERY PLAN ${sql}`, ...params)
          .map((row) => row.detail)
          .join('\n'),
      );
    const { sql, params } = entriesHolding('work', soughtIn('almanac', false));
    expect(plan(sql, ...params)).toMatch(
      /VIRTUAL TABLE INDEX \d+:.*M[\s\S]*SEARCH s USING INTEGER PRIMARY KEY/,
    );
    expect(
      plan(
        "SELECT record_id FROM search_entry WHERE kind = 'work' AND name >= 'kn' COLLATE NOCASE AND name < 'ko' COLLATE NOCASE ORDER BY name COLLATE NOCASE",
      ),
    ).toBe('SEARCH search_entry USING INDEX search_entry_by_name (kind=? AND name>? AND name<?)');
    expect(
      plan("SELECT isbn13 FROM number WHERE substr(isbn13, -4) = '0008' AND isbn13 LIKE '%0008'"),
    ).toMatch(/USING COVERING INDEX number_by_last_four/);
    const isbn = t.query(({ db }) => db.one<{ isbn13: string }>('SELECT isbn13 FROM number')?.isbn13 ?? '');
    for (const part of [isbn.slice(-4), isbn.slice(-6), isbn.slice(0, 7), isbn.slice(4, 10)])
      expect(t.query(({ db }) => numbersHolding(db, part, 6))).toEqual([isbn]);
  });

  it('makes its index anew when another program harmed it', () => {
    const folder = mkdtempSync(join(tmpdir(), 'edition-ledger-search-'));
    const path = join(folder, 'harmed.ledger');
    openCatalogueFile(path, { at: MOMENT }).close();
    let file = openCatalogueFile(path, { at: MOMENT });
    file.change('test', MOMENT, (db) => seedEdition(db));
    file.close();
    const raw = new Database(path);
    raw.exec("INSERT INTO search_words (search_words) VALUES ('delete-all')");
    raw.close();
    file = openCatalogueFile(path, { at: MOMENT });
    expect(bestEntries(file.read, 'work', soughtIn('almanac', false), 6)).toHaveLength(1);
    file.close();
    rmSync(folder, { recursive: true });
  });

  it('is made anew once at the end of work that puts it off, and follows each row again after it', () => {
    const differences = () =>
      t.file.read.all(
        `SELECT id, name, words FROM search_source EXCEPT SELECT id, name, words FROM search_entry
         UNION ALL SELECT id, name, words FROM search_entry EXCEPT SELECT id, name, words FROM search_source`,
      );
    const old = t.command(({ db }) => {
      const edition = seedEdition(db, { title: 'Fen Light' });
      person(db, edition, 1, 'Corin Hathersage');
      return edition;
    });
    t.command(({ db }) =>
      withSearchLater(
        db,
        () => {},
        () => {
          for (const name of PEOPLE) person(db, seedEdition(db, { title: `Book of ${name}` }), 1, name);
          db.run('UPDATE edition SET subtitle = ? WHERE id = ?', 'A walk', old);
          db.run('DELETE FROM edition_contributor WHERE edition_id = ?', old);
          expect(db.all('SELECT 1 FROM search_entry')).toHaveLength(2);
        },
      ),
    );
    expect(differences()).toEqual([]);
    expect(t.file.read.all('SELECT 1 FROM search_later')).toEqual([]);
    expect(names('person', 'corin')).toEqual([]);
    expect(names('work', 'a walk')).toEqual(['Fen Light']);
    t.command(({ db }) => person(db, old, 1, 'Corin Hathersage'));
    expect(names('person', 'corin')).toEqual(['Corin Hathersage']);
    expect(differences()).toEqual([]);
    t.command(({ db }) =>
      db.run("INSERT INTO search_words (search_words, rank) VALUES ('integrity-check', 1)"),
    );
  });
});
