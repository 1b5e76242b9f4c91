import { copyFileSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { Refusal } from '../../src/contract/refusal.ts';
import { randomNumbers } from '../support/history.ts';
import { type Figure, Tally } from './figure.ts';
import { contentOf, grownCatalogue, inFolder, openStill, reading } from './files.ts';

const REGIONS = ['the header', 'one page', 'anywhere', 'a row of text'] as const;

/** Flips bits of a copy in one region of the file. */
function flip(bytes: Buffer, next: () => number, bits: number): string {
  const region = REGIONS[next() % REGIONS.length] ?? 'anywhere';
  const page = 4096 * (next() % (bytes.length / 4096));
  const words = ['Almanac', 'Printworks', '979896999', 'selling', '2026-03-02', 'Maren'];
  const from = next() % bytes.length;
  const found = bytes.indexOf(words[next() % words.length] ?? '', from);
  const span = {
    'the header': [0, 100],
    'one page': [page, 4096],
    anywhere: [0, bytes.length],
    'a row of text': [Math.max(0, found), 24],
  }[region];
  const [start = 0, length = 1] = span;
  for (let at = 0; at < bits; at += 1) {
    const offset = Math.min(bytes.length - 1, start + (next() % length));
    bytes.writeUInt8(bytes.readUInt8(offset) ^ (1 << (next() % 8)), offset);
  }
  return region;
}

type Told = 'refused at opening' | 'told at opening' | 'told by the check' | 'all content equal' | 'silent';

/** Whether SQLite's own quick check, which is all most programs run, finds anything. */
function quickCheckTells(file: string): boolean {
  try {
    return reading(file, (raw) => raw.pragma('quick_check(1)', { simple: true }) !== 'ok');
  } catch {
    return true;
  }
}

/** Whether every table reads as it did. */
function isEqual(file: string, content: Record<string, string[]>): boolean {
  try {
    return reading(file, (raw) => isDeepStrictEqual(contentOf(raw), content));
  } catch {
    return false;
  }
}

interface Outcome {
  told: Told;
  equal: boolean;
  /** A refusal that is not one of those a damaged file is to be met with. */
  odd: string | null;
}

/** Opens the file as a user would and asks for its check. */
function outcomeOf(file: string, content: Record<string, string[]>): Outcome {
  const equal = isEqual(file, content);
  try {
    const app = openStill(file);
    try {
      const info = app.call('catalogue.info', {});
      const warned = !info.ok || (info.value as { warnings: string[] }).warnings.length > 0;
      const check = app.call('catalogue.check', {});
      const checked = !check.ok || !(check.value as { ok: boolean }).ok;
      const told = warned
        ? 'told at opening'
        : checked
          ? 'told by the check'
          : equal
            ? 'all content equal'
            : 'silent';
      return { told, equal, odd: null };
    } finally {
      app.close();
    }
  } catch (error) {
    const code = error instanceof Refusal ? error.code : String(error);
    const odd = code === 'CATALOGUE_DAMAGED' || code === 'CATALOGUE_FOREIGN' ? null : code;
    return { told: 'refused at opening', equal, odd };
  }
}

/**
 * Closed catalogues with some bits flipped: each opens with all content equal or is told, at opening or by the check.
 * Nothing but the file is changed; the side file that notes how it was left stands beside it as it would.
 */
export function flippedBits(files: number, seed: number): Figure {
  return inFolder((folder) => {
    const tally = new Tally('files with bits flipped');
    const base = join(folder, 'base.ledger');
    grownCatalogue(base, 250);
    const whole = readFileSync(base);
    const content = reading(base, contentOf);
    const next = randomNumbers(seed);
    for (let at = 0; at < files; at += 1) {
      const file = join(folder, 'flipped.ledger');
      for (const companion of ['-wal', '-shm', '-hold']) rmSync(file + companion, { force: true });
      copyFileSync(`${base}-hold`, `${file}-hold`);
      const bytes = Buffer.from(whole);
      const bits = 1 + (next() % (next() % 2 === 0 ? 2 : 64));
      const region = flip(bytes, next, bits);
      writeFileSync(file, bytes);
      const quick = quickCheckTells(file);
      const { told, equal, odd } = outcomeOf(file, content);
      const fault = told === 'silent' ? 'silently wrong' : odd;
      tally.add(fault ? [`file ${at} of seed ${seed}, ${bits} bits in ${region}: ${fault}`] : []);
      tally.count(told);
      if (!equal) tally.count('content changed');
      if (!equal && !quick) tally.count("changed content that SQLite's quick check would have passed");
    }
    return tally.figure(`file of ${(whole.length / 1024).toFixed(0)} KB`);
  });
}
