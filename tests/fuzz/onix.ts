import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Refusal } from '../../src/contract/refusal.ts';
import { readMessage } from '../../src/exchange/onix/read.ts';
import { MESSAGE_21, SEED_MESSAGE } from '../support/onix/messages.ts';
import { mutated, type Random, randomFrom } from './onix-mutate.ts';

const SAMPLES = join(import.meta.dirname, '../../../shared/data/onix/samples');

/** Real messages to start from: EDItEUR's four samples where they are at hand, and small ones of our own. */
function seeds(): Buffer[] {
  const own = [SEED_MESSAGE, MESSAGE_21].map((text) => Buffer.from(text));
  if (!existsSync(SAMPLES)) return own;
  return [...own, ...readdirSync(SAMPLES).map((name) => readFileSync(join(SAMPLES, name)))];
}

const HOUSE = {
  publisher: 'Halyard & Fen',
  sender: 'Halyard & Fen',
  country: 'GB',
  language: 'eng',
  currency: null,
};

/** Bytes in parts of random size, as a file comes in. */
function* inParts(bytes: Buffer, random: Random): Generator<Buffer> {
  for (let at = 0; at < bytes.length; ) {
    const size = 1 + random(8192);
    yield bytes.subarray(at, at + size);
    at += size;
  }
}

/** Longest time one input may take, in milliseconds; what takes longer hangs. */
const MOST_MS = 5_000;

/**
 * Reads mutated messages; answers how many were read and how many refused. Throws for any other end: a crash, a hang, or a
 * product without the shape that is promised.
 */
export function fuzzOnix(inputs: number, seed: number): { read: number; refused: number; products: number } {
  const random = randomFrom(seed);
  const start = seeds();
  const told = { read: 0, refused: 0, products: 0 };
  for (let count = 0; count < inputs; count += 1) {
    const base = start[random(start.length)] ?? Buffer.alloc(0);
    const bytes = mutated(base, random);
    const begun = performance.now();
    try {
      readMessage(inParts(bytes, random), HOUSE, (product) => {
        told.products += 1;
        if ((product.isbn13 === null) === (product.isbnProblem === null))
          throw new Error(`input ${count} of seed ${seed}: a number and a problem, or neither`);
      });
      told.read += 1;
    } catch (error) {
      if (!(error instanceof Refusal))
        throw new Error(`input ${count} of seed ${seed} broke the reader`, { cause: error });
      told.refused += 1;
    }
    if (performance.now() - begun > MOST_MS)
      throw new Error(`input ${count} of seed ${seed} hangs the reader`);
  }
  return told;
}

/** `npm run fuzz -- onix [INPUTS] [SEED]` */
export function fuzz(inputs = 100_000, seed = 20_261_125): void {
  const begun = performance.now();
  const told = fuzzOnix(inputs, seed);
  const seconds = ((performance.now() - begun) / 1000).toFixed(0);
  console.log(
    `ONIX reader, seed ${seed}: ${inputs.toLocaleString('en')} inputs in ${seconds} s: ${told.read.toLocaleString('en')} read (${told.products.toLocaleString('en')} products), ${told.refused.toLocaleString('en')} refused in a sentence, none broke or hung it.`,
  );
}
