import type { App } from '../../src/app.ts';
import type { Answer } from '../../src/contract/operation.ts';
import type { RefusalCode } from '../../src/contract/refusal.ts';
import { garbageMoves } from '../faults/moves/garbage.ts';
import { numberMoves } from '../faults/moves/numbers.ts';
import { placeMoves } from '../faults/moves/places.ts';
import { planMoves } from '../faults/moves/plans.ts';
import { recordMoves } from '../faults/moves/records.ts';
import type { World } from '../faults/world.ts';

// Random histories of a catalogue: each step is plain data (and so can be made smaller when it finds a fault) and
// becomes a command in the light of what the catalogue holds by then.

/** One step: which kind of move, wrong on purpose or not, and the numbers that decide everything else. */
export interface Step {
  kind: string;
  wrong: boolean;
  dice: number[];
}

/** Hands out the numbers of a step, over and over. */
export class Dice {
  readonly #numbers: readonly number[];
  #at = 0;

  constructor(numbers: readonly number[]) {
    this.#numbers = numbers.length > 0 ? numbers : [0];
  }

  /** A whole number from 0 to n − 1. */
  below(n: number): number {
    const value = this.#numbers[this.#at % this.#numbers.length] ?? 0;
    this.#at += 1;
    return (value + this.#at * 7919) % Math.max(1, n);
  }

  of<T>(from: readonly T[]): T | undefined {
    return from[this.below(from.length)];
  }

  /** One of the values, which are known to be there. */
  oneOf<T>(first: T, ...rest: T[]): T {
    return this.of([first, ...rest]) ?? first;
  }
}

/** What must come of a command: carried out, refused (with this code), or either where the model does not say. */
export type Expected = 'ok' | 'refused' | 'either' | RefusalCode;

export interface Move {
  name: string;
  input: unknown;
  expect: Expected;
  /** Changes the model as the command must have changed the catalogue; without it the catalogue is read anew. */
  after?: (world: World, value: never) => void;
}

/** Makes a move from a world; null where there is nothing to make it with. */
export type Maker = (world: World, dice: Dice, wrong: boolean, today: string) => Move | null;

const MAKERS: Record<string, Maker> = {
  ...numberMoves,
  ...recordMoves,
  ...placeMoves,
  ...planMoves,
  ...garbageMoves,
};

/** Kinds of move, the everyday ones more than once. */
export const KINDS: readonly string[] = [
  ...Object.keys(MAKERS),
  ...['createFormat', 'createFormat', 'createListing', 'createListing', 'assign', 'assign', 'reserve'],
  ...[
    'move',
    'move',
    'move',
    'move',
    'move',
    'updateEdition',
    'updateFormat',
    'cancelFormat',
    'correct',
    'undo',
  ],
];

/** The command of a step; a new work where the step has nothing to work with. */
export function moveOf(step: Step, world: World, today: string): Move {
  const make = (kind: string) => MAKERS[kind]?.(world, new Dice(step.dice), step.wrong, today) ?? null;
  const move = make(step.kind) ?? make('createWork');
  if (!move) throw new Error(`There is no move ${step.kind}.`);
  return move;
}

/** Why an answer is not what the model expects, or null. INTERNAL is never expected. */
export function surprise(move: Move, answer: Answer<unknown>): string | null {
  const got = answer.ok ? 'ok' : answer.error.code;
  const shown = `${move.name} ${JSON.stringify(move.input)}: expected ${move.expect}, got ${got}`;
  if (!answer.ok && answer.error.code === 'INTERNAL') return `${shown} (${answer.error.message})`;
  if (!answer.ok && answer.error.message.trim() === '') return `${shown} without a sentence`;
  if (move.expect === 'either' || move.expect === got) return null;
  return move.expect === 'refused' && !answer.ok ? null : shown;
}

/** Numbers that look random and are the same for the same seed (mulberry32). */
export function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return (mixed ^ (mixed >>> 14)) >>> 0;
  };
}

/** Steps without end for a seed; `wrong` of every hundred are wrong on purpose. */
export function* stepsFor(seed: number, wrong: number): Generator<Step> {
  const next = randomNumbers(seed);
  for (;;)
    yield {
      kind: KINDS[next() % KINDS.length] ?? 'createWork',
      wrong: next() % 100 < wrong,
      dice: Array.from({ length: 8 }, () => next() % 1_000_003),
    };
}

/** Plays steps on an open catalogue, whatever comes of them; answers how many were carried out. */
export function play(
  app: Pick<App, 'call'>,
  read: () => World,
  steps: Iterable<Step>,
  today: string,
  count: number,
): number {
  let done = 0;
  let tried = 0;
  for (const step of steps) {
    if (tried >= count) break;
    tried += 1;
    const move = moveOf(step, read(), today);
    if (app.call(move.name, move.input).ok) done += 1;
  }
  return done;
}
