import Database from 'better-sqlite3';
import { eq, sql } from 'drizzle-orm';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { wrap } from '../../src/store/connection.ts';
import { work } from '../../src/store/schema.ts';
import { openTestFile, type TestFile } from '../support/catalogue.ts';
import { seedEdition } from '../support/seed.ts';

let t: TestFile;
let raw: Database.Database;
beforeEach(() => {
  t = openTestFile();
  for (const title of ['Fen Light', 'Marsh Bells', 'Salt Almanac'])
    t.command(({ db }) => seedEdition(db, { title }));
  raw = new Database(t.file.file);
});
afterEach(() => {
  raw.close();
  t.close();
});

it('prepares a statement of the query builder once, however often it runs', () => {
  const prepare = vi.spyOn(raw, 'prepare');
  const { orm } = wrap(raw);
  for (let round = 0; round < 50; round += 1) {
    const titles = [1, 2, 3].map(
      (id) => orm.select({ title: work.title }).from(work).where(eq(work.id, id)).all()[0]?.title,
    );
    expect(titles).toEqual(['Fen Light', 'Marsh Bells', 'Salt Almanac']);
    orm
      .update(work)
      .set({ note: `round ${round}` })
      .where(eq(work.id, 2))
      .run();
  }
  expect(prepare).toHaveBeenCalledTimes(2);
});

it('gives rows by name after the same statement gave lists', () => {
  const { orm } = wrap(raw);
  const query = orm.select({ title: work.title }).from(work).where(sql`${work.id} = 1`);
  const text = sql.raw(query.toSQL().sql);
  expect(query.all()).toEqual([{ title: 'Fen Light' }]);
  expect(orm.all(text)).toEqual([{ title: 'Fen Light' }]);
  expect(query.all()).toEqual([{ title: 'Fen Light' }]);
});

it('keeps no more than a few hundred statements', () => {
  const prepare = vi.spyOn(raw, 'prepare');
  const { orm } = wrap(raw);
  const ask = (limit: number) => orm.all(sql.raw(`SELECT id FROM work LIMIT ${limit}`));
  for (let limit = 0; limit < 300; limit += 1) ask(limit);
  ask(299);
  expect(prepare).toHaveBeenCalledTimes(300);
  ask(0);
  expect(prepare).toHaveBeenCalledTimes(301);
});
