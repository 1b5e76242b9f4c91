import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { planCommands } from '../../src/commands/plans.ts';
import { taskCommands } from '../../src/commands/tasks.ts';
import { listTasks } from '../../src/contract/tasks.ts';
import { taskQueries } from '../../src/queries/tasks.ts';
import type { ReadDb } from '../../src/store/connection.ts';
import { MONDAY, openTestFile, type TestFile } from '../support/catalogue.ts';
import { AS_USUAL, seedChannel, seedEdition, seedFormat, seedListing } from '../support/seed.ts';

let test: TestFile;
beforeEach(() => {
  test = openTestFile();
});
afterEach(() => test.close());

const list = (filter: Record<string, unknown> = {}) =>
  test.query((context) =>
    listTasks.output.parse(taskQueries['tasks.list'](context, listTasks.input.parse(filter))),
  );
const own = (title: string, dueOn: string, workId?: number) =>
  test.command((context) => taskCommands['tasks.create'](context, { title, dueOn, note: '', workId })).taskId;

/** An edition with a release plan: a paperback on two channels. */
const seedPlan = () =>
  test.command((context) => {
    const editionId = seedEdition(context.db, { number: 2 });
    const paperback = seedFormat(context.db, editionId);
    for (const name of ['Broadside Wholesale', 'Printworks Direct'])
      seedListing(context.db, paperback, seedChannel(context.db, name));
    return {
      editionId,
      ...planCommands['plans.release'](context, { ...AS_USUAL, editionId, day: '2026-06-05' }),
    };
  });

describe('the list of tasks', () => {
  it('shows overdue tasks first, then by day', () => {
    own('tomorrow', '2026-03-03');
    own('long ago', '2026-01-01');
    own('today', MONDAY);
    own('yesterday', '2026-03-01');
    expect(list().tasks.map((task) => [task.title, task.overdue])).toEqual([
      ['long ago', true],
      ['yesterday', true],
      ['today', false],
      ['tomorrow', false],
    ]);
  });

  it('counts an ended task as not overdue, and shows it only when asked for', () => {
    const id = own('done', '2026-01-01');
    own('late', '2026-02-01');
    test.command((context) => taskCommands['tasks.finish'](context, { id, note: 'at last' }));
    expect(list().tasks.map((task) => task.title)).toEqual(['late']);
    const all = list({ standings: ['open', 'waiting', 'done', 'dropped'] }).tasks;
    expect(all.map((task) => [task.title, task.overdue, task.note])).toEqual([
      ['late', true, ''],
      ['done', false, 'at last'],
    ]);
    expect(list({ standings: [] })).toEqual({ tasks: [], total: 0 });
  });

  it('says what each task is about, where it moves its listing, and what it still needs', () => {
    const { planId, editionId } = seedPlan();
    const tasks = list().tasks;
    const submit = tasks.find((task) => task.title === 'Submit Paperback to Printworks Direct');
    expect(submit).toMatchObject({
      about: 'The Salt Almanac, 2nd edition · Paperback · Printworks Direct',
      movesTo: 'sent',
      planId,
      planKind: 'release',
      editionId,
    });
    expect(submit?.needs.map((need) => need.title)).toEqual([
      'Register the numbers with the ISBN agency, with the data it asks for',
      'Settle prices, descriptions, subjects and keywords',
      'Make the cover file of Paperback',
    ]);
    const content = tasks.find((task) => task.kind === 'finish-content');
    expect(content).toMatchObject({ about: 'The Salt Almanac, 2nd edition', movesTo: null, needs: [] });

    const settle = tasks.find((task) => task.kind === 'settle-data');
    test.command((context) => taskCommands['tasks.finish'](context, { id: settle?.id ?? 0, note: '' }));
    const after = list().tasks.find((task) => task.id === submit?.id);
    expect(after?.needs).toHaveLength(2);
  });

  it('names the work of a task of your own, and nothing for one about nothing', () => {
    const workId = test.command(({ db }) => {
      seedEdition(db, { title: 'Fen Light' });
      return db.one<{ id: number }>('SELECT id FROM work')?.id;
    });
    own('about a work', MONDAY, workId);
    own('about nothing', MONDAY);
    expect(list().tasks.map((task) => task.about)).toEqual(['Fen Light', '']);
  });

  it('filters by work, edition and days, and tells how many there are in all', () => {
    const { editionId, tasks: planned } = seedPlan();
    own('elsewhere', MONDAY);
    expect(list().total).toBe(planned + 1);
    expect(list({ editionId }).total).toBe(planned);
    const workId = list({ editionId }).tasks[0]?.workId;
    expect(list({ workId: workId ?? 0 }).total).toBe(planned);
    expect(list({ from: '2026-06-05', to: '2026-06-05' }).tasks.map((task) => task.kind)).toEqual([
      'on-sale',
      'on-sale',
    ]);
    expect(list({ count: 2 })).toMatchObject({ total: planned + 1, tasks: [{ title: 'elsewhere' }, {}] });
  });

  it('takes the same number of queries for a few tasks and for many', () => {
    const counted = (): number => {
      let queries = 0;
      const db = test.file.read;
      const counting: ReadDb = {
        orm: db.orm,
        one: (sql, ...params) => {
          queries += 1;
          return db.one(sql, ...params);
        },
        all: (sql, ...params) => {
          queries += 1;
          return db.all(sql, ...params);
        },
      };
      test.query((context) =>
        taskQueries['tasks.list']({ ...context, db: counting }, listTasks.input.parse({})),
      );
      return queries;
    };
    own('one', MONDAY);
    const few = counted();
    seedPlan();
    for (let at = 0; at < 30; at += 1) own(`more ${at}`, MONDAY);
    expect([few, counted()]).toEqual([3, 3]);
  });
});
