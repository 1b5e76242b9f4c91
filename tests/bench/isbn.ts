import isbn3 from 'isbn3';
import {
  blockNumber,
  checkDigit13,
  hyphenate,
  nextFree,
  parseIsbn,
  runsOf,
  tryIsbn,
} from '../../src/rules/isbn/index.ts';

const INPUTS = 4_000;
const ROUNDS = 15;
const ROUND_MICROSECONDS = 60_000;

/** A repeatable sequence of numbers in [0, 1): the same inputs in every run (xorshift). */
function sequence(seed: number): () => number {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

/** Flat strings, as they come from a file: strings put together in this run would be slower for both sides. */
function flat(texts: readonly string[]): string[] {
  return JSON.parse(JSON.stringify(texts));
}

/** Valid numbers of all groups that both sides know, in four written forms. */
function validInputs(): string[] {
  const next = sequence(20_260_822);
  const texts: string[] = [];
  while (texts.length < INPUTS) {
    const first12 = (next() < 0.85 ? '978' : '979') + String(Math.floor(next() * 1e9)).padStart(9, '0');
    const ours = parseIsbn(first12 + checkDigit13(first12));
    if (!ours.ok || isbn3.parse(ours.isbn.isbn13) === null) continue;
    const { isbn13, isbn10, hyphenated } = ours.isbn;
    const hyphenated10 = isbn10 === null ? hyphenated : hyphenated.slice(4, -1) + isbn10.slice(-1);
    texts.push([isbn13, hyphenated, isbn10 ?? isbn13, hyphenated10][texts.length % 4] ?? isbn13);
  }
  return flat(texts);
}

/** What turns up where a number should be: wrong check digits, words, prices, halves, letters, other codes. */
function garbageInputs(valid: readonly string[]): string[] {
  const next = sequence(7);
  const spoil: ((text: string) => string)[] = [
    (text) => text.slice(0, -1) + String((Number(text.at(-1) === 'X' ? 0 : text.at(-1)) + 1) % 10),
    (text) => text.slice(0, 8),
    () => '',
    () => 'not yet assigned',
    () => `${Math.floor(next() * 100)}.${Math.floor(next() * 100)} EUR`,
    (text) => text.replace(/[0-9]/, 'o'),
    () => String(Math.floor(next() * 1e13)).padStart(13, '4'),
    () => Array.from({ length: 13 }, () => String.fromCharCode(33 + Math.floor(next() * 90))).join(''),
    (text) => `${text}${text}`,
    () => '9.78E+12',
  ];
  return flat(valid.map((text, i) => spoil[i % spoil.length]?.(text) ?? ''));
}

/** Processor time of this thread per piece of work, in seconds: other work on the machine does not count. */
function seconds(work: () => number): number {
  const start = process.threadCpuUsage();
  let times = 0;
  let spent = 0;
  // The clock moves in steps of some milliseconds.
  while (spent < ROUND_MICROSECONDS) {
    if (work() < 0) throw new Error('The work was not done.');
    times += 1;
    const used = process.threadCpuUsage(start);
    spent = used.user + used.system;
  }
  return spent / times / 1e6;
}

/** One side of a comparison: works through all inputs and answers a sum that depends on every result. */
type Side = (texts: readonly string[]) => number;

const parsed: Side = (texts) => {
  let sum = 0;
  for (const text of texts) {
    const read = parseIsbn(text);
    if (read.ok) sum += read.isbn.hyphenated.length + read.isbn.registrant.length;
  }
  return sum;
};

const tried: Side = (texts) => {
  let sum = 0;
  for (const text of texts) sum += tryIsbn(text)?.isbn.hyphenated.length ?? 0;
  return sum;
};

const byIsbn3: Side = (texts) => {
  let sum = 0;
  for (const text of texts) {
    const read = isbn3.parse(text);
    if (read !== null) sum += read.isbn13h.length + read.publisher.length;
  }
  return sum;
};

const hyphenated: Side = (texts) => {
  let sum = 0;
  for (const text of texts) sum += hyphenate(text)?.length ?? 0;
  return sum;
};

const hyphenatedByIsbn3: Side = (texts) => {
  let sum = 0;
  for (const text of texts) sum += isbn3.hyphenate(text)?.length ?? 0;
  return sum;
};

/** Both sides in turn over the same inputs. The best round of each counts: it is the one least disturbed by other work. */
function compare(name: string, texts: readonly string[], ours: Side, theirs: Side = byIsbn3): void {
  let best = { ours: Infinity, theirs: Infinity };
  for (let round = 0; round < ROUNDS; round += 1)
    best = {
      ours: Math.min(
        best.ours,
        seconds(() => ours(texts)),
      ),
      theirs: Math.min(
        best.theirs,
        seconds(() => theirs(texts)),
      ),
    };
  const rate = (time: number): string =>
    Math.round(texts.length / time)
      .toLocaleString('en')
      .padStart(11);
  const ratio = (best.theirs / best.ours).toFixed(1);
  console.log(`${name.padEnd(34)} ${rate(best.ours)}/s   isbn3 ${rate(best.theirs)}/s   ${ratio} ×`);
}

/** The next free number of a block of ten million, of which `taken` are: half of them in a row, the others scattered. */
function nextFreeCost(taken: number): void {
  const row = Array.from({ length: taken / 2 }, (_, i) => i);
  const runs = runsOf([...row, ...row.map((i) => taken + 2 * i)]);
  const block = { digits: '97801', publicationDigits: 7 };
  const next = sequence(taken);
  const anywhere = Array.from({ length: 10_000 }, () => Math.floor(next() * 2 * taken));
  const cost = (from: readonly number[]): string => {
    const work = (): number => {
      let sum = 0;
      for (const index of from) sum += blockNumber(block, nextFree(runs, 10_000_000, index) ?? 0).length;
      return sum;
    };
    const best = Math.min(...Array.from({ length: ROUNDS }, () => seconds(work)));
    return `${((best / from.length) * 1e9).toFixed(0).padStart(5)} ns`;
  };
  const front = cost(anywhere.map(() => 0));
  console.log(
    `next free of ${taken.toLocaleString('en').padStart(9)} taken    from the front ${front}   from anywhere ${cost(anywhere)}`,
  );
}

/** Reading, splitting and hyphenating against the package isbn3, in one run on the same inputs; then the next free number. */
export function bench(): void {
  const valid = validInputs();
  const garbage = garbageInputs(valid);
  compare(
    'hyphenate 13 digits',
    valid.filter((text) => /^[0-9]{13}$/.test(text)),
    hyphenated,
    hyphenatedByIsbn3,
  );
  compare('read the whole record, mixed', valid, parsed);
  for (const [i, form] of ['13 digits', 'hyphenated', '10 digits', '10 hyphenated'].entries())
    compare(
      `  ${form}`,
      valid.filter((_, at) => at % 4 === i),
      parsed,
    );
  compare('turn garbage away', garbage, tried);
  compare('turn garbage away with a reason', garbage, parsed);
  for (let i = 0; i < 10; i += 1) {
    const kind = garbage.filter((_, at) => at % 10 === i);
    compare(`  such as '${kind[0]?.slice(0, 18)}'`, kind, parsed);
  }
  for (const taken of [100, 10_000, 1_000_000]) nextFreeCost(taken);
}
