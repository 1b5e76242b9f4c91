import { afterAll, expect, test } from 'vitest';
import type { CheckLine } from '../../../src/contract/proof-checks/facts.ts';
import { checkFile } from '../../../src/rules/proof-check/index.ts';
import type { ProofRecord } from '../../../src/rules/proof-check/record.ts';
import { interiorRecord } from '../../support/proof-files/interior.ts';
import { CLEAN_INTERIORS } from '../../support/proof-files/interior-clean.ts';
import { PLANTED_INTERIORS } from '../../support/proof-files/interior-faults.ts';
import { readBytes } from '../../support/proof-files/laid.ts';
import { Tally } from '../../support/proof-files/tally.ts';

async function linesOf(bytes: Uint8Array, record: Partial<ProofRecord> = {}): Promise<CheckLine[]> {
  const { facts } = await readBytes(bytes, 'interior', 'interior.pdf');
  return checkFile('interior', facts, interiorRecord(record));
}

const tally = new Tally('Interiors');
afterAll(() => tally.print());

for (const [name, { make, expected, record }] of [
  ...Object.entries(PLANTED_INTERIORS),
  ...Object.entries(CLEAN_INTERIORS),
])
  test(name, async ({ skip }) => {
    const bytes = await make();
    if (bytes === null) return skip('the program that makes it is not on this machine');
    tally.take(name, await linesOf(bytes, record), expected);
    expect([...tally.missed, ...tally.falseAlarms].filter((one) => one.startsWith(`${name}: `))).toEqual([]);
  }, 120_000);

test('the set is as large as is promised', () => {
  expect(Object.keys(PLANTED_INTERIORS).length).toBeGreaterThanOrEqual(18);
  expect(Object.keys(CLEAN_INTERIORS).length).toBeGreaterThanOrEqual(8);
});
