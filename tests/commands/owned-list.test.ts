import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
});
afterEach(() => catalogue.close());

const LIST = [
  'ISBN,Status,Title,Date',
  '978-1-7343145-0-2,assigned,Fen Light,2024-05-01',
  '978-1-7343145-1-9,spent,Misprint,2024-06-01',
  '978-1-7343145-2-6,free,,',
  '979-8-969999-00-8,assigned,The Salt Almanac,2025-01-10',
].join('\r\n');

describe('the agency’s list of owned numbers', () => {
  it('is shown before anything is saved', () => {
    const shown = catalogue.call('blocks.readList', { text: LIST });
    expect(shown.problems).toEqual([]);
    expect(
      shown.blocks.map((block) => [
        block.hyphenatedPrefix,
        block.capacity,
        block.known,
        block.numbers.length,
      ]),
    ).toEqual([
      ['978-1-7343145', 10, false, 3],
      ['979-8-969999', 100, false, 1],
    ]);
    expect(catalogue.call('blocks.list', {}).blocks).toEqual([]);
  });

  it('records blocks, reserves what was assigned under its title, spends what is spent, and changes nothing the second time', () => {
    expect(catalogue.call('blocks.importList', { text: LIST })).toEqual({
      blocksAdded: 2,
      reserved: 2,
      spent: 1,
      leftAlone: 1,
    });
    const rows = catalogue.call('numbers.list', {}).rows;
    expect(rows.map((row) => [row.hyphenated, row.standing, row.usedFor, row.since])).toEqual([
      ['978-1-7343145-0-2', 'reserved', 'Fen Light', '2024-05-01'],
      ['978-1-7343145-1-9', 'spent', '', '2024-06-01'],
      ['979-8-969999-00-8', 'reserved', 'The Salt Almanac', '2025-01-10'],
    ]);
    const head = catalogue.call('catalogue.info', {}).journalEntries;
    expect(catalogue.call('blocks.importList', { text: LIST })).toEqual({
      blocksAdded: 0,
      reserved: 0,
      spent: 0,
      leftAlone: 4,
    });
    expect(catalogue.call('catalogue.info', {}).journalEntries).toBe(head);
  });

  it('is refused whole when a line is damaged, unless the good lines alone are wanted', () => {
    const text = `${LIST}\r\n9.78E+12,assigned,Lost,`;
    const refusal = catalogue.refusal('blocks.importList', { text });
    expect(refusal).toMatchObject({ code: 'NUMBER_INVALID', field: 'text' });
    expect(refusal.message).toContain('Line 6');
    expect(catalogue.call('blocks.list', {}).blocks).toEqual([]);
    expect(catalogue.call('blocks.importList', { text, goodLinesOnly: true }).blocksAdded).toBe(2);
  });
});

describe('allocation', () => {
  beforeEach(() => {
    catalogue.call('blocks.add', { prefix: '978-1-7343145' });
  });

  const editionWith = (...forms: string[]) => {
    const { editionId } = catalogue.call('works.create', { title: 'Fen Light' });
    for (const form of forms) catalogue.call('formats.create', { editionId, form });
    return editionId;
  };

  it('keeps the numbers of an edition side by side where a block has the room', () => {
    catalogue.call('numbers.reserve', { isbn: '978-1-7343145-1-9', reservedFor: 'a wish' });
    const together = catalogue.call('numbers.assignEdition', { editionId: editionWith('BC', 'BB', 'ED') });
    expect(together.rows.map((row) => row.index)).toEqual([2, 3, 4]);
    expect(together.adjacent).toBe(true);
    catalogue.call('numbers.reserve', { isbn: '978-1-7343145-6-4', reservedFor: 'a wish' });
    catalogue.call('numbers.reserve', { isbn: '978-1-7343145-8-8', reservedFor: 'a wish' });
    const apart = catalogue.call('numbers.assignEdition', { editionId: editionWith('BC', 'ED') });
    expect([apart.adjacent, apart.rows.map((row) => row.index)]).toEqual([false, [0, 5]]);
  });

  it('reserves numbers in a row for a series, and refuses when no gap is wide enough', () => {
    catalogue.call('numbers.reserve', { isbn: '978-1-7343145-3-3', reservedFor: 'a wish' });
    const { rows } = catalogue.call('numbers.reserve', {
      count: 5,
      adjacent: true,
      reservedFor: 'the series',
    });
    expect(rows.map((row) => row.index)).toEqual([4, 5, 6, 7, 8]);
    expect(catalogue.refusal('numbers.reserve', { count: 4, adjacent: true, reservedFor: 'x' }).code).toBe(
      'BLOCK_EMPTY',
    );
  });

  it('says how long the numbers last and what size to buy next', () => {
    catalogue.call('numbers.assignEdition', { editionId: editionWith('BC', 'BB'), on: '2024-03-04' });
    catalogue.call('numbers.assignEdition', { editionId: editionWith('BC', 'ED'), on: '2025-09-01' });
    const runway = catalogue.call('blocks.runway', {});
    expect(runway).toMatchObject({ free: 6, assigned: 4 });
    expect(runway.perYear).toBeCloseTo(2, 1);
    // Six numbers at two a year, from 2026-03-02.
    expect(runway.runsOutOn?.slice(0, 7)).toBe('2029-02');
    expect(runway.buyNext?.capacity).toBe(100);
    expect(runway.sentence).toContain('6 numbers are left');
  });
});
