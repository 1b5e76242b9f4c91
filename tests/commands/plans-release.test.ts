import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { moveListing } from '../../src/commands/listing-steps.ts';
import { planCommands } from '../../src/commands/plans.ts';
import { MONDAY, openTestFile, refusalOf, type TestFile } from '../support/catalogue.ts';
import { AS_USUAL, seedChannel, seedEdition, seedFormat, seedListing } from '../support/seed.ts';

const DAY = '2026-06-05';

let test: TestFile;
let edition: number;

beforeEach(() => {
  test = openTestFile();
  edition = test.command(({ db }) => seedEdition(db, { number: 2 }));
});
afterEach(() => test.close());

const release = (day = DAY) =>
  test.command((context) => planCommands['plans.release'](context, { ...AS_USUAL, editionId: edition, day }));
const redate = (planId: number, day: string) =>
  test.command((context) => planCommands['plans.redate'](context, { planId, day }));
const drop = (planId: number) =>
  test.command((context) => planCommands['plans.drop'](context, { planId, reason: 'Postponed.' }));

/** A paperback and an e-book with a channel each. */
const seedTwo = () =>
  test.command(({ db }) => {
    const paperback = seedFormat(db, edition);
    const ebook = seedFormat(db, edition, { form: 'ED', formDetail: 'E101' });
    const printed = seedListing(
      db,
      paperback,
      seedChannel(db, 'Printworks Direct', { proof: 'physical', leadDays: 5 }),
    );
    const shelf = seedListing(db, ebook, seedChannel(db, 'Lanternshelf', { proof: 'none', leadDays: 2 }));
    return { paperback, ebook, printed, shelf };
  });

const tasks = () =>
  test.file.read.all<{ kind: string; title: string; due_on: string; listing_id: number; standing: string }>(
    'SELECT kind, title, due_on, listing_id, standing FROM task ORDER BY id',
  );
const dates = () =>
  test.file.read.all<{ id: number; publication: string; sale: string; listing: string }>(
    `SELECT f.id, f.publication_date AS publication, f.on_sale_date AS sale, l.on_sale_date AS listing
     FROM format f JOIN listing l ON l.format_id = f.id ORDER BY f.id`,
  );

describe('planning a release', () => {
  it('makes the tasks of edition, formats and listings, and one day for everything', () => {
    const { paperback, ebook, printed, shelf } = seedTwo();
    const made = release();
    expect(made.tasks).toBe(tasks().length);
    expect(tasks().map((task) => [task.kind, task.due_on, task.listing_id])).toEqual([
      ['finish-content', '2026-05-01', null],
      ['register-numbers', '2026-05-08', null],
      ['settle-data', '2026-05-08', null],
      ['make-interior', '2026-05-12', null],
      ['make-cover', '2026-05-14', null],
      ['make-e-book', '2026-05-13', null],
      ['submit', '2026-05-15', printed],
      ['check-proof', '2026-06-02', printed],
      ['approve', '2026-06-02', printed],
      ['on-sale', DAY, printed],
      ['check-page', '2026-06-08', printed],
      ['submit', '2026-05-15', shelf],
      ['approve', '2026-05-18', shelf],
      ['on-sale', DAY, shelf],
      ['check-page', '2026-06-08', shelf],
    ]);
    expect(dates()).toEqual(
      [paperback, ebook].map((id) => ({ id, publication: DAY, sale: DAY, listing: DAY })),
    );
  });

  it('names channel and format in the titles', () => {
    seedTwo();
    release();
    expect(tasks().map((task) => task.title)).toEqual(
      expect.arrayContaining([
        'Submit Paperback to Printworks Direct',
        'Check the printed proof of Paperback from Printworks Direct',
        'Put E-book (EPUB) on sale at Lanternshelf',
      ]),
    );
  });

  it('is journalled with the dates it set', () => {
    seedTwo();
    release();
    const entities = test.file.read.all<{ entity: string; n: number }>(
      "SELECT entity, count(*) AS n FROM journal WHERE action = 'changed' AND hash IS NOT NULL AND json_extract(after, '$.on_sale_date') = ? GROUP BY entity ORDER BY entity",
      DAY,
    );
    expect(entities).toEqual([
      { entity: 'format', n: 2 },
      { entity: 'listing', n: 2 },
    ]);
  });

  it('keeps off the days that Settings say are not worked', () => {
    seedTwo();
    test.command(({ db }) => {
      db.run(
        "INSERT INTO setting (name, value) VALUES ('holidays', '[\"2026-05-15\"]'), ('workingDays', '[1,2,3,4,5]')",
      );
    });
    release();
    expect(tasks().map((task) => task.due_on)).not.toContain('2026-05-15');
  });

  it('leaves out formats that are live, retired or cancelled, and keeps their dates', () => {
    const { paperback, ebook } = seedTwo();
    test.command(({ db }) => {
      const channel = seedChannel(db, 'Nettlewick Bookshop');
      const live = seedFormat(db, edition, { form: 'BB' });
      seedListing(db, live, channel, { standing: 'selling' });
      const retired = seedFormat(db, edition, { form: 'BE' });
      seedListing(db, retired, channel, { standing: 'gone' });
      const cancelled = seedFormat(db, edition, { form: 'BH', number: false });
      seedListing(db, cancelled, channel);
      db.run(
        "UPDATE format SET cancelled_on = '2026-02-02', cancel_reason = 'Too dear.' WHERE id = ?",
        cancelled,
      );
    });
    release();
    expect(
      dates()
        .filter((row) => row.sale === DAY)
        .map((row) => row.id),
    ).toEqual([paperback, ebook]);
    expect(tasks().some((task) => task.title.includes('Nettlewick'))).toBe(false);
  });
});

describe('a release that is not ready', () => {
  it('is refused without any listing, without any left, and without a number', () => {
    expect(refusalOf(() => release())).toMatchObject({
      code: 'NOT_READY',
      message: expect.stringContaining('list its formats first'),
    });
    test.command(({ db }) => {
      const channel = seedChannel(db, 'Printworks Direct');
      seedListing(db, seedFormat(db, edition), channel, { standing: 'selling' });
    });
    expect(refusalOf(() => release())).toMatchObject({
      code: 'NOT_READY',
      message: expect.stringContaining('left to release'),
    });
    test.command(({ db }) => {
      const bare = seedFormat(db, edition, { form: 'BB', number: false });
      seedListing(db, bare, seedChannel(db, 'Broadside Wholesale'));
    });
    expect(refusalOf(() => release())).toMatchObject({
      code: 'NOT_READY',
      message: 'Hardcover of The Salt Almanac, 2nd edition has no number yet; take one first.',
    });
    expect(tasks()).toEqual([]);
  });

  it('is refused on a day that has passed, for an edition that is not there, and twice', () => {
    seedTwo();
    expect(refusalOf(() => release('2026-03-01'))).toMatchObject({ code: 'BAD_INPUT', field: 'day' });
    const nowhere = refusalOf(() =>
      test.command((context) =>
        planCommands['plans.release'](context, { ...AS_USUAL, editionId: 99, day: DAY }),
      ),
    );
    expect(nowhere.code).toBe('NOT_FOUND');
    release();
    const again = refusalOf(() => release('2026-07-01'));
    expect(again.code).toBe('ALREADY_EXISTS');
    expect(again.message).toContain(DAY);
  });

  it('is refused on another day than a channel already locks', () => {
    const { paperback, printed } = seedTwo();
    const lock = (heldOn: string | null) =>
      test.command(({ db }) => {
        db.run(`UPDATE channel SET locks_more = '[]'`);
        db.run('UPDATE format SET on_sale_date = ? WHERE id = ?', heldOn, paperback);
        db.run(`UPDATE channel SET locks_more = '["onSaleDate"]' WHERE name = 'Printworks Direct'`);
      });
    test.command((context) => moveListing(context, { id: printed, to: 'sent' }));
    lock(null);
    expect(refusalOf(() => release())).toMatchObject({
      code: 'NOT_READY',
      message: expect.stringContaining('sent without one'),
    });
    lock('2026-06-12');
    expect(refusalOf(() => release())).toMatchObject({
      code: 'NOT_READY',
      message: expect.stringContaining('on 2026-06-12; choose that day'),
    });
    const { planId } = release('2026-06-12');
    expect(refusalOf(() => redate(planId, DAY)).code).toBe('STEP_REFUSED');
    expect(test.file.read.one('SELECT day FROM plan')).toEqual({ day: '2026-06-12' });
  });

  it('is planned all the same when working back lands in the past: then it is due today', () => {
    seedTwo();
    release('2026-03-06');
    const due = tasks()
      .filter((task) => task.kind === 'submit')
      .map((task) => task.due_on);
    expect(due).toEqual([MONDAY, MONDAY]);
  });
});

describe('a format that was on sale before', () => {
  it('keeps its dates when a further listing of it is released', () => {
    const { printed, paperback } = test.command(({ db }) => {
      const id = seedFormat(db, edition);
      db.run("UPDATE format SET on_sale_date = '2025-01-01' WHERE id = ?", id);
      seedListing(db, id, seedChannel(db, 'Lanternshelf'), { standing: 'selling' });
      return {
        paperback: id,
        printed: seedListing(db, id, seedChannel(db, 'Printworks Direct'), { standing: 'sent' }),
      };
    });
    test.command((context) => {
      const sold =
        context.db.one<{ id: number }>("SELECT id FROM listing WHERE standing = 'selling'")?.id ?? 0;
      moveListing(context, { id: sold, to: 'gone' });
    });
    release();
    expect(test.file.read.one('SELECT on_sale_date AS day FROM format WHERE id = ?', paperback)).toEqual({
      day: '2025-01-01',
    });
    expect(test.file.read.one('SELECT on_sale_date AS day FROM listing WHERE id = ?', printed)).toEqual({
      day: DAY,
    });
  });
});

describe('moving and dropping a release plan', () => {
  it('dates open and waiting tasks anew, leaves finished ones, and takes dates of what is not live along', () => {
    const { shelf } = seedTwo();
    const { planId } = release();
    test.command(({ db }) => {
      db.run("UPDATE task SET standing = 'done', ended_on = ? WHERE kind = 'finish-content'", MONDAY);
      db.run(
        "UPDATE task SET standing = 'waiting', waiting_for = 'the agency' WHERE kind = 'register-numbers'",
      );
      for (const [from, to] of [
        ['unsent', 'sent'],
        ['sent', 'proof'],
        ['proof', 'cleared'],
        ['cleared', 'selling'],
      ])
        db.run(
          'INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date) VALUES (?, ?, ?, ?)',
          shelf,
          from,
          to,
          MONDAY,
        );
    });
    expect(redate(planId, '2026-06-12')).toEqual({ planId, moved: tasks().length - 1 });
    const due = (kind: string) => tasks().find((task) => task.kind === kind)?.due_on;
    expect(due('finish-content')).toBe('2026-05-01');
    expect(due('register-numbers')).toBe('2026-05-15');
    expect(due('submit')).toBe('2026-05-22');
    expect(dates().map((row) => row.sale)).toEqual(['2026-06-12', DAY]);
  });

  it('drops unfinished tasks with the plan, and a new plan can be made', () => {
    seedTwo();
    const { planId, tasks: count } = release();
    test.command(({ db }) => {
      db.run("UPDATE task SET standing = 'done', ended_on = ? WHERE kind = 'finish-content'", MONDAY);
    });
    expect(drop(planId)).toEqual({ planId, dropped: count - 1 });
    expect(tasks().filter((task) => task.standing === 'done')).toHaveLength(1);
    expect(refusalOf(() => drop(planId)).code).toBe('STEP_REFUSED');
    expect(refusalOf(() => redate(planId, '2026-07-01')).message).toContain('was dropped on 2026-03-02');
    expect(release('2026-07-03').tasks).toBe(count);
  });

  it('is refused to the past, with nothing left to do, and for a plan that is not there', () => {
    seedTwo();
    const { planId } = release();
    expect(refusalOf(() => redate(planId, '2026-01-01')).code).toBe('BAD_INPUT');
    expect(refusalOf(() => redate(77, DAY)).code).toBe('NOT_FOUND');
    test.command(({ db }) => {
      db.run("UPDATE task SET standing = 'done', ended_on = ?", MONDAY);
    });
    expect(refusalOf(() => redate(planId, '2026-07-01')).code).toBe('STEP_REFUSED');
  });
});
