import type { Index } from './rule.ts';

/** How many of the sorted entries stand at the front that hold; found by halving. */
export function placeAfter<E>(sorted: readonly E[], holds: (entry: E) => boolean): number {
  let from = 0;
  let to = sorted.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if (holds(sorted[middle] as E)) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** The entries of one index under their keys, each key's in order, as records come and go. */
export class Held<E> {
  readonly #index: Index<E>;
  readonly #byKey = new Map<string, E[]>();

  constructor(index: Index<E>) {
    this.#index = index;
  }

  /** The entries of a key, in order. */
  of(key: string): readonly E[] {
    return this.#byKey.get(key) ?? [];
  }

  add(key: string, entry: E): void {
    const { order } = this.#index;
    const known = this.#byKey.get(key);
    const last = known?.at(-1);
    if (!known) this.#byKey.set(key, [entry]);
    // Records mostly come in their order.
    else if (last === undefined || order(last, entry) <= 0) known.push(entry);
    else
      known.splice(
        placeAfter(known, (one) => order(one, entry) <= 0),
        0,
        entry,
      );
  }

  remove(key: string, entry: E): void {
    const { order } = this.#index;
    const known = this.#byKey.get(key) ?? [];
    const at = placeAfter(known, (one) => order(one, entry) < 0);
    const found = known[at];
    if (found === undefined || order(found, entry) !== 0) return;
    known.splice(at, 1);
    if (known.length === 0) this.#byKey.delete(key);
  }
}
