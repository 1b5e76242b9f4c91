import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { moveListing } from '../../src/commands/listing-steps.ts';
import { planCommands } from '../../src/commands/plans.ts';
import { taskCommands } from '../../src/commands/tasks.ts';
import { listTasks } from '../../src/contract/tasks.ts';
import { taskQueries } from '../../src/queries/tasks.ts';
import type { WriteDb } from '../../src/store/connection.ts';
import { insertNeed, insertTask } from '../../src/store/tasks.ts';
import { MONDAY, openTestFile, type TestFile } from '../support/catalogue.ts';
import { AS_USUAL, seedChannel, seedEdition, seedFormat, seedListing } from '../support/seed.ts';

let test: TestFile;
beforeEach(() => {
  test = openTestFile();
});
afterEach(() => test.close());

/** A connection that keeps the SELECT statements it was given, with what was asked last. */
function watched(db: WriteDb): { db: WriteDb; statements: Map<string, unknown[]> } {
  const statements = new Map<string, unknown[]>();
  const keep = (sql: string, params: unknown[]) => {
    if (/^\s*SELECT/.test(sql)) statements.set(sql, params);
  };
  return {
    statements,
    db: {
      orm: db.orm,
      one: (sql, ...params) => {
        keep(sql, params);
        return db.one(sql, ...params);
      },
      all: (sql, ...params) => {
        keep(sql, params);
        return db.all(sql, ...params);
      },
      run: (sql, ...params) => db.run(sql, ...params),
    },
  };
}

/** How SQLite goes about a statement, one line a step. */
function stepsOf(sql: string, params: unknown[]): string[] {
  const rows = test.file.rawRead.prepare(`EXPLAIN QUERY PLAN ${sql}`).all(...params) as { detail: string }[];
  return rows.map((row) => row.detail);
}

describe('queries about tasks and plans', () => {
  it('walk over the tasks of one plan, listing or page, never over all of them', () => {
    const seen = test.command((context) => {
      const { db, statements } = watched(context.db);
      const watching = { ...context, db };
      const editionId = seedEdition(context.db);
      const id = seedListing(
        context.db,
        seedFormat(context.db, editionId),
        seedChannel(context.db, 'Lanternshelf'),
      );
      const { planId } = planCommands['plans.release'](watching, {
        ...AS_USUAL,
        editionId,
        day: '2026-06-05',
      });
      planCommands['plans.redate'](watching, { planId, day: '2026-06-12' });
      const task =
        context.db.one<{ id: number }>("SELECT id FROM task WHERE kind = 'finish-content'")?.id ?? 0;
      taskCommands['tasks.redate'](watching, { id: task, dueOn: '2026-05-28' });
      taskCommands['tasks.finish'](watching, { id: task, note: '' });
      moveListing(watching, { id, to: 'selling' });
      planCommands['plans.retirement'](watching, { editionId, beforeReplacement: false });
      planCommands['plans.drop'](watching, { planId, reason: 'Done.' });
      return [...statements].filter(([sql]) => sql.includes('task'));
    });
    expect(seen.length).toBeGreaterThan(6);
    for (const [sql, params] of seen) {
      const steps = stepsOf(sql, params);
      expect(steps.filter((step) => /SCAN (t|s|n|task|task_need)\b|task_by_day/.test(step))).toEqual([]);
    }
  });

  it('list a page of many tasks with what each needs in no time to speak of', () => {
    test.command(({ db }) => {
      let before = 0;
      for (let at = 0; at < 3000; at += 1) {
        const id = insertTask(db, { kind: 'own', title: 'one of many', dueOn: MONDAY, note: '' });
        if (before > 0) insertNeed(db, id, before);
        before = id;
      }
    });
    const started = performance.now();
    const page = test.query((context) => taskQueries['tasks.list'](context, listTasks.input.parse({})));
    expect(page.tasks.filter((task) => task.needs.length === 1)).toHaveLength(499);
    // Walking every unfinished task for each one of the page takes seconds; this takes some tens of milliseconds.
    expect(performance.now() - started).toBeLessThan(500);
  });
});
