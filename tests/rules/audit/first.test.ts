import { expect, test } from 'vitest';
import { Held } from '../../../src/rules/audit/held.ts';
import { AUDIT_RULES } from '../../../src/rules/audit/index.ts';
import { cleanCatalogue } from './clean.ts';
import { numberPlants } from './plants/numbers.ts';
import { audit, type Catalogue, FORMAT, factsOf, isbn, LISTING, numberOf, row } from './rows.ts';

// Rules that look beyond one work name the first of many; which one that is does not depend on how rows were recorded.

/** What one rule says of the clean catalogue after a change. */
function said(rule: string, change: (catalogue: Catalogue) => void): string[] {
  const catalogue = cleanCatalogue();
  change(catalogue);
  return audit(factsOf(catalogue)).flatMap((finding) => (finding.rule === rule ? finding.message : []));
}

test('of several formats sent before their number was given, the first by the title of its work is named', () => {
  const late = (c: Catalogue) => {
    for (const formatId of [FORMAT.secondPaper, FORMAT.knotsPaper])
      numberOf(c, formatId).assignedOn = '2026-11-20';
  };
  const [message] = said('number-after-first-sending', late);
  expect(message).toMatch(
    /^2 formats were sent before the day of their number; the first: Knots for Small Hands · /,
  );
});

test('of several numbers given out before their block was bought, the earliest given is named', () => {
  const early = (c: Catalogue) => {
    for (const block of c.blocks) block.boughtOn = '2018-06-01';
    numberOf(c, FORMAT.secondPaper).assignedOn = '2018-05-04';
    numberOf(c, FORMAT.knotsPaper).assignedOn = '2018-03-02';
  };
  const messages = said('number-before-its-block', early);
  expect(messages).toHaveLength(1);
  expect(messages[0]).toContain('was given out on 2018-03-02');
});

test('a name is said to be spelled as each of its spellings stands first', () => {
  const spelled = (c: Catalogue) => {
    const names = ['Maren  Oskarsdal', 'maren oskarsdal', 'Maren Oskarsdal'];
    for (const person of c.contributors)
      if (person.role === 'A01') person.name = names[person.editionId % 3] ?? '';
  };
  expect(said('contributor-spelled-two-ways', spelled)).toEqual([
    "One name is written in 3 ways: 'Maren  Oskarsdal' (Fen Light), 'maren oskarsdal' (Knots for Small Hands), 'Maren Oskarsdal' (The Salt Almanac, 2nd edition).",
  ]);
});

test('a listing that shows a spent number twice over is found twice', () => {
  const spent = (c: Catalogue) => {
    const number = numberOf(c, FORMAT.knotsPaper);
    Object.assign(number, { standing: 'spent', spentOn: '2026-01-02' });
    row(c.listings, LISTING.knotsPrintworks).reference = number.isbn13;
    row(c.listings, LISTING.knotsBookshop).standing = 'gone';
  };
  expect(said('spent-number-listed', spent)).toEqual([
    expect.stringMatching(/ is selling, but its only number, .* is spent\.$/),
    expect.stringMatching(/ is recorded with the spent number /),
  ]);
});

test('no number is offered where none is free', () => {
  const catalogue = cleanCatalogue();
  numberPlants['release-planned-without-number']?.plant(catalogue);
  const offered = () =>
    audit(factsOf(catalogue)).find(({ rule }) => rule === 'release-planned-without-number')?.mending;
  expect(offered()?.operation).toBe('numbers.assign');
  // A block of one number, which is taken.
  for (const block of catalogue.blocks) block.digits = isbn(0).slice(0, 12);
  expect(offered()).toBeNull();
});

/** The same list, counting every element that is read of it. */
function counted<T>(list: readonly T[]): { list: readonly T[]; reads: () => number } {
  let count = 0;
  const proxy = new Proxy(list, {
    get: (target, key, receiver) => {
      if (typeof key === 'string' && /^\d+$/.test(key)) count += 1;
      return Reflect.get(target, key, receiver);
    },
  });
  return { list: proxy, reads: () => count };
}

test('a name that ten thousand editions bear is judged by looking at a few of them', () => {
  const { editions } = factsOf(cleanCatalogue());
  const [edition] = editions;
  const rule = AUDIT_RULES.find(({ id }) => id === 'contributor-spelled-two-ways');
  if (!edition || !rule || !('by' in rule)) throw new Error('The rule goes by keys.');
  const spelled = ['Maren  Oskarsdal', 'Maren Oskarsdal', 'maren oskarsdal'].flatMap((name, at) =>
    Array.from({ length: 3_334 }, (_, n) => ({
      name,
      edition: { ...edition, id: n, place: at * 5_000 + n },
    })),
  );
  const { list, reads } = counted(spelled);
  const [found] = rule.judge(list, factsOf(cleanCatalogue()));
  expect(found?.message).toMatch(/^One name is written in 3 ways: 'Maren {2}Oskarsdal' .*'maren oskarsdal'/);
  expect(reads()).toBeLessThan(100);
});

test('entries come and go in their order, found by halving', () => {
  const compared = { times: 0 };
  const held = new Held<number>({
    entries: () => [],
    order: (a, b) => {
      compared.times += 1;
      return a - b;
    },
  });
  for (let n = 0; n < 4_096; n += 1) held.add('a', (n * 2_731) % 4_096);
  expect(held.of('a')).toEqual(Array.from({ length: 4_096 }, (_, n) => n));
  compared.times = 0;
  for (const gone of [17, 4_095, 0]) held.remove('a', gone);
  held.remove('a', 17);
  held.add('a', 16.5);
  expect(held.of('a').slice(14, 18)).toEqual([15, 16, 16.5, 18]);
  expect(held.of('a')).toHaveLength(4_094);
  expect(held.of('b')).toEqual([]);
  expect(compared.times).toBeLessThan(5 * 15);
});
