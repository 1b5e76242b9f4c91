import { isDeepStrictEqual } from 'node:util';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';
import { KINDS, moveOf, type Step, surprise } from '../support/history.ts';
import { type Figure, Tally } from './figure.ts';
import { dayAfter } from './moves/plans.ts';
import { Shadow } from './shadow.ts';
import { type World, worldReader } from './world.ts';

const FIRST_DAY = '2026-03-02';

/** Steps as fast-check makes them, and makes them smaller; half of them are wrong on purpose. */
const step = fc.record({
  kind: fc.constantFrom(...KINDS),
  wrong: fc.boolean(),
  dice: fc.array(fc.nat(1_000_003), { minLength: 5, maxLength: 5 }),
});

/** Which part of two worlds differs, for a reader. */
function difference(is: World, must: World): string | null {
  for (const part of Object.keys(must) as (keyof World)[]) {
    if (part === 'newest' || isDeepStrictEqual(is[part], must[part])) continue;
    const entries = (world: World) => JSON.stringify([...(world[part] as Map<unknown, unknown>)]);
    return `${part} are ${entries(is)}, the model says ${entries(must)}`;
  }
  return null;
}

interface Played {
  faults: string[];
  wrong: number;
  refused: number;
}

/** Plays the steps on a catalogue, each answer held against the model and each state against the shadow. */
function playAgainstModel(catalogue: TestCatalogue, raw: Database.Database, steps: readonly Step[]): Played {
  const read = worldReader(raw);
  const shadow = new Shadow(raw);
  const faults = shadow.observe();
  let [world, today, refused] = [read(), FIRST_DAY, 0];
  let before: World | null = null;
  for (const [at, next] of steps.entries()) {
    if (faults.length > 0) break;
    if ((next.dice[1] ?? 0) % 60 === 0) {
      today = dayAfter(today, 1 + ((next.dice[2] ?? 0) % 9));
      catalogue.setToday(today);
    }
    const move = moveOf(next, world, today);
    const answer = catalogue.app.call(move.name, move.input);
    const odd = surprise(move, answer);
    const now = read();
    if (odd) faults.push(`step ${at}: ${odd}`);
    let must: World | null = null;
    if (!answer.ok) {
      refused += 1;
      must = world;
    } else if (move.name === 'journal.undo') must = before;
    else if (move.after) {
      must = structuredClone(world);
      move.after(must, answer.value as never);
    }
    const wrong = must && difference(now, must);
    if (wrong) faults.push(`step ${at}, ${move.name} ${JSON.stringify(move.input)}: ${wrong}`);
    if (!answer.ok && now.newest !== world.newest)
      faults.push(`step ${at}: a refused command was journalled`);
    faults.push(...shadow.observe().map((fault) => `step ${at}, ${move.name}: ${fault}`));
    if (now.newest !== world.newest) before = world;
    world = now;
  }
  return { faults, wrong: steps.filter((one) => one.wrong).length, refused };
}

/** One history on a file of its own, checked whole at its end. */
function history(steps: readonly Step[], withDemo: boolean): Played {
  const catalogue = openTestCatalogue(FIRST_DAY);
  const raw = new Database(catalogue.file, { readonly: true });
  try {
    if (withDemo) catalogue.call('catalogue.demo', {});
    else {
      catalogue.call('blocks.add', { prefix: '979-8-969999' });
      for (const name of ['Lanternshelf', 'Printworks Direct']) catalogue.call('channels.create', { name });
    }
    const played = playAgainstModel(catalogue, raw, steps);
    const { ok, sentences } = catalogue.call('catalogue.check', {});
    return ok ? played : { ...played, faults: [...played.faults, ...sentences] };
  } finally {
    raw.close();
    catalogue.close();
  }
}

/** Random commands through the operations, on files of at most `perFile` commands each; ends at the first fault. */
export function commandHistories(commands: number, seed: number, perFile = 250): Figure {
  const tally = new Tally('random commands against the model');
  const steps = fc.array(step, { minLength: 1, maxLength: perFile, size: 'max' });
  let found = false;
  const property = fc.property(steps, fc.boolean(), (list, withDemo) => {
    const { faults, wrong, refused } = history(list, withDemo);
    // A fault is then looked for in fewer and fewer steps; those tries are not counted.
    found ||= faults.length > 0;
    if (faults.length > 0) throw new Error(faults.slice(0, 3).join('\n'));
    if (found) return;
    tally.add([], list.length);
    tally.count('wrong on purpose', wrong);
    tally.count('refused', refused);
    tally.count('files');
  });
  for (let run = 0; tally.tried < commands && !found; run += 1) {
    const result = fc.check(property, { seed: seed + run, numRuns: 1, interruptAfterTimeLimit: 60_000 });
    const shown = result.counterexample?.[0].map(({ kind, wrong }) => `${kind}${wrong ? ' (wrong)' : ''}`);
    if (result.failed)
      tally.add([
        `seed ${seed + run}, ${String(result.errorInstance)}; smallest history: ${shown?.join(', ')}, ${result.counterexample?.[1] ? 'with' : 'without'} the demo`,
      ]);
  }
  return tally.figure();
}
