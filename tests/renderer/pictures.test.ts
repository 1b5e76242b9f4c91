import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coverageLayout } from '../../renderer/pictures/coverage-layout.ts';
import { LIFE, lifeLayout } from '../../renderer/pictures/life-layout.ts';
import { moneyLayout } from '../../renderer/pictures/money-layout.ts';
import { stockLayout } from '../../renderer/pictures/stock-layout.ts';
import { fitted } from '../../renderer/pictures/text-fit.ts';
import { dayOf, ticksOf, timeScale } from '../../renderer/pictures/time-scale.ts';
import type { Life, MoneyByChannel, Stock } from '../../src/contract/pictures.ts';
import { FORMAT_STANDINGS } from '../../src/contract/terms.ts';

const width = fc.integer({ min: 300, max: 1400 });
const day = fc.integer({ min: 5_000, max: 25_000 }).map(dayOf);
const orNone = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });

test('every day within the range lies inside, in order, and marks keep their distance', () => {
  fc.assert(
    fc.property(fc.array(day, { minLength: 1, maxLength: 20 }), width, (days, end) => {
      const scale = timeScale(days, 20, end);
      const sorted = [...days].sort();
      const places = sorted.map((one) => scale.x(one));
      for (const [index, x] of places.entries()) {
        expect(x).toBeGreaterThanOrEqual(20);
        expect(x).toBeLessThanOrEqual(end);
        expect(x).toBeGreaterThanOrEqual(places[index - 1] ?? 0);
      }
      const ticks = ticksOf(scale);
      ticks.forEach((tick, index) => {
        const before = ticks[index - 1];
        if (before) expect(tick.x - before.x).toBeGreaterThanOrEqual(56);
      });
      expect(new Set(ticks.map((tick) => tick.label)).size).toBe(ticks.length);
    }),
  );
});

const lane = fc
  .record({
    formatId: fc.integer({ min: 1, max: 1e6 }),
    days: fc.uniqueArray(day, { minLength: 1, maxLength: 6 }),
    standings: fc.array(fc.constantFrom(...FORMAT_STANDINGS), { minLength: 6, maxLength: 6 }),
    onSaleDate: orNone(day),
  })
  .map(({ formatId, days, standings, onSaleDate }) => {
    const sorted = [...days].sort();
    return {
      formatId,
      name: 'Paperback',
      hyphenated: null,
      standing: 'live' as const,
      onSaleDate,
      spans: sorted.map((from, index) => ({
        standing: standings[index] ?? ('live' as const),
        from,
        to: sorted[index + 1] ?? null,
      })),
    };
  });

test('lanes never overlap, and their bars lie inside, one after the other', () => {
  const edition = fc.record({
    label: fc.constant('The Salt Almanac'),
    releaseDay: orNone(day),
    retirementDay: orNone(day),
    dropped: fc.array(
      fc.record({
        kind: fc.constantFrom('release' as const, 'retirement' as const),
        day,
        droppedOn: day,
        reason: fc.constant(''),
      }),
      { maxLength: 2 },
    ),
    lanes: fc.array(lane, { maxLength: 5 }),
  });
  const life = fc.array(edition, { minLength: 1, maxLength: 5 }).map(
    (editions): Life => ({
      workId: 1,
      title: 'The Salt Almanac',
      day: dayOf(25_001),
      editions: editions.map((one, index) => ({
        ...one,
        editionId: index + 1,
        replacesId: index === 0 ? null : index,
      })),
    }),
  );
  fc.assert(
    fc.property(life, width, (given, wide) => {
      const layout = lifeLayout(given, wide);
      expect(layout.successions).toHaveLength(given.editions.length - 1);
      let below = 0;
      for (const edition of layout.editions) {
        expect(edition.top).toBeGreaterThanOrEqual(below);
        below = edition.top + LIFE.heading;
        for (const box of edition.lanes) {
          expect(box.top).toBeGreaterThanOrEqual(below);
          below = box.barTop + LIFE.bar;
          box.bars.forEach((bar, index) => {
            expect(bar.x).toBeGreaterThanOrEqual(layout.start);
            expect(bar.x + bar.width).toBeLessThanOrEqual(layout.end + 2);
            expect(bar.x).toBeGreaterThanOrEqual(box.bars[index - 1]?.x ?? 0);
          });
        }
      }
      expect(below).toBeLessThanOrEqual(layout.height);
    }),
  );
});

test('the line of numbers left stays inside and ends today', () => {
  const stock = fc
    .record({
      frees: fc.array(fc.nat(10_000), { minLength: 1, maxLength: 30 }),
      ahead: orNone(fc.integer({ min: 1, max: 30_000 })),
    })
    .map(
      ({ frees, ahead }): Stock => ({
        day: dayOf(20_000),
        capacity: 10_000,
        free: frees.at(-1) ?? 0,
        points: frees.map((free, index) => ({ day: dayOf(19_900 + index), free })),
        perYear: 3,
        runsOutOn: ahead === null ? null : dayOf(20_000 + ahead),
      }),
    );
  fc.assert(
    fc.property(stock, width, (given, wide) => {
      const layout = stockLayout(given, wide);
      if (!layout) throw new Error('There are points.');
      const numbers = [...layout.line.matchAll(/([MHVL])([\d.]+)(?: ([\d.]+))?/g)];
      for (const [, letter, first, second] of numbers) {
        if (letter !== 'V') expect(Number(first)).toBeLessThanOrEqual(layout.right);
        const y = Number(letter === 'V' ? first : (second ?? layout.top));
        expect(y).toBeGreaterThanOrEqual(layout.top - 0.01);
        expect(y).toBeLessThanOrEqual(layout.bottom + 0.01);
      }
      expect(layout.endX ?? layout.todayX).toBeGreaterThanOrEqual(layout.todayX);
      // However long the numbers last, what lies behind keeps a good part of the picture.
      expect(layout.todayX - layout.left).toBeGreaterThan((layout.right - layout.left) / 25);
    }),
  );
  expect(
    stockLayout({ day: '2026-11-25', capacity: 0, free: 0, points: [], perYear: 0, runsOutOn: null }, 800),
  ).toBeNull();
});

test('the parts of a bar follow each other and make its list price', () => {
  const bar = fc
    .record({ list: fc.integer({ min: 1, max: 9_999 }), print: fc.nat(9_999), channel: fc.nat(9_999) })
    .map(({ list, print, channel }) => ({
      listingId: list,
      formatId: 1,
      workId: 1,
      label: 'The Salt Almanac · Paperback',
      standing: 'selling' as const,
      currency: 'EUR',
      listMinor: list,
      printCostMinor: print,
      channelMinor: channel,
      keptMinor: list - print - channel,
    }));
  fc.assert(
    fc.property(fc.array(bar, { minLength: 1, maxLength: 10 }), width, (bars, wide) => {
      const money: MoneyByChannel = {
        day: '2026-11-25',
        channels: [{ channelId: 1, name: 'Printworks Direct', bars, total: bars.length }],
      };
      const layout = moneyLayout(money, wide);
      let below = 0;
      for (const row of layout.channels[0]?.rows ?? []) {
        expect(row.top).toBeGreaterThanOrEqual(below);
        below = row.barTop + 12;
        let x = layout.start;
        for (const part of row.parts) {
          expect(part.x).toBeCloseTo(x, 6);
          x += part.width;
        }
        expect(x).toBeLessThanOrEqual(wide);
        expect(row.loss !== null).toBe((row.bar.keptMinor ?? 0) < 0);
      }
    }),
  );
});

test('fields of the grid lie inside at every width, one for each format and channel', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 9 }),
      fc.integer({ min: 1, max: 40 }),
      width,
      (columns, rows, wide) => {
        const layout = coverageLayout(
          {
            day: '2026-11-25',
            channels: Array.from({ length: columns }, (_, id) => ({ id: id + 1, name: `Channel ${id}` })),
            rows: Array.from({ length: rows }, (_, id) => ({
              formatId: id + 1,
              workId: 1,
              editionLabel: 'Fen Light',
              name: 'Paperback',
              standing: 'live',
              cells: [],
            })),
            total: rows,
          },
          wide,
        );
        expect(layout.columns).toHaveLength(columns);
        const last = layout.columns.at(-1);
        expect((last?.x ?? 0) + layout.cell).toBeLessThanOrEqual(wide);
        layout.rows.forEach((row, index) => {
          const next = layout.rows[index + 1];
          expect(row.cellTop + 26).toBeLessThanOrEqual(next?.top ?? layout.height);
        });
      },
    ),
  );
});

test('a text that is too long is cut with an ellipsis', () => {
  expect(fitted('Fen Light', 400, 12)).toBe('Fen Light');
  expect(fitted('A Lantern Keeper’s Primer', 80, 12)).toBe('A Lantern…');
});
