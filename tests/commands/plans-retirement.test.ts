import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { moveListing } from '../../src/commands/listing-steps.ts';
import { planCommands } from '../../src/commands/plans.ts';
import { taskCommands } from '../../src/commands/tasks.ts';
import { MONDAY, openTestFile, refusalOf, type TestFile } from '../support/catalogue.ts';
import { AS_USUAL, seedChannel, seedEdition, seedFormat, seedListing, standingOf } from '../support/seed.ts';

const DAY = '2026-06-05';

let test: TestFile;
let first: number;
let printworks: number;
let lanternshelf: number;
let oldPaperback: number;

beforeEach(() => {
  test = openTestFile();
  test.command(({ db }) => {
    first = seedEdition(db, { number: 1 });
    printworks = seedChannel(db, 'Printworks Direct', { removalDays: 10 });
    lanternshelf = seedChannel(db, 'Lanternshelf');
    oldPaperback = seedListing(db, seedFormat(db, first), printworks, { standing: 'selling', returns: 'Y' });
  });
});
afterEach(() => test.close());

const retire = (given: { day?: string; beforeReplacement?: boolean; editionId?: number } = {}) =>
  test.command((context) =>
    planCommands['plans.retirement'](context, { editionId: first, beforeReplacement: false, ...given }),
  );
const tasks = (planId: number) =>
  test.file.read.all<{ id: number; kind: string; due_on: string; listing_id: number | null }>(
    'SELECT id, kind, due_on, listing_id FROM task WHERE plan_id = ? ORDER BY id',
    planId,
  );
const dueOf = (planId: number, kind: string) => tasks(planId).find((task) => task.kind === kind)?.due_on;
const planDay = (planId: number) =>
  test.file.read.one<{ day: string }>('SELECT day FROM plan WHERE id = ?', planId)?.day;

/** The second edition, a paperback on the same channel, unsent. */
const seedSecond = () =>
  test.command(({ db }) => {
    const second = seedEdition(db, { number: 2, replacesId: first });
    const listing = seedListing(db, seedFormat(db, second), printworks);
    return { second, listing };
  });
const releaseSecond = (second: number, day = DAY) =>
  test.command((context) => planCommands['plans.release'](context, { ...AS_USUAL, editionId: second, day }))
    .planId;
const move = (id: number, to: 'selling' | 'leaving' | 'gone') =>
  test.command((context) => moveListing(context, { id, to }));
const finish = (id: number) =>
  test.command((context) => taskCommands['tasks.finish'](context, { id, note: '' }));

describe('planning a retirement', () => {
  it('without a replacing edition asks today, and minds record, links and returns', () => {
    const { planId } = retire();
    expect(tasks(planId).map((task) => [task.kind, task.due_on, task.listing_id])).toEqual([
      ['ask-removal', MONDAY, oldPaperback],
      ['chase', '2026-03-12', oldPaperback],
      ['confirm-gone', '2026-03-19', oldPaperback],
      ['record-out-of-print', MONDAY, null],
      ['move-links', MONDAY, null],
      ['note-returns', MONDAY, null],
    ]);
  });

  it('moves the listing from asking to gone, and the format is then retired', () => {
    const { planId } = retire();
    const task = (kind: string) => tasks(planId).find((entry) => entry.kind === kind)?.id ?? 0;
    expect(finish(task('ask-removal')).moved).toEqual([{ listingId: oldPaperback, standing: 'leaving' }]);
    expect(finish(task('chase')).moved).toEqual([]);
    expect(standingOf(test.file.read, oldPaperback)).toBe('leaving');
    expect(finish(task('confirm-gone')).moved).toEqual([{ listingId: oldPaperback, standing: 'gone' }]);
    expect(test.file.read.one('SELECT standing FROM format_standing')).toEqual({ standing: 'retired' });
  });

  it('is refused with the reason when nothing is on sale, on a past day, and twice', () => {
    const bare = test.command(({ db }) => seedEdition(db, { title: 'Fen Light' }));
    expect(refusalOf(() => retire({ editionId: bare })).message).toBe(
      'Nothing of Fen Light can be taken off sale: it is listed nowhere.',
    );
    test.command(({ db }) => seedListing(db, seedFormat(db, bare), lanternshelf, { standing: 'proof' }));
    expect(refusalOf(() => retire({ editionId: bare }))).toMatchObject({
      code: 'NOT_READY',
      message: expect.stringContaining('take back what was sent'),
    });
    expect(refusalOf(() => retire({ day: '2026-02-01' })).code).toBe('BAD_INPUT');
    retire();
    expect(refusalOf(() => retire()).code).toBe('ALREADY_EXISTS');
  });
});

describe('the retirement of an edition that is replaced', () => {
  it('is refused until the new one sells or has a release day, unless that is meant', () => {
    const { second, listing } = seedSecond();
    const early = refusalOf(() => retire());
    expect(early).toMatchObject({
      code: 'NOT_READY',
      message: expect.stringContaining('plan its release first'),
    });
    releaseSecond(second);
    expect(refusalOf(() => retire({ day: '2026-06-04' })).message).toContain(
      `choose its release day ${DAY} or later`,
    );
    const meant = retire({ beforeReplacement: true, day: MONDAY });
    expect(dueOf(meant.planId, 'ask-removal')).toBe(MONDAY);
    expect(standingOf(test.file.read, listing)).toBe('unsent');
  });

  it('asks today once the new one sells', () => {
    const { listing } = seedSecond();
    move(listing, 'selling');
    expect(dueOf(retire().planId, 'ask-removal')).toBe(MONDAY);
  });

  it('asks on the release day and only after the new one is on sale on that channel', () => {
    const { second, listing } = seedSecond();
    const release = releaseSecond(second);
    const { planId } = retire();
    expect(planDay(planId)).toBe(DAY);
    expect(dueOf(planId, 'ask-removal')).toBe(DAY);
    const ask = tasks(planId).find((task) => task.kind === 'ask-removal')?.id ?? 0;

    test.setToday(DAY);
    const refused = refusalOf(() => finish(ask));
    expect(refused).toMatchObject({
      code: 'STEP_REFUSED',
      message: expect.stringContaining("'Put Paperback on sale at Printworks Direct'"),
    });
    expect(standingOf(test.file.read, oldPaperback)).toBe('selling');

    move(listing, 'selling');
    expect(tasks(release).some((task) => task.kind === 'on-sale')).toBe(true);
    expect(finish(ask).moved).toEqual([{ listingId: oldPaperback, standing: 'leaving' }]);
  });

  it('follows the release to another day, and cannot be left behind by dropping it', () => {
    const { second } = seedSecond();
    const release = releaseSecond(second);
    const { planId } = retire();
    test.command((context) => planCommands['plans.redate'](context, { planId: release, day: '2026-06-12' }));
    expect([planDay(planId), dueOf(planId, 'ask-removal')]).toEqual(['2026-06-12', '2026-06-12']);
    expect(dueOf(planId, 'chase')).toBe('2026-06-22');

    const drop = (id: number) =>
      test.command((context) => planCommands['plans.drop'](context, { planId: id, reason: 'Postponed.' }));
    expect(refusalOf(() => drop(release)).message).toContain(
      'The retirement plan for The Salt Almanac, 1st edition',
    );
    drop(planId);
    drop(release);
  });

  it('moved by itself is never asked before the release it waits for', () => {
    const { second } = seedSecond();
    releaseSecond(second);
    const { planId } = retire({ day: '2026-06-20' });
    expect(dueOf(planId, 'ask-removal')).toBe('2026-06-22');
    test.command((context) => planCommands['plans.redate'](context, { planId, day: '2026-04-01' }));
    expect(dueOf(planId, 'ask-removal')).toBe(DAY);
    expect(dueOf(planId, 'note-returns')).toBe('2026-04-01');
  });

  it('keeps its own later day when the release moves to a day before that', () => {
    const { second } = seedSecond();
    const release = releaseSecond(second);
    const { planId } = retire({ day: '2026-07-01' });
    test.command((context) => planCommands['plans.redate'](context, { planId: release, day: '2026-06-12' }));
    expect([planDay(planId), dueOf(planId, 'ask-removal')]).toEqual(['2026-07-01', '2026-07-01']);
  });
});
