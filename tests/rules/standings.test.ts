import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LISTING_STANDINGS, type ListingStanding } from '../../src/contract/terms.ts';
import { LISTING_STEPS, nextSteps, noWay, wayTo } from '../../src/rules/standings.ts';
import { openTestFile, type TestFile } from '../support/catalogue.ts';
import { seedChannel, seedEdition, seedFormat, seedListing } from '../support/seed.ts';

const pairs = LISTING_STANDINGS.flatMap((from) => LISTING_STANDINGS.map((to) => ({ from, to })));
const inTable = (from: ListingStanding, to: ListingStanding) =>
  LISTING_STEPS.some((step) => step.from === from && step.to === to);

describe('the table of steps', () => {
  let test: TestFile;
  beforeAll(() => {
    test = openTestFile();
  });
  afterAll(() => test.close());

  it.each(pairs)('agrees with the database about $from → $to', ({ from, to }) => {
    const taken = () =>
      test.command(({ db }) => {
        const format = seedFormat(db, seedEdition(db));
        // A second listing keeps the format from being retired, so that only the step itself is judged.
        seedListing(db, format, seedChannel(db, `Other ${from} ${to}`), { standing: 'selling' });
        const listing = seedListing(db, format, seedChannel(db, `Channel ${from} ${to}`), { standing: from });
        db.run(
          "INSERT INTO listing_step (listing_id, from_standing, to_standing, on_date) VALUES (?, ?, ?, '2026-02-03')",
          listing,
          from,
          to,
        );
      });
    if (inTable(from, to)) expect(taken).not.toThrow();
    else expect(taken).toThrow('This listing cannot take that step from where it stands.');
  });
});

describe('the way from one standing to another', () => {
  it.each(pairs)(
    'from $from to $to is made of steps of the table, and never passes a standing twice',
    (pair) => {
      const way = wayTo(pair.from, pair.to);
      if (way === null) {
        expect(inTable(pair.from, pair.to)).toBe(false);
        expect(noWay('Paperback on Lanternshelf', pair.from, pair.to)).toMatch(
          new RegExp(`^Paperback on Lanternshelf .*'${pair.from}'`),
        );
        return;
      }
      const passed = [pair.from, ...way];
      expect(way.at(-1)).toBe(pair.to);
      expect(new Set(passed).size).toBe(passed.length);
      for (const [at, to] of way.entries()) expect(inTable(passed[at] ?? pair.from, to)).toBe(true);
    },
  );

  it('goes forward in one act and back only where a refusal or a withdrawn request leads', () => {
    expect(wayTo('sent', 'selling')).toEqual(['proof', 'cleared', 'selling']);
    expect(wayTo('unsent', 'gone')).toEqual(['sent', 'proof', 'cleared', 'selling', 'leaving', 'gone']);
    expect(wayTo('cleared', 'unsent')).toEqual(['unsent']);
    expect(wayTo('leaving', 'selling')).toEqual(['selling']);
    expect(wayTo('proof', 'sent')).toBeNull();
    expect(wayTo('selling', 'unsent')).toBeNull();
    expect(wayTo('gone', 'selling')).toBeNull();
    expect(wayTo('sent', 'sent')).toBeNull();
  });

  it('offers the next steps forward first, and none once gone', () => {
    expect(nextSteps('proof').map((step) => step.to)).toEqual(['cleared', 'unsent']);
    expect(nextSteps('leaving').map((step) => step.to)).toEqual(['gone', 'selling']);
    expect(nextSteps('gone')).toEqual([]);
  });
});
