import { describe, expect, test } from 'vitest';
import { AUDIT_RULES, audit } from '../../../src/rules/audit/index.ts';
import { cleanCatalogue } from './clean.ts';
import { datePlants } from './plants/dates.ts';
import { numberPlants } from './plants/numbers.ts';
import type { Plants } from './plants/plant.ts';
import { recordPlants } from './plants/record.ts';
import { salePlants } from './plants/sale.ts';
import { factsOf } from './rows.ts';

const plants: Plants = { ...numberPlants, ...salePlants, ...datePlants, ...recordPlants };

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
