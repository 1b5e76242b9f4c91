import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { App } from '../../src/app.ts';
import type { InputOf, OutputOf } from '../../src/contract/index.ts';
import { contentOf, DAY, grownCatalogue, inFolder, openStill, reading } from '../faults/files.ts';
import { worldReader } from '../faults/world.ts';
import { play, stepsFor } from '../support/history.ts';
import { fetched, stage } from '../support/staged.ts';

type Calls = Parameters<typeof fetched>[0];

function calls(app: App): Calls {
  const call = (name: string, input: unknown) => {
    const answer = app.call(name, input);
    if (!answer.ok) throw new Error(`${name}: ${answer.error.message}`);
    return answer.value;
  };
  return { call } as Calls;
}

/** Opens a file, lets `work` go on with it, and closes it. */
function within<T>(file: string, work: (calls: Calls, app: App) => T): T {
  const app = openStill(file);
  try {
    return work(calls(app), app);
  } finally {
    app.close();
  }
}

const grow = (file: string, commands: number, seed: number) =>
  within(file, (_, app) =>
    reading(file, (raw) => play(app, worldReader(raw), stepsFor(seed, 5), DAY, commands)),
  );

const changesOf = (file: string) =>
  within(file, (list) => fetched(list, list.call('exports.make', { as: 'changes' }).file));

function merge(
  to: string,
  from: string,
  terms: Partial<InputOf<'changes.merge'>> = {},
): OutputOf<'changes.merge'> {
  const changes = changesOf(from);
  return within(to, (list) => list.call('changes.merge', { file: stage(list, changes), ...terms }));
}

/** Everything but the journal, and where rows came from. */
function tables(file: string): Record<string, string[]> {
  const { journal, merged_row, ...rest } = reading(file, contentOf);
  expect(journal?.length).toBeGreaterThan(0);
  expect(merged_row).toBeDefined();
  return rest;
}

const sound = (file: string) =>
  within(file, (list) =>
    expect(list.call('catalogue.check', {})).toMatchObject({ ok: true, replay: [], schema: [] }),
  );

describe('random work in a copy', () => {
  it.each([2, 5, 13, 21])(
    'brings an untouched list to where the copy stands, row by row: history %i',
    (seed) => {
      inFolder((folder) => {
        const [list, copy] = [join(folder, 'list.ledger'), join(folder, 'copy.ledger')];
        grownCatalogue(list, 30, seed);
        copyFileSync(list, copy);
        grow(copy, 60, seed + 100);
        expect(merge(list, copy)).toMatchObject({ conflicts: [], left: 0 });
        expect(tables(list)).toEqual(tables(copy));
        sound(list);
        expect(merge(list, copy)).toMatchObject({ taken: 0, conflicts: [] });
      });
    },
  );

  it.each([3, 8, 34])(
    'meets random work here: both lists stay sound, whichever side holds: history %i',
    (seed) => {
      inFolder((folder) => {
        const [list, copy] = [join(folder, 'list.ledger'), join(folder, 'copy.ledger')];
        grownCatalogue(list, 30, seed);
        copyFileSync(list, copy);
        grow(copy, 40, seed + 100);
        grow(list, 40, seed + 200);
        const merged = merge(list, copy, { otherwise: 'here' });
        expect(merged.taken + merged.left + merged.known).toBe(merged.entries);
        sound(list);
        merge(copy, list, { otherwise: 'there' });
        sound(copy);
        expect(
          merge(list, copy, { otherwise: 'here' }).conflicts.every(({ chosen }) => chosen === 'here'),
        ).toBe(true);
        sound(list);
      });
    },
  );
});
