import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { JOURNAL_SORTS } from '../../src/contract/journal.ts';
import { LISTING_SORTS } from '../../src/contract/listing-list.ts';
import { NUMBER_SORTS, type NumberRow } from '../../src/contract/numbers.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

// The lists that are read a page at a time: whatever the order and the size of a page, every row comes once.

const WAYS = [false, true];

/** Reads a list to its end by pages of a size that divides nothing. */
function inPages<Row>(read: (from: number, count: number) => { rows: Row[]; total: number }): Row[] {
  const rows: Row[] = [];
  for (;;) {
    const page = read(rows.length, 7);
    rows.push(...page.rows);
    if (page.rows.length === 0) {
      expect(rows).toHaveLength(page.total);
      return rows;
    }
  }
}

/** What is set, in the order it came in; what is not set must have come last. */
function setOnly<Value>(values: readonly (Value | null)[]): Value[] {
  const set = values.filter((value) => value !== null);
  expect(values.slice(0, set.length)).toEqual(set);
  return set;
}

describe('long lists', () => {
  let c: TestCatalogue;
  beforeAll(() => {
    c = openTestCatalogue('2026-11-25');
    c.call('catalogue.demo', {});
    c.call('numbers.reserve', { blockId: 1, count: 3, reservedFor: 'A box of three' });
    c.call('numbers.reserve', { isbn: '979-8-969999-50-3', reservedFor: 'anniversary' });
    c.call('numbers.spend', { isbn: '979-8-969999-70-1', reason: 'Misprinted.', on: '2026-02-03' });
  });
  afterAll(() => c.close());

  describe.each(NUMBER_SORTS)('numbers by %s', (by) => {
    it.each(WAYS)('come once each, down: %s', (down) => {
      const rows = inPages((from, count) =>
        c.call('numbers.list', { blockId: 1, sort: { by, down }, from, count }),
      );
      expect(new Set(rows.map((row) => row.isbn13)).size).toBe(100);
    });
  });

  const numbers = (sort: { by: (typeof NUMBER_SORTS)[number]; down: boolean }, standing?: 'free') =>
    c.call('numbers.list', { blockId: 1, standing, sort, count: 1000 }).rows;

  it('puts numbers in order both ways, free ones by standing first and by use and day last', () => {
    const places = (rows: NumberRow[]) => rows.map((row) => row.index ?? -1);
    const upwards = Array.from({ length: 100 }, (_, place) => place);
    expect(places(numbers({ by: 'number', down: false }))).toEqual(upwards);
    expect(places(numbers({ by: 'number', down: true }))).toEqual(upwards.toReversed());
    const free = places(numbers({ by: 'number', down: false }, 'free'));
    expect(places(numbers({ by: 'number', down: true }, 'free'))).toEqual(free.toReversed());
    const order = ['free', 'reserved', 'assigned', 'spent'];
    const standings = (down: boolean) =>
      numbers({ by: 'standing', down }).map((row) => order.indexOf(row.standing));
    expect(standings(false)).toEqual(standings(false).toSorted());
    expect(standings(true)).toEqual(standings(false).toReversed());
    for (const down of WAYS) {
      const days = setOnly(numbers({ by: 'since', down }).map((row) => row.since));
      expect(days).toEqual(down ? days.toSorted().reverse() : days.toSorted());
    }
    const uses = numbers({ by: 'used for', down: false }).map((row) => row.usedFor);
    expect(uses[0]?.startsWith('A box of three') || uses[0]?.startsWith('A Lantern')).toBe(true);
    expect(uses.at(-1)).toBe('');
  });

  it('lists a channel as its formats’ own records do, in every order', () => {
    const { channels } = c.call('channels.list', {});
    const { works } = c.call('works.list', {});
    const known = works.flatMap(({ id }) =>
      c
        .call('works.get', { id })
        .editions.flatMap(({ formats }) => formats.flatMap(({ listings }) => listings)),
    );
    expect(known.length).toBeGreaterThan(5);
    for (const { id } of channels) {
      const wanted = known.filter((one) => one.channelId === id);
      for (const by of LISTING_SORTS)
        for (const down of WAYS) {
          const rows = inPages((from, count) =>
            c.call('listings.find', { channelId: id, sort: { by, down }, from, count }),
          );
          expect(rows.map((row) => row.id).toSorted()).toEqual(wanted.map((one) => one.id).toSorted());
          const own = (one: (typeof wanted)[number] | undefined) => [
            one?.standing,
            one?.discountBp,
            one?.returns,
          ];
          for (const row of rows)
            expect([row.standing, row.discountBp, row.returns]).toEqual(
              own(wanted.find((one) => one.id === row.id)),
            );
        }
      const selling = c.call('listings.find', { channelId: id, standings: ['selling'] });
      expect(selling.total).toBe(wanted.filter((one) => one.standing === 'selling').length);
    }
  });

  it('shows what was listed on a past day', () => {
    const { channels } = c.call('channels.list', {});
    const at = (asOf: string) =>
      channels.flatMap(({ id }) => c.call('listings.find', { channelId: id, asOf }).rows);
    expect(at('2000-01-01')).toEqual([]);
    const then = at('2020-01-01');
    expect(then.length).toBeGreaterThan(0);
    expect(then.every((row) => row.since === null || row.since <= '2020-01-01')).toBe(true);
  });

  it('gives the journal as a table: the same entries as the list, in every order', () => {
    const all = c.call('journal.list', { count: 1000 }).entries;
    expect(c.call('journal.rows', { count: 1000 }).rows).toEqual(all);
    const keys = {
      time: (row: (typeof all)[number]) => String(row.seq).padStart(9, '0'),
      operation: (row: (typeof all)[number]) => row.operation,
      record: (row: (typeof all)[number]) => row.entity,
      action: (row: (typeof all)[number]) => row.action,
    };
    for (const by of JOURNAL_SORTS)
      for (const down of WAYS) {
        const { rows } = c.call('journal.rows', { sort: { by, down }, count: 1000 });
        const got = rows.map(keys[by]);
        expect(got).toEqual(down ? got.toSorted().reverse() : got.toSorted());
        expect(new Set(rows.map((row) => row.seq)).size).toBe(Math.min(1000, all.length));
      }
    const one = c.call('journal.rows', { entity: 'channel', count: 1000 });
    expect(one.total).toBe(all.filter((entry) => entry.entity === 'channel').length);
  });
});
