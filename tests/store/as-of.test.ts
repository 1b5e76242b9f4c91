import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { rewind } from '../../src/store/as-of.ts';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-03-02');
  catalogue.call('catalogue.demo', {});
});
afterEach(() => catalogue.close());

const standings = (asOf?: string) => {
  const status = catalogue.call('catalogue.status', asOf === undefined ? {} : { asOf });
  return Object.fromEntries(status.list.map((row) => [`${row.editionLabel} ${row.name}`, row.standing]));
};

describe('a past day, by the dates of the record', () => {
  it.each([
    ['2015-05-31', {}],
    ['2015-06-01', { "A Lantern Keeper's Primer Paperback": 'planned' }],
    ['2015-08-20', { "A Lantern Keeper's Primer Paperback": 'committed' }],
    ['2015-09-05', { "A Lantern Keeper's Primer Paperback": 'proofing' }],
    ['2015-09-10', { "A Lantern Keeper's Primer Paperback": 'live' }],
    [
      '2022-03-01',
      {
        "A Lantern Keeper's Primer Paperback": 'retiring',
        'The Salt Almanac Paperback': 'live',
        'The Salt Almanac E-book (EPUB)': 'live',
      },
    ],
    [
      '2022-03-07',
      {
        "A Lantern Keeper's Primer Paperback": 'retired',
        'The Salt Almanac Paperback': 'live',
        'The Salt Almanac E-book (EPUB)': 'live',
      },
    ],
  ])('answers %s though all of it was recorded later', (day, expected) => {
    expect(standings(day)).toEqual(expected);
  });

  it('counts the numbers of that day', () => {
    expect(catalogue.call('catalogue.status', { asOf: '2019-01-14' }).numbers).toEqual({
      free: 97,
      reserved: 0,
      assigned: 3,
      spent: 0,
    });
    expect(catalogue.call('catalogue.status', {}).numbers).toEqual({
      free: 93,
      reserved: 0,
      assigned: 7,
      spent: 0,
    });
    expect(
      catalogue.call('numbers.list', { blockId: 1, from: 3, count: 1, asOf: '2019-01-14' }).rows[0],
    ).toMatchObject({ standing: 'free', usedFor: '' });
    expect(catalogue.call('catalogue.status', { asOf: '2015-02-01' }).numbers.free).toBe(0);
  });

  it('finds the next free number of that day', () => {
    const [block] = catalogue.call('blocks.list', { asOf: '2019-01-14' }).blocks;
    expect(block).toMatchObject({ nextFree: '979-8-969999-03-9', counts: { free: 97, assigned: 3 } });
    const free = catalogue.call('numbers.list', {
      blockId: 1,
      standing: 'free',
      count: 1,
      asOf: '2019-01-14',
    });
    expect([free.total, free.rows[0]?.index]).toEqual([97, 3]);
    expect(catalogue.call('blocks.bands', { blockId: 1, asOf: '2019-01-14' }).bands).toEqual([
      { from: 0, free: 97, reserved: 0, assigned: 3, spent: 0 },
    ]);
  });

  it('answers the same for today as without a day', () => {
    for (const name of [
      'works.get',
      'works.list',
      'catalogue.status',
      'numbers.list',
      'audit.run',
    ] as const) {
      const input = name === 'works.get' ? { id: 2 } : name === 'numbers.list' ? { blockId: 1 } : {};
      const [now, today] = [
        catalogue.call(name, input as never),
        catalogue.call(name, { ...input, asOf: '2026-03-02' } as never),
      ];
      expect([name, today]).toEqual([name, now]);
    }
  });

  it('refuses a day that has not come', () => {
    expect(catalogue.refusal('works.list', { asOf: '2026-03-03' })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'asOf',
    });
    expect(catalogue.refusal('works.list', { asOf: '2026-02-30' })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'asOf',
    });
  });
});

describe('a past day, by what was recorded by then', () => {
  it('gives every field, list and price the value it had', () => {
    catalogue.setToday('2026-03-09');
    const before = catalogue.call('works.get', { id: 2 });
    const [second, first] = before.editions;
    catalogue.setToday('2026-03-10');
    catalogue.call('editions.update', {
      id: second?.id ?? 0,
      title: 'The Salt Almanac Revised',
      keywords: ['tide tables'],
      contributors: [{ role: 'A01', name: 'Maren Oskarsdal' }],
    });
    catalogue.call('editions.update', { id: first?.id ?? 0, description: 'Shorter.' });
    catalogue.call('formats.update', { id: 2, prices: [{ currency: 'EUR', amountMinor: 1200 }], pages: 290 });
    catalogue.call('listings.update', { id: 3, discountBp: 5000 });
    catalogue.call('works.update', { id: 2, note: 'renamed' });
    catalogue.setToday('2026-03-11');
    catalogue.call('editions.update', { id: second?.id ?? 0, title: 'The Salt Almanac Once More' });
    const then = catalogue.call('works.get', { id: 2, asOf: '2026-03-09' });
    expect(then).toEqual(before);
    const middle = catalogue.call('works.get', { id: 2, asOf: '2026-03-10' });
    expect(middle.editions[0]).toMatchObject({
      title: 'The Salt Almanac Revised',
      keywords: ['tide tables'],
    });
    expect(middle.editions[1]?.formats[0]).toMatchObject({
      pages: 290,
      prices: [{ currency: 'EUR', amountMinor: 1200, tax: 'including' }],
    });
  });

  it('finds rows by their parent, also of a list that lost rows since and of a number that was only reserved', () => {
    catalogue.setToday('2026-03-09');
    const { id: edition, formats } = catalogue.call('works.get', { id: 2 }).editions[1] ?? {
      id: 0,
      formats: [],
    };
    const audiobook = catalogue.call('works.list', { search: 'Fen Light' }).works[0]?.formats[0]?.id ?? 0;
    const [reserved] = catalogue.call('numbers.reserve', { blockId: 1, reservedFor: 'later' }).rows;
    catalogue.setToday('2026-03-11');
    catalogue.call('editions.update', { id: edition, keywords: ['tide tables'] });
    catalogue.call('formats.update', {
      id: formats[0]?.id ?? 0,
      prices: [{ currency: 'EUR', amountMinor: 1200 }],
    });
    catalogue.call('numbers.assign', { formatId: audiobook, isbn: String(reserved?.isbn13) });
    const raw = new Database(catalogue.file, { readonly: true });
    const past = rewind(raw, '2026-03-10');
    for (const [list, key, parent] of [
      ['edition_keyword', 'edition_id', 'edition'],
      ['format_price', 'format_id', 'format'],
      ['number', 'format_id', 'format'],
    ]) {
      const plan = past.all<{ detail: string }>(
        `EXPLAIN QUERY PLAN SELECT (SELECT count(*) FROM ${list} x WHERE x.${key} = p.id) FROM ${parent} p`,
      );
      expect(
        raw.prepare("SELECT 1 FROM temp.sqlite_schema WHERE type = 'table' AND name = ?").get(list),
      ).toBeDefined();
      expect(plan.map(({ detail }) => detail).join('; ')).toContain(
        `INDEX past_${list}_by_${key} (${key}=?)`,
      );
    }
    raw.close();
  });

  it('shows a later change of standing only from its day on', () => {
    catalogue.setToday('2026-03-10');
    const audiobook = catalogue.call('works.list', { search: 'Fen Light' }).works[0]?.formats[0]?.id ?? 0;
    catalogue.call('formats.cancel', { id: audiobook, reason: 'no studio' });
    expect(standings('2026-03-09')['Fen Light Audiobook download (MP3)']).toBe('planned');
    expect(standings()['Fen Light Audiobook download (MP3)']).toBe('cancelled');
  });
});
