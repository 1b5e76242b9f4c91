import { expect, test } from 'vitest';
import { type Column, sortRows } from '../../renderer/ui/table-sort.ts';

interface Row {
  title: string;
  pages: number | null;
}

const columns: Column<Row>[] = [
  { key: 'title', header: 'Title', cell: (row) => row.title, sortBy: (row) => row.title },
  { key: 'pages', header: 'Pages', cell: (row) => row.pages, sortBy: (row) => row.pages },
  { key: 'plain', header: 'Plain', cell: () => '' },
];
const rows: Row[] = [
  { title: 'Volume 10', pages: 90 },
  { title: 'volume 2', pages: null },
  { title: 'Éclair', pages: 120 },
];

const titles = (key: string, down: boolean) => sortRows(rows, columns, { key, down }).map((row) => row.title);

test('words are sorted as people read them: numbers by value, accents and capitals aside', () => {
  expect(titles('title', false)).toEqual(['Éclair', 'volume 2', 'Volume 10']);
  expect(titles('title', true)).toEqual(['Volume 10', 'volume 2', 'Éclair']);
});

test('missing values come last in both directions', () => {
  expect(titles('pages', false)).toEqual(['Volume 10', 'Éclair', 'volume 2']);
  expect(titles('pages', true)).toEqual(['Éclair', 'Volume 10', 'volume 2']);
});

test('a column that cannot be sorted leaves the order alone', () => {
  expect(titles('plain', true)).toEqual(rows.map((row) => row.title));
  expect(sortRows(rows, columns, undefined)).toBe(rows);
});
