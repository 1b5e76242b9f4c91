import Database from 'better-sqlite3';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { FormatFacts } from '../../src/rules/audit/facts.ts';
import { spansOf } from '../../src/rules/pictures/life.ts';
import { moneyOf } from '../../src/rules/pictures/money.ts';
import { stockOf } from '../../src/rules/pictures/stock.ts';
import { worldReader } from '../faults/world.ts';
import { openTestCatalogue } from '../support/catalogue.ts';
import { KINDS, moveOf } from '../support/history.ts';
import { cleanCatalogue } from './audit/clean.ts';
import { CHANNEL, FORMAT, factsOf } from './audit/rows.ts';

test('the spans of a format are what the catalogue answers as of each of their days', () => {
  // The other side is the view format_standing of the file, rewound to the day.
  const step = fc.record({
    kind: fc.constantFrom(...KINDS),
    wrong: fc.constant(false),
    dice: fc.array(fc.nat(1_000_003), { minLength: 5, maxLength: 5 }),
  });
  let compared = 0;
  const history = fc.array(step, { minLength: 60, maxLength: 80, size: 'max' });
  fc.assert(
    fc.property(history, (steps) => {
      const catalogue = openTestCatalogue('2026-03-02');
      const raw = new Database(catalogue.file, { readonly: true });
      const read = worldReader(raw);
      let day = 2;
      catalogue.call('catalogue.demo', {});
      for (const next of steps) {
        if ((next.dice[1] ?? 0) % 4 === 0) day += 1;
        const today = `2026-${String(3 + Math.floor(day / 28)).padStart(2, '0')}-${String(1 + (day % 28)).padStart(2, '0')}`;
        catalogue.setToday(today);
        const move = moveOf(next, read(), today);
        if (move) catalogue.app.call(move.name, move.input);
      }
      const { works } = catalogue.call('works.list', { count: 100 });
      const lives = works.map(({ id }) => catalogue.call('pictures.life', { workId: id }));
      const lanes = lives.flatMap((life) => life.editions.flatMap((edition) => edition.lanes));
      for (const asOf of ['2019-06-01', '2026-03-03', '2026-03-05', '2026-03-09', '2026-03-12']) {
        const then = new Map(
          catalogue.call('catalogue.status', { asOf }).list.map((row) => [row.formatId, row.standing]),
        );
        for (const lane of lanes) {
          const standing = then.get(lane.formatId);
          const span = lane.spans.findLast(({ from }) => from <= asOf);
          if (standing === undefined || !span) continue;
          expect([lane.formatId, asOf, span.standing]).toEqual([lane.formatId, asOf, standing]);
          compared += 1;
        }
      }
      for (const lane of lanes) expect(lane.spans.at(-1)?.standing).toBe(lane.standing);
      raw.close();
      catalogue.close();
    }),
    { seed: 8, numRuns: 5, endOnFailure: true },
  );
  expect(compared).toBeGreaterThan(100);
});

/** The plan that retires a format's edition, as the rules know it. */
const plansOf = ({ edition }: FormatFacts) =>
  edition.retirement ? [{ madeOn: edition.retirement.madeOn, droppedOn: null }] : [];

test('spans follow each other without gaps and without repeating a standing', () => {
  const { formats } = factsOf(cleanCatalogue());
  for (const format of formats) {
    const spans = spansOf(format, plansOf(format));
    expect(spans.length).toBeGreaterThan(0);
    spans.forEach((span, index) => {
      const next = spans[index + 1];
      expect(span.to).toBe(next?.from ?? null);
      if (next) {
        expect(next.from > span.from).toBe(true);
        expect(next.standing).not.toBe(span.standing);
      }
    });
  }
  const first = formats.find(({ id }) => id === FORMAT.firstPaper);
  expect(first && spansOf(first, plansOf(first)).map((span) => `${span.standing} ${span.from}`)).toEqual([
    'planned 2018-11-01',
    'committed 2019-04-01',
    'proofing 2019-04-08',
    'live 2019-05-02',
    'retiring 2024-03-04',
    'retired 2024-03-11',
  ]);
});

test('the numbers left go down to what is free now', () => {
  const facts = factsOf(cleanCatalogue());
  const { points, free, capacity } = stockOf(facts);
  expect(points.at(-1)?.free).toBe(free);
  expect(Math.max(...points.map((point) => point.free))).toBeLessThanOrEqual(capacity);
  expect(points.map((point) => point.day)).toEqual([...points.map((point) => point.day)].sort());
  expect(points[0]).toEqual({ day: '2019-01-10', free: 100 });
});

test('of every list price, print cost, the channel’s part and what is kept make the whole', () => {
  const { channels } = moneyOf(factsOf(cleanCatalogue()), 500);
  const bars = channels.flatMap((channel) => channel.bars);
  expect(bars.length).toBeGreaterThan(5);
  for (const bar of bars)
    if (bar.keptMinor !== null)
      expect((bar.printCostMinor ?? 0) + (bar.channelMinor ?? 0) + bar.keptMinor).toBe(bar.listMinor);
  // STANDARDS E7: 19.95 at 40 % less 4.25 print cost leaves 7.72.
  const almanac = channels
    .find((channel) => channel.channelId === CHANNEL.printworks)
    ?.bars.find((bar) => bar.formatId === FORMAT.secondPaper);
  expect(almanac).toMatchObject({ listMinor: 1995, printCostMinor: 425, channelMinor: 798, keptMinor: 772 });
});
