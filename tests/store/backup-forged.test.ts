import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
let backup: { name: string; path: string };
beforeEach(() => {
  catalogue = openTestCatalogue();
  catalogue.call('catalogue.demo', {});
  backup = catalogue.call('backups.make', {});
});
afterEach(() => catalogue.close());

/** Writes into the backup behind the program's back, its rules as before. */
function forge(sql: string): void {
  const raw = new Database(backup.path);
  raw.exec('BEGIN');
  const triggers = raw.prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'").all() as {
    name: string;
    sql: string;
  }[];
  for (const { name } of triggers) raw.exec(`DROP TRIGGER "${name}"`);
  raw.exec(sql);
  for (const trigger of triggers) raw.exec(trigger.sql);
  raw.exec('COMMIT');
  raw.close();
}

/** Does what SQLite lets nobody do with its own tables. */
function unsafely(work: (raw: Database.Database) => void): void {
  const raw = new Database(backup.path);
  raw.unsafeMode(true);
  raw.pragma('writable_schema = ON');
  work(raw);
  raw.close();
}

/** Leaves the index of titles as it was while the table goes on: no structure is broken by it. */
function setTitlesOutOfStep(): void {
  let index: unknown;
  unsafely((raw) => {
    index = raw.prepare("SELECT * FROM sqlite_schema WHERE name = 'work_by_title'").get();
    raw.exec("DELETE FROM sqlite_schema WHERE name = 'work_by_title'");
  });
  forge("UPDATE work SET title = 'Zzz' WHERE id = 2");
  unsafely((raw) =>
    raw.prepare('INSERT INTO sqlite_schema VALUES (:type, :name, :tbl_name, :rootpage, :sql)').run(index),
  );
}

it.each([
  ['its journal is broken', () => forge("UPDATE journal SET after = after || ' ' WHERE seq = 9")],
  ['its pages are damaged', setTitlesOutOfStep],
])('a backup of which %s is refused, and the catalogue stays as it is', (what, damage) => {
  damage();
  const { message } = catalogue.refusal('backups.restore', { name: backup.name });
  expect(message).toContain(what);
  expect(catalogue.call('catalogue.check', {}).ok).toBe(true);
  expect(catalogue.call('backups.list', {}).backups.map(({ name }) => name)).toContain(backup.name);
  expect(catalogue.call('backups.list', {}).backups.filter(({ kind }) => kind === 'before restore')).toEqual(
    [],
  );
});

it('a backup is replayed when it is put back: what the journal does not tell is a caution', () => {
  forge("UPDATE work SET note = 'forged' WHERE id = 2");
  catalogue.call('backups.restore', { name: backup.name });
  expect(catalogue.call('catalogue.info', {}).warnings.join(' ')).toContain(
    'The tables differ from the journal at work 2.',
  );
});
