import { expect, it } from 'vitest';
import { type PlannedWork, placesFor } from '../../renderer/screens/catalogue/onix/words.ts';
import type { OnixRow } from '../../src/contract/onix.ts';

const work = (at: number): PlannedWork => ({
  key: `w${at}`,
  id: at,
  title: `Book ${at}`,
  editions: [{ key: `e${at}`, id: at, label: `Book ${at}, 1st edition`, replaces: null }],
});
const works = Array.from({ length: 500 }, (_, at) => work(at + 1));
const row = (place: string) =>
  ({ row: 7, title: 'Zebra', work: `w${place}`, edition: `e${place}` }) as OnixRow;

it('offers the place a product has, however many works the message names', () => {
  for (const place of ['1', '40', '500']) {
    const offered = placesFor(row(place), works).map(({ value }) => value);
    expect(offered[0]).toBe(`w${place}/e${place}`);
    expect(offered.at(-1)).toBe('x7/x7');
    expect(offered.length).toBeLessThan(100);
    expect(new Set(offered).size).toBe(offered.length);
  }
});
