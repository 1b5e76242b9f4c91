import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { reading } from '../../src/contract/proof-checks/facts.ts';
import { Refusal } from '../../src/contract/refusal.ts';
import { readFile } from '../../src/exchange/proof-files/read.ts';
import { checkFile } from '../../src/rules/proof-check/index.ts';
import { type EpubParts, packed } from '../support/proof-files/epub.ts';
import { CLEAN_EPUBS } from '../support/proof-files/epub-clean.ts';
import { epubRecord } from '../support/proof-files/epub-record.ts';
import { mp3, wav } from '../support/proof-files/sound.ts';
import { dice, mutated } from './mutate.ts';

/** Longest time one input may take, in milliseconds; what takes longer hangs. */
const MOST_MS = 20_000;

type Roll = (below: number) => number;

const BOOKS = Object.values(CLEAN_EPUBS).map(({ parts }) => parts);

/** One part of a book changed and the whole packed again, so that the change lies behind the checksums of the zip. */
function repacked(parts: EpubParts, roll: Roll): Uint8Array {
  const names = Object.keys(parts);
  const name = names[roll(names.length)] ?? '';
  const part = parts[name] ?? '';
  const bytes = typeof part === 'string' ? Buffer.from(part) : part;
  return packed({ ...parts, [name]: bytes.length === 0 ? bytes : mutated(bytes, roll) });
}

function book(roll: Roll): Uint8Array {
  const parts = BOOKS[roll(BOOKS.length)] ?? {};
  return roll(3) === 0 ? mutated(packed(parts), roll) : repacked(parts, roll);
}

const SOUND = mp3(2, { TALB: 'The Salt Almanac', TXXX: 'ISBN\x00979-8-969999-05-3' });

function sound(roll: Roll): Uint8Array {
  const one = mutated(roll(2) === 0 ? SOUND : wav(0.2), roll);
  if (roll(2) === 0) return one;
  const whole = zipSync({ '01.mp3': one, '02.wav': wav(0.1) }, { level: 1 });
  return roll(3) === 0 ? mutated(whole, roll) : whole;
}

const KINDS = {
  epub: { kind: 'e-book', made: book },
  audio: { kind: 'audio', made: sound },
} as const;

export interface FuzzTold {
  read: number;
  refused: number;
  slowestMs: number;
}

/**
 * Reads damaged e-books or audiobooks and holds them against a record: each is read as the contract promises or refused in
 * a sentence. Throws with the number of the first that crashes, hangs or breaks the promise.
 */
export async function fuzzFiles(
  of: keyof typeof KINDS,
  inputs: number,
  seed = 20_261_125,
): Promise<FuzzTold> {
  const { kind, made } = KINDS[of];
  const folder = mkdtempSync(join(tmpdir(), 'fuzz-'));
  const path = join(folder, 'file');
  const told: FuzzTold = { read: 0, refused: 0, slowestMs: 0 };
  try {
    for (let turn = 0; turn < inputs; turn += 1) {
      writeFileSync(path, made(dice(seed + turn * 7_919)));
      const start = performance.now();
      try {
        const read = await readFile(path, { kind, step: () => {} });
        checkFile(kind, reading.parse(read).facts, epubRecord());
        told.read += 1;
      } catch (error) {
        if (!(error instanceof Refusal))
          throw new Error(`${of}, seed ${seed}, input ${turn}`, { cause: error });
        told.refused += 1;
      }
      const taken = performance.now() - start;
      told.slowestMs = Math.max(told.slowestMs, taken);
      if (taken > MOST_MS) throw new Error(`${of}, seed ${seed}, input ${turn} took ${Math.round(taken)} ms`);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return told;
}

/** `npm run fuzz -- epub [INPUTS]`, `npm run fuzz -- audio [INPUTS]` */
export async function fuzz(of: keyof typeof KINDS, inputs: number): Promise<void> {
  const { read, refused, slowestMs } = await fuzzFiles(of, inputs);
  console.log(
    `${of}: ${inputs.toLocaleString('en')} damaged files, ${read.toLocaleString('en')} read, ${refused.toLocaleString('en')} refused in a sentence; the slowest took ${Math.round(slowestMs)} ms. None broke or hung the reader.`,
  );
}
