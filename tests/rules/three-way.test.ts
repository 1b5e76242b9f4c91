import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CarriedEntry } from '../../src/contract/changes.ts';
import { judgeFields, netChanges, standsAs } from '../../src/rules/three-way.ts';

const value = fc.constantFrom('a', 'b', 'c', null);
const row = fc.record({ title: value, note: value });

const entry = (fields: Partial<CarriedEntry>): CarriedEntry => ({
  seq: 1,
  hash: 'a'.repeat(64),
  entity: 'edition',
  key: '1',
  action: 'changed',
  before: null,
  after: null,
  ...fields,
});

describe('two copies of a row', () => {
  it('what the copy left alone is never touched, what only it changed is taken, what both made alike is there', () => {
    fc.assert(
      fc.property(row, row, row, (base, last, here) => {
        const { take, conflicts } = judgeFields([base], last, here);
        for (const field of ['title', 'note'] as const) {
          const asked = conflicts.some((conflict) => conflict.field === field);
          const copied = base[field] !== last[field];
          const own = base[field] !== here[field];
          expect(take.includes(field)).toBe(copied && !own);
          expect(asked).toBe(copied && own && last[field] !== here[field]);
        }
      }),
    );
  });

  it('what was taken over from the copy before is no conflict with what the copy made of it since', () => {
    fc.assert(
      fc.property(row, row, row, (base, middle, last) => {
        expect(judgeFields([base, middle], last, middle).conflicts).toEqual([]);
        expect(standsAs([base, middle], middle)).toBe(true);
      }),
    );
  });

  it('sums up a row from its entries, and knows who added it', () => {
    const net = netChanges([
      entry({ action: 'added', key: '2', after: { title: 'a' } }),
      entry({ before: { title: 'a' }, after: { title: 'b' } }),
      entry({ before: { title: 'b' }, after: { title: 'c' } }),
      entry({ action: 'removed', key: '2', before: { title: 'a' } }),
    ]);
    expect(net.get('edition 1')).toMatchObject({
      addedBy: null,
      stood: [{ title: 'a' }, { title: 'b' }],
      last: { title: 'c' },
    });
    expect(net.get('edition 2')).toMatchObject({ addedBy: 'a'.repeat(64), last: null });
  });
});
