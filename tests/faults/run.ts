import { commandHistories } from './commands.ts';
import { fullDisks } from './disk.ts';
import type { Figure } from './figure.ts';
import { flippedBits } from './flips.ts';
import { hostileStatements } from './hostile.ts';
import { kills } from './kill.ts';
import { alteredRules } from './rules.ts';
import { tornLogs } from './torn.ts';

/**
 * `npm run faults` shows in figures that a catalogue does not lie; `npm run faults -- flips disk` runs some of it,
 * `-- --seed 5` with other numbers. Ends with 1 when anything failed.
 */
const PARTS: Record<string, (seed: number) => Figure | Promise<Figure>> = {
  rules: () => alteredRules(),
  flips: (seed) => flippedBits(500, seed),
  logs: (seed) => tornLogs(300, seed),
  disk: (seed) => fullDisks(100, seed),
  hostile: (seed) => hostileStatements(20_000, seed),
  commands: (seed) => commandHistories(20_000, seed),
  kills: (seed) => kills(1000, seed),
};

function print({ what, tried, held, failed, notes, seconds }: Figure): void {
  const number = (n: number) => n.toLocaleString('en').padStart(7);
  console.log(
    `${what.padEnd(46)} tried ${number(tried)}  held ${number(held)}  failed ${number(failed.length)}  ${seconds.toFixed(0)} s`,
  );
  for (const note of notes) console.log(`    ${note}`);
  for (const failure of failed.slice(0, 10)) console.log(`    FAILED ${failure.slice(0, 1000)}`);
}

const words = process.argv.slice(2);
const seedAt = words.indexOf('--seed');
const seed = seedAt >= 0 ? Number(words[seedAt + 1]) : 1;
const named = words.filter((word) => Object.hasOwn(PARTS, word));
const unknown = words.filter((word, at) => !Object.hasOwn(PARTS, word) && at !== seedAt && at !== seedAt + 1);

if (unknown.length > 0 || !Number.isInteger(seed)) {
  console.error(`There is no part '${unknown[0] ?? '--seed'}'; there are: ${Object.keys(PARTS).join(', ')}.`);
  process.exitCode = 2;
} else {
  for (const part of named.length > 0 ? named : Object.keys(PARTS)) {
    const figure = await PARTS[part]?.(seed);
    if (!figure) continue;
    print(figure);
    if (figure.failed.length > 0) process.exitCode = 1;
  }
}
