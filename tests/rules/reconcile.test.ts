import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ListingStanding } from '../../src/contract/terms.ts';
import {
  differenceKey,
  differences,
  type RecordedItem,
  type ReportRow,
  tellsOf,
} from '../../src/rules/reconcile.ts';
import { sameTitle } from '../../src/rules/same-title.ts';

const DAY = '2026-11-25';

/** The number at a place of the demo's invented block. */
const isbnAt = (place: number) => {
  const first = `979896999${String(place).padStart(3, '0')}`;
  const sum = [...first].reduce((total, digit, at) => total + Number(digit) * (at % 2 === 0 ? 1 : 3), 0);
  return `${first}${(10 - (sum % 10)) % 10}`;
};

const item = (place: number, standing: ListingStanding, more: Partial<RecordedItem> = {}): RecordedItem => ({
  formatId: place + 1,
  isbn13: isbnAt(place),
  name: `Work ${place} · Paperback`,
  listing: { standing, reference: `R${place}`, goneBy: standing === 'leaving' ? '2026-12-01' : null },
  ended: null,
  title: `Work ${place}`,
  subtitle: '',
  prices: [{ currency: 'GBP', amountMinor: 1000 + place, tax: 'including' }],
  onSaleDate: '2026-05-01',
  ...more,
});

/** The row by which a channel tells what is on record. */
const rowOf = (of: RecordedItem): ReportRow => ({
  isbn13: of.isbn13,
  reference: of.listing?.reference ?? '',
  title: of.title,
  prices: of.prices,
  onSaleDate: of.onSaleDate,
  selling: of.listing?.standing === 'selling' ? true : null,
});

const LISTED = ['sent', 'proof', 'cleared', 'selling', 'leaving'];
const reportOf = (record: readonly RecordedItem[]) =>
  record.filter(({ listing }) => LISTED.includes(listing?.standing ?? '')).map(rowOf);
const told = (rows: readonly ReportRow[], record: readonly RecordedItem[], complete = true) =>
  differences({ rows, day: DAY, complete }, record);

const record = fc
  .array(
    fc.constantFrom<ListingStanding>('unsent', 'sent', 'proof', 'cleared', 'selling', 'leaving', 'gone'),
    {
      minLength: 1,
      maxLength: 30,
    },
  )
  .map((standings) => standings.map((standing, place) => item(place, standing)));
/** One of the selling items of a record that has some. */
const withSelling = record
  .map((items) => [item(99, 'selling'), ...items])
  .chain((items) => {
    const selling = items.filter(({ listing }) => listing?.standing === 'selling');
    return fc.record({ items: fc.constant(items), one: fc.constantFrom(...selling) });
  });

/** Each fault that can be planted into a report, with the kind it must give. */
const FAULTS: Record<string, (row: ReportRow) => ReportRow> = {
  price: (row) => ({ ...row, prices: [{ currency: 'GBP', amountMinor: 5 }] }),
  'on-sale date': (row) => ({ ...row, onSaleDate: '2026-05-02' }),
  title: (row) => ({ ...row, title: 'Another name' }),
  'only here': (row) => ({ ...row, selling: false }),
};

describe('a report set against the record', () => {
  it('tells nothing when it was made from the record itself, in any order of rows', () => {
    fc.assert(
      fc.property(
        record.chain((items) =>
          fc.tuple(
            fc.constant(items),
            fc.shuffledSubarray(reportOf(items), { minLength: reportOf(items).length }),
          ),
        ),
        ([items, rows]) => {
          expect(told(rows, items)).toEqual([]);
        },
      ),
    );
  });

  it('tells each planted difference exactly once, and nothing else', () => {
    fc.assert(
      fc.property(withSelling, fc.constantFrom(...Object.keys(FAULTS)), ({ items, one }, fault) => {
        const rows = reportOf(items).map((row) =>
          row.isbn13 === one.isbn13 ? (FAULTS[fault]?.(row) ?? row) : row,
        );
        // The same row twice is still one difference.
        for (const report of [rows, [...rows, ...rows]])
          expect(told(report, items).map(({ kind, isbn13 }) => [kind, isbn13])).toEqual([
            [fault, one.isbn13],
          ]);
      }),
    );
  });

  it('tells what is missing from a complete report, and nothing of it from another', () => {
    fc.assert(
      fc.property(withSelling, ({ items, one }) => {
        const rows = reportOf(items).filter(({ isbn13 }) => isbn13 !== one.isbn13);
        expect(told(rows, items)).toMatchObject([
          { kind: 'only here', isbn13: one.isbn13, there: 'not listed' },
        ]);
        expect(told(rows, items, false)).toEqual([]);
      }),
    );
  });

  it('tells what is listed there and not here', () => {
    const stranger: ReportRow = { ...rowOf(item(50, 'selling')), reference: '' };
    const known = [
      item(1, 'selling'),
      item(2, 'unsent'),
      item(3, 'cleared'),
      item(4, 'selling', { listing: null }),
    ];
    const rows = [
      rowOf(known[0] as RecordedItem),
      stranger,
      ...known.slice(1).map((one) => ({ ...rowOf(one), selling: true })),
    ];
    expect(told(rows, known).map(({ kind, here }) => [kind, here])).toEqual([
      ['only there', 'unsent'],
      ['only there', 'cleared'],
      ['only there', 'not listed on this channel'],
      ['only there', 'not in the catalogue'],
    ]);
    // What the channel itself says is not sold is no such thing.
    expect(
      told(
        rows.map((row) => ({ ...row, selling: false })),
        known.slice(1),
      ),
    ).toEqual([]);
  });

  it('tells what should have gone and sells on, but not what leaves in time', () => {
    const items = [
      item(1, 'gone'),
      item(2, 'leaving', { listing: { standing: 'leaving', reference: '', goneBy: '2026-11-24' } }),
      item(3, 'leaving'),
      item(4, 'selling', { listing: null, ended: 'retired' }),
      item(5, 'selling', { listing: null, ended: 'a spent number', formatId: null }),
      item(6, 'sent', { ended: 'cancelled' }),
    ];
    expect(told(items.map(rowOf), items).map(({ kind, here }) => [kind, here])).toEqual([
      ['still selling', 'gone'],
      ['still selling', 'leaving, to be gone by 2026-11-24'],
      ['still selling', 'retired'],
      ['still selling', 'a spent number'],
      ['still selling', 'cancelled'],
    ]);
  });

  it('finds a listing by the channel’s reference where the row has no number', () => {
    const numbered = item(1, 'selling');
    const bare = item(2, 'selling', { isbn13: null });
    const rows = [numbered, bare].map((one) => ({ ...rowOf(one), isbn13: null }));
    expect(told(rows, [numbered, bare])).toEqual([]);
    expect(told([{ ...rowOf(bare), isbn13: null, reference: ' r2 ' }], [bare])).toEqual([]);
    // Another number under the same reference is another thing.
    expect(told([{ ...rowOf(numbered), isbn13: isbnAt(7) }], [numbered]).map(({ kind }) => kind)).toEqual([
      'only here',
      'only there',
    ]);
  });

  it('has one key for one thing, whatever the row says of it', () => {
    const [first] = told([{ ...rowOf(item(1, 'gone')) }], [item(1, 'gone')]);
    const [later] = told([{ ...rowOf(item(1, 'gone')), reference: 'X', selling: true }], [item(1, 'gone')]);
    expect(first && later && differenceKey(first) === differenceKey(later)).toBe(true);
  });

  it('speaks only of what it holds', () => {
    const row = { ...rowOf(item(1, 'selling')), title: '', onSaleDate: null };
    const tells = tellsOf({ rows: [row], day: DAY, complete: false });
    const of = { isbn13: isbnAt(1), reference: '', currency: null };
    expect(tells({ ...of, kind: 'price', currency: 'GBP' })).toBe(true);
    expect(tells({ ...of, kind: 'price', currency: 'EUR' })).toBe(false);
    expect(tells({ ...of, kind: 'title' })).toBe(false);
    expect(tells({ ...of, kind: 'on-sale date' })).toBe(false);
    expect(tells({ ...of, kind: 'only here' })).toBe(true);
    const missing = { ...of, isbn13: isbnAt(2), kind: 'still selling' } as const;
    expect(tells(missing)).toBe(false);
    expect(tellsOf({ rows: [row], day: DAY, complete: true })(missing)).toBe(true);
  });
});

describe('titles', () => {
  const recorded = { title: 'The Salt Almanac', subtitle: 'A Year’s Tides' };
  it.each(['the salt almanac', 'Salt Almanac, The', "The Salt Almanac: A Year's Tides", 'The Salt Alm…'])(
    '%s is the recorded one',
    (shown) => expect(sameTitle(shown, recorded)).toBe(true),
  );
  it.each(['The Salt Almanack', 'The Salt Almanac 2', '…', 'A Year’s Tides'])('%s is another', (shown) =>
    expect(sameTitle(shown, recorded)).toBe(false),
  );
});
