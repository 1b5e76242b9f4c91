import type { Dated } from './types.ts';

/** Puts a list in an order in which everything stands behind what it needs; what is not in the list is passed over. */
export function inNeedOrder<Key>(items: readonly Dated<Key>[]): Dated<Key>[] {
  const byKey = new Map(items.map((item) => [item.key, item]));
  const placed = new Set<Key>();
  const ordered: Dated<Key>[] = [];
  const place = (item: Dated<Key>) => {
    if (placed.has(item.key)) return;
    placed.add(item.key);
    for (const key of item.needs) {
      const need = byKey.get(key);
      if (need) place(need);
    }
    ordered.push(item);
  };
  for (const item of items) place(item);
  return ordered;
}

/** What comes before some items, at any remove, the items left out. */
export function ancestorsOf<Key>(items: readonly Dated<Key>[], of: (item: Dated<Key>) => boolean): Set<Key> {
  const byKey = new Map(items.map((item) => [item.key, item]));
  const found = new Set<Key>();
  const queue = items.filter(of);
  for (let at = queue.shift(); at; at = queue.shift())
    for (const key of at.needs) {
      const need = byKey.get(key);
      if (!need || found.has(key)) continue;
      found.add(key);
      queue.push(need);
    }
  return found;
}
