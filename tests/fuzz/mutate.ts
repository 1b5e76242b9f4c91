/** A repeatable sequence of whole numbers below a bound (xorshift). */
export function dice(seed: number): (below: number) => number {
  let state = seed || 1;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % Math.max(1, below);
  };
}

/** Bytes that readers trip over. */
const ODD = [
  '"',
  "'",
  ',',
  ';',
  '\n',
  '\r',
  '\u0000',
  '<',
  '>',
  '&',
  '{',
  '[',
  '-1',
  '9e999',
  '𝄞',
  '\uFEFF',
  '=',
].map((text) => Buffer.from(text));

/** A file with one to six places changed: bytes flipped, cut, doubled, moved, or odd ones put in. */
export function mutated(bytes: Uint8Array, roll: (below: number) => number): Uint8Array {
  let now: Buffer = Buffer.from(bytes);
  for (let changes = 1 + roll(6); changes > 0; changes -= 1) {
    const at = roll(now.length);
    const length = 1 + roll(Math.min(64, now.length));
    const before = now.subarray(0, at);
    const after = now.subarray(at);
    const way = roll(5);
    if (way === 0) now = Buffer.concat([before, Buffer.from([roll(256)]), after.subarray(1)]);
    else if (way === 1) now = Buffer.concat([before, after.subarray(length)]);
    else if (way === 2) now = Buffer.concat([before, after.subarray(0, length), after]);
    else if (way === 3) now = Buffer.concat([before, ODD[roll(ODD.length)] ?? Buffer.alloc(1), after]);
    else now = Buffer.concat([after.subarray(0, length), before, after.subarray(length)]);
  }
  return now;
}
