import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
});
afterEach(() => catalogue.close());

function planned(): number {
  const { editionId } = catalogue.call('works.create', { title: 'Fen Light' });
  return catalogue.call('formats.create', { editionId, form: 'BC' }).formatId;
}

describe('blocks', () => {
  it('derives a block from its prefix or from any one of its numbers', () => {
    const block = catalogue.call('blocks.add', {
      prefix: '979-8-969999',
      cost: { amountMinor: 17400, currency: 'GBP' },
    });
    expect(block).toMatchObject({
      capacity: 100,
      first: '979-8-969999-00-8',
      last: '979-8-969999-99-2',
      nextFree: '979-8-969999-00-8',
    });
    // STANDARDS.md A8: the whole block of ten under 978-1-7343145.
    const ten = catalogue.call('blocks.add', { prefix: '978-1-7343145-3-3' });
    expect(ten).toMatchObject({ hyphenatedPrefix: '978-1-7343145', capacity: 10 });
    expect(catalogue.call('numbers.list', { blockId: ten.id }).rows.map((row) => row.hyphenated)).toEqual([
      '978-1-7343145-0-2',
      '978-1-7343145-1-9',
      '978-1-7343145-2-6',
      '978-1-7343145-3-3',
      '978-1-7343145-4-0',
      '978-1-7343145-5-7',
      '978-1-7343145-6-4',
      '978-1-7343145-7-1',
      '978-1-7343145-8-8',
      '978-1-7343145-9-5',
    ]);
  });

  it('refuses a block twice, and a prefix that is none', () => {
    catalogue.call('blocks.add', { prefix: '979-8-969999' });
    expect(catalogue.refusal('blocks.add', { prefix: '979-8-969999-42-8' })).toMatchObject({
      code: 'BLOCK_OVERLAP',
      field: 'prefix',
    });
    expect(catalogue.refusal('blocks.add', { prefix: '977-8-969999' })).toMatchObject({
      code: 'NUMBER_INVALID',
      field: 'prefix',
    });
    expect(catalogue.call('blocks.list', {}).blocks).toHaveLength(1);
  });

  it('gives numbers recorded before their block a place in it', () => {
    catalogue.call('numbers.assign', { formatId: planned(), isbn: '979-8-969999-05-3', outsideBlocks: true });
    const block = catalogue.call('blocks.add', { prefix: '979-8-969999' });
    expect(block.counts).toEqual({ free: 99, reserved: 0, assigned: 1, spent: 0 });
    expect(catalogue.call('numbers.list', { blockId: block.id, from: 5, count: 1 }).rows[0]).toMatchObject({
      standing: 'assigned',
      usedFor: 'Fen Light · Paperback',
    });
  });
});

describe('numbers', () => {
  beforeEach(() => {
    catalogue.call('blocks.add', { prefix: '979-8-969999' });
  });

  it('takes the next free number, skipping reserved ones, and any written form when one is picked', () => {
    catalogue.call('numbers.reserve', { reservedFor: 'the series', count: 2 });
    expect(catalogue.call('numbers.assign', { formatId: planned() }).hyphenated).toBe('979-8-969999-02-2');
    expect(
      catalogue.call('numbers.assign', { formatId: planned(), isbn: 'ISBN 979 8 969999 00 8' }).standing,
    ).toBe('assigned');
  });

  it('uses a number once, ever', () => {
    const first = planned();
    catalogue.call('numbers.assign', { formatId: first });
    const isbn = '979-8-969999-00-8';
    expect(catalogue.refusal('numbers.assign', { formatId: planned(), isbn })).toMatchObject({
      code: 'NUMBER_TAKEN',
    });
    expect(catalogue.refusal('numbers.assign', { formatId: first })).toMatchObject({
      code: 'NUMBER_TAKEN',
      field: 'formatId',
    });
    expect(catalogue.refusal('numbers.reserve', { isbn, reservedFor: 'x' })).toMatchObject({
      code: 'NUMBER_TAKEN',
    });
    expect(catalogue.refusal('numbers.release', { isbn })).toMatchObject({ code: 'NUMBER_TAKEN' });
    catalogue.call('formats.cancel', { id: first, reason: 'not this year' });
    for (const refusal of [
      catalogue.refusal('numbers.assign', { formatId: planned(), isbn }),
      catalogue.refusal('numbers.reserve', { isbn, reservedFor: 'x' }),
      catalogue.refusal('numbers.release', { isbn }),
      catalogue.refusal('numbers.spend', { isbn, reason: 'x' }),
    ])
      expect(refusal.code).toBe('NUMBER_SPENT');
    expect(catalogue.refusal('numbers.assign', { formatId: planned(), isbn }).message).toContain(
      'not this year',
    );
  });

  it('spends a misprinted number and gives the format another', () => {
    const formatId = planned();
    catalogue.call('numbers.assign', { formatId });
    catalogue.call('numbers.spend', { isbn: '979-8-969999-00-8', reason: 'printed on the wrong book' });
    expect(catalogue.call('numbers.assign', { formatId }).hyphenated).toBe('979-8-969999-01-5');
    const blocks = catalogue.call('blocks.list', {}).blocks;
    expect(blocks[0]?.counts).toEqual({ free: 98, reserved: 0, assigned: 1, spent: 1 });
  });

  it('says exactly why a typed number is refused, and saves nothing', () => {
    const formatId = planned();
    expect(catalogue.refusal('numbers.assign', { formatId, isbn: '979-8-969999-00-7' })).toMatchObject({
      code: 'NUMBER_INVALID',
      field: 'isbn',
    });
    expect(catalogue.refusal('numbers.assign', { formatId, isbn: '978-0-306-40615-7' })).toMatchObject({
      code: 'NUMBER_OUTSIDE_BLOCKS',
    });
    expect(catalogue.refusal('numbers.reserve', { count: 101, reservedFor: 'x' })).toMatchObject({
      code: 'BLOCK_EMPTY',
    });
    expect(catalogue.call('numbers.list', {}).rows).toEqual([]);
  });

  it('says where a checked number stands here', () => {
    const formatId = planned();
    catalogue.call('numbers.assign', { formatId });
    const { checks } = catalogue.call('isbns.check', {
      texts: ['9798969999008', '9798969999015', '0-306-40615-2', '979-8-969999-01-6'],
    });
    expect(checks.map((check) => [check.ok, check.standing, check.formatId])).toEqual([
      [true, 'assigned', formatId],
      [true, 'free', null],
      [true, 'outside every block', null],
      [false, null, null],
    ]);
  });
});
