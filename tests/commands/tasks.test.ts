import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { moveListing } from '../../src/commands/listing-steps.ts';
import { planCommands } from '../../src/commands/plans.ts';
import { taskCommands } from '../../src/commands/tasks.ts';
import type { ListingStanding } from '../../src/contract/terms.ts';
import { MONDAY, openTestFile, refusalOf, type TestFile } from '../support/catalogue.ts';
import { AS_USUAL, seedChannel, seedEdition, seedFormat, seedListing, standingOf } from '../support/seed.ts';

const DAY = '2026-06-05';

let test: TestFile;
let edition: number;
let listing: number;
let planId: number;

beforeEach(() => {
  test = openTestFile();
  test.command(({ db }) => {
    edition = seedEdition(db, { number: 2 });
    listing = seedListing(db, seedFormat(db, edition), seedChannel(db, 'Printworks Direct'));
  });
  planId = test.command((context) =>
    planCommands['plans.release'](context, { ...AS_USUAL, editionId: edition, day: DAY }),
  ).planId;
});
afterEach(() => test.close());

interface Row {
  id: number;
  standing: string;
  due_on: string;
  ended_on: string | null;
  note: string;
  waiting_for: string;
  dropped_reason: string | null;
}
const task = (kind: string) => {
  const row = test.file.read.one<Row>('SELECT * FROM task WHERE kind = ? ORDER BY id DESC', kind);
  if (!row) throw new Error(`No task of kind ${kind}.`);
  return row;
};
const finish = (kind: string, given: { on?: string; note?: string } = {}) =>
  test.command((context) => taskCommands['tasks.finish'](context, { id: task(kind).id, note: '', ...given }));
const redate = (kind: string, dueOn: string) =>
  test.command((context) => taskCommands['tasks.redate'](context, { id: task(kind).id, dueOn }));
const wait = (kind: string, waitingFor: string, dueOn?: string) =>
  test.command((context) => taskCommands['tasks.wait'](context, { id: task(kind).id, waitingFor, dueOn }));
const drop = (kind: string) =>
  test.command((context) =>
    taskCommands['tasks.drop'](context, { id: task(kind).id, reason: 'Not wanted.' }),
  );
const move = (to: ListingStanding) => test.command((context) => moveListing(context, { id: listing, to }));

const PREPARATION = ['finish-content', 'register-numbers', 'settle-data', 'make-interior', 'make-cover'];

describe('finishing tasks', () => {
  it('walks a release from the first file to the shop page, and the listing with it', () => {
    const moved: unknown[] = [];
    for (const kind of [...PREPARATION, 'submit', 'check-proof', 'approve', 'on-sale', 'check-page'])
      moved.push(...finish(kind, { on: '2026-03-01' }).moved);
    expect(moved).toEqual(
      ['sent', 'proof', 'cleared', 'selling'].map((standing) => ({ listingId: listing, standing })),
    );
    expect(test.file.read.one("SELECT count(*) AS n FROM task WHERE standing <> 'done'")).toEqual({ n: 0 });
    expect(
      test.file.read.one('SELECT on_date AS day FROM listing_step WHERE to_standing = ?', 'selling'),
    ).toEqual({
      day: '2026-03-01',
    });
  });

  it('is refused while what comes first is not done, naming it, and moves nothing', () => {
    const refused = refusalOf(() => finish('submit'));
    expect(refused.code).toBe('STEP_REFUSED');
    expect(refused.message).toContain("'Make the cover file of Paperback'");
    expect(refused.message).toContain(
      "'Register the numbers with the ISBN agency, with the data it asks for'",
    );
    expect(standingOf(test.file.read, listing)).toBe('unsent');
  });

  it('passes the proof by where a channel gives none', () => {
    const shop = test.command(({ db }) => {
      const other = seedEdition(db, { title: 'Fen Light' });
      const id = seedListing(
        db,
        seedFormat(db, other),
        seedChannel(db, 'Nettlewick Bookshop', { proof: 'none' }),
      );
      planCommands['plans.release']({ db, today: MONDAY }, { ...AS_USUAL, editionId: other, day: DAY });
      db.run(
        "UPDATE task SET standing = 'done', ended_on = ? WHERE edition_id = ? AND listing_id IS NULL",
        MONDAY,
        other,
      );
      return id;
    });
    const finishOf = (kind: string) => {
      const id = test.file.read.one<{ id: number }>(
        'SELECT id FROM task WHERE listing_id = ? AND kind = ?',
        shop,
        kind,
      )?.id;
      return test.command((context) => taskCommands['tasks.finish'](context, { id: id ?? 0, note: '' }));
    };
    finishOf('submit');
    expect(finishOf('approve').moved).toEqual([{ listingId: shop, standing: 'cleared' }]);
    expect(
      test.file.read.all(
        'SELECT to_standing AS "to" FROM listing_step WHERE listing_id = ? ORDER BY id',
        shop,
      ),
    ).toEqual([{ to: 'sent' }, { to: 'proof' }, { to: 'cleared' }]);
  });

  it('only ends the task when its listing is there already or further', () => {
    for (const kind of PREPARATION) finish(kind);
    finish('submit');
    move('unsent');
    move('selling');
    expect(task('on-sale').standing).toBe('done');
    expect(standingOf(test.file.read, listing)).toBe('selling');
    const asked = test.command((context) =>
      planCommands['plans.retirement'](context, { editionId: edition, beforeReplacement: false }),
    );
    expect(asked.tasks).toBeGreaterThan(0);
    test.command(({ db }) => {
      for (const [from, to] of [
        ['selling', 'leaving'],
        ['leaving', 'gone'],
      ])
        db.run(
          'INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date) VALUES (?, ?, ?, ?)',
          listing,
          from,
          to,
          MONDAY,
        );
    });
    expect(finish('ask-removal').moved).toEqual([]);
    expect(finish('confirm-gone').moved).toEqual([]);
    expect(task('confirm-gone').standing).toBe('done');
  });

  it('goes through everything again after a refusal', () => {
    for (const kind of PREPARATION) finish(kind);
    finish('submit');
    finish('check-proof');
    move('unsent');
    expect(refusalOf(() => finish('approve')).code).toBe('STEP_REFUSED');
    for (const [kind, standing] of [
      ['submit', 'sent'],
      ['check-proof', 'proof'],
      ['approve', 'cleared'],
    ] as const)
      expect(finish(kind).moved).toEqual([{ listingId: listing, standing }]);
  });

  it('keeps the hint a task has above the note of the person who did it', () => {
    const hint = task('register-numbers').note;
    finish('register-numbers', { note: 'Reported by form.' });
    expect(task('register-numbers').note).toBe(`${hint}\nReported by form.`);
  });

  it('is refused on a day to come, for an ended task and for one that is not there', () => {
    expect(refusalOf(() => finish('finish-content', { on: '2026-03-03' }))).toMatchObject({
      code: 'STEP_REFUSED',
      field: 'on',
    });
    finish('finish-content');
    for (const again of [
      () => finish('finish-content'),
      () => drop('finish-content'),
      () => wait('finish-content', 'x'),
    ])
      expect(refusalOf(again)).toMatchObject({
        code: 'STEP_REFUSED',
        message: expect.stringContaining('(done)'),
      });
    expect(
      refusalOf(() => test.command((context) => taskCommands['tasks.finish'](context, { id: 999, note: '' })))
        .code,
    ).toBe('NOT_FOUND');
  });

  it('is undone as a whole when the listing cannot follow', () => {
    for (const kind of PREPARATION) finish(kind);
    test.command(({ db }) => {
      db.run("UPDATE number SET spent_on = ?, spent_reason = 'Misprinted.'", MONDAY);
    });
    expect(refusalOf(() => finish('submit')).code).toBe('NOT_READY');
    expect(task('submit').standing).toBe('open');
  });
});

describe('dating, waiting and dropping', () => {
  it('takes later tasks along, up to the fixed day of the release', () => {
    redate('settle-data', '2026-06-02');
    expect(['settle-data', 'submit', 'check-proof'].map((kind) => task(kind).due_on)).toEqual([
      '2026-06-02',
      '2026-06-02',
      '2026-06-04',
    ]);
    const late = refusalOf(() => redate('submit', '2026-06-06'));
    expect(late).toMatchObject({ code: 'STEP_REFUSED', message: expect.stringContaining('move the plan') });
    expect(refusalOf(() => redate('on-sale', '2026-06-08')).code).toBe('STEP_REFUSED');
  });

  it('takes later tasks along to a working day', () => {
    // 2026-05-30 is a Saturday: the day a person chooses is kept, what has to follow is not put on it.
    redate('finish-content', '2026-05-30');
    expect(
      ['finish-content', 'make-interior', 'make-cover', 'submit'].map((kind) => task(kind).due_on),
    ).toEqual(['2026-05-30', '2026-06-01', '2026-06-01', '2026-06-02']);
  });

  it('is refused to a day before what comes first', () => {
    const early = refusalOf(() => redate('submit', '2026-03-09'));
    expect(early).toMatchObject({ code: 'STEP_REFUSED', field: 'dueOn' });
    expect(early.message).toContain("'Settle prices, descriptions, subjects and keywords'");
    redate('finish-content', '2026-03-05');
    expect(task('finish-content').due_on).toBe('2026-03-05');
  });

  it('waits for somebody and opens again, with another day if given', () => {
    wait('register-numbers', 'the agency', '2026-05-20');
    expect(task('register-numbers')).toMatchObject({
      standing: 'waiting',
      waiting_for: 'the agency',
      due_on: '2026-05-20',
    });
    expect(refusalOf(() => finish('submit')).message).toContain('Register the numbers');
    wait('register-numbers', '');
    expect(task('register-numbers')).toMatchObject({
      standing: 'open',
      waiting_for: '',
      due_on: '2026-05-20',
    });
  });

  it('drops with a reason, and what needed the task can go on', () => {
    for (const kind of PREPARATION) if (kind !== 'make-cover') finish(kind);
    drop('make-cover');
    expect(task('make-cover')).toMatchObject({
      standing: 'dropped',
      ended_on: MONDAY,
      dropped_reason: 'Not wanted.',
    });
    expect(finish('submit').moved).toHaveLength(1);
    expect(planId).toBeGreaterThan(0);
  });
});

describe('a task of your own', () => {
  it('is kept with its work, and refused for a work that is not there', () => {
    const create = (workId?: number) =>
      test.command((context) =>
        taskCommands['tasks.create'](context, {
          title: 'Thank the printer',
          dueOn: '2026-03-07',
          note: '',
          workId,
        }),
      );
    const work = test.file.read.one<{ id: number }>('SELECT id FROM work')?.id;
    create(work);
    create();
    expect(test.file.read.all("SELECT work_id AS work, due_on AS due FROM task WHERE kind = 'own'")).toEqual([
      { work, due: '2026-03-07' },
      { work: null, due: '2026-03-07' },
    ]);
    expect(refusalOf(() => create(99)).code).toBe('NOT_FOUND');
    expect(
      test.command((context) => taskCommands['tasks.finish'](context, { id: task('own').id, note: '' }))
        .moved,
    ).toEqual([]);
  });
});
