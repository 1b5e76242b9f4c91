import { describe, expect, test } from 'vitest';
import { AUDIT_RULES } from '../../../src/rules/audit/index.ts';
import { MENDED_BY_PRESS } from '../../../src/rules/audit/mendings.ts';
import { cleanCatalogue } from './clean.ts';
import { datePlants } from './plants/dates.ts';
import { filePlants } from './plants/files.ts';
import { numberPlants } from './plants/numbers.ts';
import type { Plants } from './plants/plant.ts';
import { recordPlants } from './plants/record.ts';
import { salePlants } from './plants/sale.ts';
import { audit, factsOf } from './rows.ts';

const plants: Plants = { ...numberPlants, ...salePlants, ...datePlants, ...recordPlants, ...filePlants };

test('a clean catalogue has no finding', () => {
  expect(audit(factsOf(cleanCatalogue()))).toEqual([]);
});

test('every rule has a fault planted for it, and no other is planted', () => {
  expect(Object.keys(plants).sort()).toEqual(AUDIT_RULES.map((rule) => rule.id).sort());
});

describe('a planted fault is found by its rule and by no other', () => {
  for (const rule of AUDIT_RULES)
    test(rule.id, () => {
      const plant = plants[rule.id];
      const catalogue = cleanCatalogue();
      plant?.plant(catalogue);
      const findings = audit(factsOf(catalogue));
      expect(findings.map((finding) => finding.rule)).toEqual([rule.id]);
      const { message, ...rest } = findings[0] ?? { message: '' };
      expect(message).toContain(plant?.says);
      expect(rest).toMatchObject({
        severity: rule.severity,
        mend: rule.mend,
        source: rule.source,
        ...plant?.about,
      });
    });
});

test('rules are named once, in whole sentences, each with a source', () => {
  expect(new Set(AUDIT_RULES.map((rule) => rule.id)).size).toBe(AUDIT_RULES.length);
  for (const rule of AUDIT_RULES) {
    expect(rule.id).toMatch(/^[a-z]+(-[a-z]+)+$/);
    expect(rule.sentence).toMatch(/^[A-Z].*\.$/);
    expect(rule.mend).toMatch(/^[A-Z].*\.$/);
    expect(rule.source).toMatch(
      /^(ISBN Users' Manual, |The ISBN agency's |ONIX List |common practice, no source$|Edition Ledger)/,
    );
  }
});

/** Their plants lie where a press cannot know what is right: no plan to take the day from, a book already printed. */
const BY_HAND = new Set(['sale-date-missing', 'odd-page-count']);

test('what one press mends is offered with the finding, on no past day', () => {
  for (const id of MENDED_BY_PRESS) {
    const catalogue = cleanCatalogue();
    plants[id]?.plant(catalogue);
    const mending = audit(factsOf(catalogue))[0]?.mending;
    expect([id, mending === null]).toEqual([id, BY_HAND.has(id)]);
    catalogue.today = '2026-11-26';
    expect(audit(factsOf(catalogue)).every((finding) => finding.mending === null)).toBe(true);
  }
});

test('findings have fingerprints of their own, which stay while their facts do', () => {
  const fingerprints = () =>
    Object.values(plants).flatMap(({ plant }) => {
      const catalogue = cleanCatalogue();
      plant(catalogue);
      return audit(factsOf(catalogue)).map((finding) => finding.fingerprint);
    });
  const first = fingerprints();
  expect(new Set(first).size).toBe(AUDIT_RULES.length);
  expect(fingerprints()).toEqual(first);
});
