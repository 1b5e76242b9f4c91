import isbn3 from 'isbn3';
import {
  blockNumber,
  checkDigit13,
  hyphenate,
  nextFree,
  parseIsbn,
  runsOf,
} from '../../src/rules/isbn/index.ts';

const INPUTS = 6_000;
const TURNS = 51;
const SLICE_MILLISECONDS = 12;

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

/** The written forms that both sides read, in the order in which they take turns. */
const FORMS = ['13 digits', 'hyphenated', 'spaced', '10 digits', '10 hyphenated', '10 spaced'];
/** What may stand before them; isbn3 reads none of these. */
const LABELS = ['ISBN ', 'urn:isbn:'];

/** Valid numbers of all groups that both sides know, as many of each form. Those of 979 have no ten digits. */
function validInputs(): string[] {
  const next = sequence(20_260_822);
  const texts: string[] = [];
  while (texts.length < INPUTS) {
    const form = texts.length % FORMS.length;
    const first12 =
      (form > 2 || next() < 0.7 ? '978' : '979') + String(Math.floor(next() * 1e9)).padStart(9, '0');
    const ours = parseIsbn(first12 + checkDigit13(first12));
    if (!ours.ok || isbn3.parse(ours.isbn.isbn13) === null) continue;
    const { isbn13, isbn10, hyphenated } = ours.isbn;
    const ten = isbn10 ?? '';
    const hyphenated10 = hyphenated.slice(4, -1) + ten.slice(-1);
    const spaced = [hyphenated, hyphenated10].map((text) => text.replaceAll('-', ' '));
    texts.push([isbn13, hyphenated, spaced[0], ten, hyphenated10, spaced[1]][form] ?? isbn13);
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

/** Time per piece of work in seconds, over as many as fill a slice of time, so that collecting garbage is in it. */
function seconds(work: () => number): number {
  const start = performance.now();
  let times = 0;
  let spent = 0;
  while (spent < SLICE_MILLISECONDS) {
    if (work() < 0) throw new Error('The work was not done.');
    times += 1;
    spent = performance.now() - start;
  }
  return spent / times / 1e3;
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
}

/** One side of a comparison: works through all inputs and answers a sum that depends on every result. */
type Side = (texts: readonly string[]) => number;

/** Every number is checked, all its elements are read, and its hyphenated form. */
const read: Side = (texts) => {
  let sum = 0;
  for (const text of texts) {
    const parsed = parseIsbn(text);
    if (!parsed.ok) continue;
    const { group, registrant, publication, check, hyphenated } = parsed.isbn;
    sum += group.length + registrant.length + publication.length + check.length + hyphenated.length;
  }
  return sum;
};

const readByIsbn3: Side = (texts) => {
  let sum = 0;
  for (const text of texts) {
    const parsed = isbn3.parse(text);
    if (parsed === null) continue;
    const { group, publisher, article, check, isbn13h } = parsed;
    sum += group.length + publisher.length + article.length + check.length + isbn13h.length;
  }
  return sum;
};

/** Every field of the record; isbn3 puts all of its own together whether they are read or not. */
const readAll: Side = (texts) => {
  let sum = 0;
  for (const text of texts) {
    const parsed = parseIsbn(text);
    if (!parsed.ok) continue;
    const { prefix, group, registrant, publication, check, hyphenated, agency, isbn13, isbn10 } = parsed.isbn;
    sum += prefix.length + group.length + registrant.length + publication.length + check.length;
    sum += hyphenated.length + agency.length + isbn13.length + (isbn10?.length ?? 0);
  }
  return sum;
};

/** Whether a text is a number, as isbn3 says it: the reason for a refusal is not read. */
const judged: Side = (texts) => {
  let sum = 0;
  for (const text of texts) if (parseIsbn(text).ok) sum += 1;
  return sum;
};

const judgedByIsbn3: Side = (texts) => {
  let sum = 0;
  for (const text of texts) if (isbn3.parse(text) !== null) sum += 1;
  return sum;
};

/** The reason is read too, with its place, hint and repair. isbn3 has none to give. */
const explained: Side = (texts) => {
  let sum = 0;
  for (const text of texts) {
    const parsed = parseIsbn(text);
    if (!parsed.ok) sum += parsed.problem.message.length;
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

interface Comparison {
  texts: readonly string[];
  ours: Side;
  theirs: Side;
  /** What isbn3 is given instead, where it cannot read the texts. */
  instead?: readonly string[];
}

/** Both sides in turn, in slices so short that other work on the machine disturbs both alike; medians of all turns. */
function compare(name: string, { texts, ours, theirs, instead = texts }: Comparison): void {
  const turns = Array.from({ length: TURNS }, () => {
    const own = seconds(() => ours(texts));
    return { own, other: seconds(() => theirs(instead)) };
  });
  const rate = (times: readonly number[]): string =>
    Math.round(texts.length / median(times))
      .toLocaleString('en')
      .padStart(11);
  const own = rate(turns.map((turn) => turn.own));
  const other = rate(turns.map((turn) => turn.other));
  const ratio = median(turns.map((turn) => turn.other / turn.own)).toFixed(1);
  console.log(`${name.padEnd(36)} ${own}/s   isbn3 ${other}/s   ${ratio} ×`);
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
    const time = median(Array.from({ length: TURNS }, () => seconds(work)));
    return `${((time / from.length) * 1e9).toFixed(0).padStart(5)} ns`;
  };
  const front = cost(anywhere.map(() => 0));
  console.log(
    `next free of ${taken.toLocaleString('en').padStart(9)} taken    from the front ${front}   from anywhere ${cost(anywhere)}`,
  );
}

function compareValid(): void {
  const texts = validInputs();
  const sides = { ours: read, theirs: readByIsbn3 };
  const labelled = LABELS.map((label) => flat(texts.map((text) => label + text)));
  const some = texts.map((text, i) => (i % 4 < 2 ? text : (labelled[i % 2]?.[i] ?? text)));
  console.log('Valid numbers: checked, all elements and the hyphenated form read');
  compare('mixed', { texts, ...sides });
  for (const [form, name] of FORMS.entries())
    compare(`  ${name}`, { texts: texts.filter((_, i) => i % FORMS.length === form), ...sides });
  compare('mixed, every field read', { texts, ...sides, ours: readAll });
  compare('mixed, half labelled (isbn3: bare)', { texts: some, instead: texts, ...sides });
  for (const [i, label] of LABELS.entries())
    compare(`  behind '${label}' (isbn3: bare)`, { texts: labelled[i] ?? [], instead: texts, ...sides });
  const bare = texts.filter((_, i) => i % FORMS.length === 0);
  compare('only hyphenate 13 digits', { texts: bare, ours: hyphenated, theirs: hyphenatedByIsbn3 });
}

function compareGarbage(): void {
  const texts = garbageInputs(validInputs());
  console.log('Garbage: turned away');
  compare('mixed', { texts, ours: judged, theirs: judgedByIsbn3 });
  for (let kind = 0; kind < 10; kind += 1) {
    const alike = texts.filter((_, i) => i % 10 === kind);
    compare(`  such as '${alike[0]?.slice(0, 18)}'`, { texts: alike, ours: judged, theirs: judgedByIsbn3 });
  }
  compare('mixed, reason read (isbn3: none)', { texts, ours: explained, theirs: judgedByIsbn3 });
}

/** Reading, splitting and hyphenating against the package isbn3, in one run on the same inputs; then the next free number. */
export function bench(): void {
  compareValid();
  compareGarbage();
  for (const taken of [100, 10_000, 1_000_000]) nextFreeCost(taken);
}
