import fc from 'fast-check';
import { expect, test } from 'vitest';
import { AUDIT_RULES, audit } from '../../../src/rules/audit/index.ts';
import { cleanCatalogue } from './clean.ts';
import { type Catalogue, factsOf } from './rows.ts';

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

test('ten times the rows take about ten times as long, not a hundred times', () => {
  const copies = (times: number): Catalogue => {
    const all = cleanCatalogue();
    const one = cleanCatalogue();
    const far = <T extends object>(value: T, k: number): T =>
      Object.fromEntries(
        Object.entries(value).map(([key, v]) => [
          key,
          typeof v === 'number' && /^id$|Id$/.test(key) && !['blockId', 'channelId'].includes(key)
            ? v + k * 10_000
            : v,
        ]),
      ) as T;
    for (let k = 1; k < times; k += 1)
      for (const table of [
        'works',
        'editions',
        'contributors',
        'formats',
        'prices',
        'listings',
        'steps',
        'plans',
        'tasks',
      ] as const)
        (all[table] as object[]).push(...one[table].map((r) => far(r, k)));
    return all;
  };
  const time = (catalogue: Catalogue) => {
    const start = performance.now();
    audit(factsOf(catalogue));
    return performance.now() - start;
  };
  const small = copies(40);
  const large = copies(400);
  time(small);
  const best = (catalogue: Catalogue) => Math.min(time(catalogue), time(catalogue), time(catalogue));
  expect(best(large) / best(small)).toBeLessThan(40);
});
