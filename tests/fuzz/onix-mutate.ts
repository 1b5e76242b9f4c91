/** A whole number from 0 up to, not including, its bound. */
export type Random = (bound: number) => number;

/** Random numbers that come out the same for a seed (xorshift, 32 bits). */
export function randomFrom(seed: number): Random {
  let state = seed | 0 || 1;
  return (bound) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return bound <= 0 ? 0 : (state >>> 0) % bound;
  };
}

const FRAGMENTS = [
  '<!DOCTYPE a [<!ENTITY b "c">]>',
  '<![CDATA[',
  ']]>',
  '<!--',
  '-->',
  '&b;',
  '&#0;',
  '&#xFFFFF;',
  '<?x ?>',
  '</Product>',
  '<Product>',
  '<a>',
  '\u0000',
  '\ufffe',
  '<'.repeat(50),
  '<a b="'.repeat(20),
  '9'.repeat(400),
  '-1',
  '1e99',
  '__proto__',
  'constructor',
];

type Mutation = (bytes: Buffer, random: Random) => Buffer;

const cut = (bytes: Buffer, from: number, to: number) =>
  Buffer.concat([bytes.subarray(0, from), bytes.subarray(to)]);

/** Two places of a file, the first before the second and at most so far apart. */
function range(bytes: Buffer, random: Random, most: number): [number, number] {
  const from = random(bytes.length);
  return [from, Math.min(bytes.length, from + 1 + random(most))];
}

const MUTATIONS: readonly Mutation[] = [
  (bytes, random) => {
    const copy = Buffer.from(bytes);
    for (let times = 1 + random(4); times > 0 && copy.length > 0; times -= 1)
      copy[random(copy.length)] = random(256);
    return copy;
  },
  (bytes, random) => cut(bytes, ...range(bytes, random, 400)),
  (bytes, random) => bytes.subarray(0, random(bytes.length + 1)),
  (bytes, random) => {
    const [from, to] = range(bytes, random, 600);
    const at = random(bytes.length);
    return Buffer.concat([bytes.subarray(0, at), bytes.subarray(from, to), bytes.subarray(at)]);
  },
  (bytes, random) => {
    const at = random(bytes.length + 1);
    const piece = Buffer.from(FRAGMENTS[random(FRAGMENTS.length)] ?? '');
    return Buffer.concat([bytes.subarray(0, at), piece, bytes.subarray(at)]);
  },
  // The text of one element becomes something else: codes, dates, amounts and numbers of no list.
  (bytes, random) => {
    const text = bytes.toString('latin1');
    const start = text.indexOf('>', random(text.length)) + 1;
    const end = text.indexOf('<', start);
    if (start <= 0 || end < 0) return bytes;
    const value = FRAGMENTS[random(FRAGMENTS.length)]?.replaceAll('<', '') ?? '';
    return Buffer.from(`${text.slice(0, start)}${value}${text.slice(end)}`, 'latin1');
  },
  // Two elements change their names.
  (bytes, random) => {
    const text = bytes.toString('latin1');
    const names = [...text.matchAll(/<([A-Za-z]\w+)/g)].map((match) => match[1] ?? '');
    const [a, b] = [names[random(names.length)] ?? '', names[random(names.length)] ?? ''];
    return a === '' ? bytes : Buffer.from(text.replaceAll(`${a}>`, `${b}>`), 'latin1');
  },
];

/** A file with one to three things wrong with it. */
export function mutated(bytes: Buffer, random: Random): Buffer {
  let result = bytes;
  for (let times = 1 + random(3); times > 0; times -= 1)
    result = MUTATIONS[random(MUTATIONS.length)]?.(result, random) ?? result;
  return result;
}
