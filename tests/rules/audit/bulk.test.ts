import fc from 'fast-check';
import { expect, test } from 'vitest';
import { AUDIT_RULES } from '../../../src/rules/audit/index.ts';
import { cleanCatalogue } from './clean.ts';
import { audit, type Catalogue, factsOf } from './rows.ts';

test('rows missing from a damaged file never stop the audit', () => {
  const tables = [
    'blocks',
    'works',
    'editions',
    'contributors',
    'formats',
    'prices',
    'numbers',
    'channels',
    'listings',
    'steps',
    'plans',
    'tasks',
  ] as const;
  fc.assert(
    fc.property(fc.constantFrom(...tables), fc.constantFrom(...tables), fc.nat(), fc.nat(), (a, b, n, m) => {
      const catalogue = cleanCatalogue();
      catalogue[a].splice(n % (catalogue[a].length || 1), 1);
      catalogue[b].splice(m % (catalogue[b].length || 1), 1);
      for (const finding of audit(factsOf(catalogue)))
        expect(AUDIT_RULES.some((rule) => rule.id === finding.rule)).toBe(true);
    }),
    { numRuns: 200 },
  );
});

/** The clean catalogue many times over: works and all below them, with ids and numbers of their own. */
function copies(times: number): Catalogue {
  const all = cleanCatalogue();
  const one = cleanCatalogue();
  const shared = new Set(['blockId', 'channelId']);
  const moved = <T extends object>(record: T, by: number): T =>
    Object.fromEntries(
      Object.entries(record).map(([key, value]) => {
        const isKey = typeof value === 'number' && /^id$|Id$/.test(key) && !shared.has(key);
        return [key, isKey ? value + by * 10_000 : value];
      }),
    ) as T;
  const tables = [
    'works',
    'editions',
    'contributors',
    'formats',
    'prices',
    'numbers',
    'listings',
    'steps',
    'plans',
    'tasks',
  ] as const;
  for (let copy = 1; copy < times; copy += 1)
    for (const table of tables)
      (all[table] as object[]).push(...one[table].map((record) => moved(record, copy)));
  return all;
}

/** The same lists, counting every element that is read from them. */
function counting<T extends object>(lists: T, read: () => void): T {
  return Object.fromEntries(
    Object.entries(lists).map(([name, list]) => [
      name,
      Array.isArray(list)
        ? new Proxy(list, {
            get: (target, key, receiver) => {
              if (typeof key === 'string' && /^\d+$/.test(key)) read();
              return Reflect.get(target, key, receiver);
            },
          })
        : list,
    ]),
  ) as T;
}

test('rules and gathering read ten times as much of ten times the rows, not a hundred times', () => {
  const reads = (times: number): number => {
    let count = 0;
    const catalogue = counting(copies(times), () => {
      count += 1;
    });
    audit(
      counting(factsOf(catalogue), () => {
        count += 1;
      }),
    );
    return count;
  };
  const small = reads(10);
  expect(small).toBeGreaterThan(1_000);
  expect(reads(100) / small).toBeLessThan(10.5);
});
