import fc from 'fast-check';
import { expect, it } from 'vitest';
import { blockNumber } from '../../src/rules/isbn/index.ts';
import { allBlocks, insertNumber, nextFreeIndex } from '../../src/store/numbers.ts';
import { openTestCatalogue, openTestFile } from '../support/catalogue.ts';

/** What the runs must be, worked out from the taken indexes themselves. */
function runsOf(taken: Set<number>): { first: number; last: number }[] {
  const runs: { first: number; last: number }[] = [];
  for (const index of [...taken].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last && last.last === index - 1) last.last = index;
    else runs.push({ first: index, last: index });
  }
  return runs;
}

it('keeps the runs of taken numbers equal to the numbers, for any order of taking and releasing', () => {
  const test = openTestFile();
  test.command(({ db }) =>
    db.run(
      "INSERT INTO number_block (digits, hyphenated_prefix, agency) VALUES ('9798969999', '979-8-969999', 'x')",
    ),
  );
  const block = allBlocks(test.file.read)[0];
  if (!block) throw new Error('The block is missing.');
  const step = fc.record({ take: fc.boolean(), index: fc.integer({ min: 0, max: 99 }) });
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 60 }), (steps) => {
      test.command(({ db }) => {
        const taken = new Set<number>();
        for (const { take, index } of steps) {
          const isbn13 = blockNumber(block, index);
          if (take && !taken.has(index)) {
            insertNumber(db, { isbn13, reservedFor: 'x', reservedOn: '2026-01-01' });
            taken.add(index);
          }
          if (!take && taken.has(index)) {
            db.run('DELETE FROM number WHERE isbn13 = ?', isbn13);
            taken.delete(index);
          }
        }
        const runs = db.all('SELECT first_index AS "first", last_index AS "last" FROM number_run ORDER BY 1');
        expect(runs).toEqual(runsOf(taken));
        expect(db.one('SELECT reserved, assigned, spent FROM number_tally')).toEqual({
          reserved: taken.size,
          assigned: 0,
          spent: 0,
        });
        for (const from of [0, 7, 50, 99]) {
          const free =
            Array.from({ length: 100 - from }, (_, i) => from + i).find((i) => !taken.has(i)) ?? null;
          expect(nextFreeIndex(db, block, from)).toBe(free);
        }
        db.run('DELETE FROM number');
      });
    }),
    { numRuns: 150 },
  );
  test.close();
});

it('lists free numbers by their gaps', () => {
  const catalogue = openTestCatalogue();
  catalogue.call('blocks.add', { prefix: '979-8-969999' });
  for (const isbn of ['979-8-969999-00-8', '979-8-969999-02-2', '979-8-969999-99-2'])
    catalogue.call('numbers.reserve', { isbn, reservedFor: 'a series' });
  const free = catalogue.call('numbers.list', { blockId: 1, standing: 'free', from: 0, count: 1000 });
  const all = catalogue.call('numbers.list', { blockId: 1, from: 0, count: 100 });
  expect(free.total).toBe(97);
  expect(free.rows).toEqual(all.rows.filter((row) => row.standing === 'free'));
  const pages = [0, 10, 95].flatMap(
    (from) => catalogue.call('numbers.list', { blockId: 1, standing: 'free', from, count: 2 }).rows,
  );
  expect(pages.map((row) => row.index)).toEqual([1, 3, 12, 13, 97, 98]);
  catalogue.close();
});
