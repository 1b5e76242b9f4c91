import { describe, expect, it } from 'vitest';
import { Grouping } from '../../src/exchange/sheets/group.ts';
import type { KnownWork } from '../../src/exchange/sheets/plan.ts';
import type { ReadRow } from '../../src/exchange/sheets/read-row.ts';

const row = (number: number, said: Partial<ReadRow> = {}): ReadRow => ({
  number,
  work: '',
  edition: { title: 'The Salt Almanac' },
  format: { form: 'BC' },
  isbn13: null,
  listings: [],
  problems: [],
  ...said,
});
const by = (name: string) => ({
  title: 'The Salt Almanac',
  contributors: [{ role: 'A01', name }],
});

function grouped(rows: readonly ReadRow[], known: readonly KnownWork[] = []): Grouping {
  const grouping = new Grouping(known);
  for (const one of rows) grouping.add(one);
  return grouping;
}

/** Lists of one title: each row its own author, its own statement, its own number, or nothing to tell it apart. */
const LISTS: [string, (at: number) => Partial<ReadRow>][] = [
  ['an author each', (at) => ({ edition: by(`Person ${at}`) })],
  [
    'an author each, of one named work',
    (at) => ({ work: 'Salt', edition: { ...by(`Person ${at}`), number: at } }),
  ],
  ['a statement each', (at) => ({ edition: { ...by('Maren Oskarsdal'), statement: `printing ${at}` } })],
  ['nothing to tell them apart', () => ({})],
];

const shelf = (formats: number): KnownWork[] => [
  {
    id: 1,
    title: 'The Salt Almanac',
    people: [],
    editions: [
      {
        id: 1,
        number: null,
        statement: '',
        title: 'The Salt Almanac',
        formats: Array.from({ length: formats }, (_, at) => ({
          id: at + 1,
          isbn13: null,
          form: 'BC',
          formDetail: null,
          caseKind: null,
          largePrint: false,
        })),
      },
    ],
  },
];

/** Least processor time of two runs, in milliseconds. */
function least(work: () => unknown): number {
  const times = [1, 2].map(() => {
    const begun = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(begun);
    return (user + system) / 1000;
  });
  return Math.min(...times);
}

describe('rows of one title', () => {
  it.each(LISTS)('with %s are grouped in a time that grows with their number', (_, said) => {
    const list = (count: number) => Array.from({ length: count }, (_row, at) => row(at + 2, said(at)));
    const [few, many] = [list(2_000), list(32_000)];
    grouped(few);
    const growth =
      least(() => grouped(many)) /
      Math.max(
        least(() => grouped(few)),
        1,
      );
    // Sixteen times the rows; looking through all of them for each row would take 256 times as long.
    expect(growth).toBeLessThan(90);
  });

  it('find the formats of a large edition in turn, in a time that grows with their number', () => {
    const list = (count: number) => Array.from({ length: count }, (_, at) => row(at + 2));
    const run = (count: number) => grouped(list(count), shelf(count));
    expect(run(500).works[0]?.editions[0]?.rows.map(({ formatId }) => formatId)).toEqual(
      Array.from({ length: 500 }, (_, at) => at + 1),
    );
    expect(
      least(() => run(32_000)) /
        Math.max(
          least(() => run(2_000)),
          1,
        ),
    ).toBeLessThan(90);
  });

  it('join the work of their author, and no work where two may be meant', () => {
    const { works, misplaced } = grouped([
      row(2, { edition: by('Maren Oskarsdal') }),
      row(3, { edition: by('Maren Oskarsdal'), format: { form: 'BB' } }),
      row(4, { edition: by('Ilse Quayle') }),
      row(5),
      row(6, { work: 'the salt almanac', edition: {} }),
    ]);
    expect(
      works.map(({ editions }) => editions.map(({ rows }) => rows.map((one) => one.row.number))),
    ).toEqual([[[2, 3]], [[4]]]);
    expect(misplaced.map(({ row: { number }, message }) => [number, message])).toEqual([
      [5, '2 works are called The Salt Almanac; say which by its ISBN or contributors.'],
      [6, '2 works are called the salt almanac; say which by its ISBN or contributors.'],
    ]);
  });

  it('find an edition by the number or statement that an earlier row gave it', () => {
    const { works, misplaced } = grouped([
      row(2, { edition: { title: 'The Salt Almanac', statement: 'second printing' } }),
      row(3, { edition: { title: 'The Salt Almanac', number: 2 } }),
      row(4, {
        edition: { title: 'The Salt Almanac', statement: 'second printing' },
        format: { form: 'BB' },
      }),
      row(5, { edition: { title: 'The Salt Almanac', number: 1 }, format: { form: 'ED' } }),
      row(6, { edition: { title: 'The Salt Almanac' }, format: { form: 'AJ' } }),
    ]);
    expect(works[0]?.editions.map(({ rows }) => rows.map((one) => one.row.number))).toEqual([[2, 4, 5], [3]]);
    expect(misplaced.map(({ message }) => message)).toEqual([
      'The Salt Almanac has 2 editions that fit; say which in a column for the edition number.',
    ]);
  });
});
