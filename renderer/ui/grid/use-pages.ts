import { useQueries } from '@tanstack/react-query';
import { useCallback, useRef, useState } from 'react';
import type { CallRefused } from '../../api.ts';

/** Rows that are read at once. */
const PAGE = 100;

export interface Page<Row> {
  rows: readonly Row[];
  /** How many there are in all. */
  total: number;
}

/** A list that is read a page at a time. */
export interface PagedList<Row> {
  /** Tells the list from every other, and its order; the first is the operation's name. */
  question: readonly unknown[];
  read: (from: number, count: number) => Promise<Page<Row>>;
}

/** The rows of a long list, read as they come into sight; `total` is undefined until the first answer. */
export function usePages<Row>({ question, read }: PagedList<Row>) {
  const [sight, setSight] = useState({ first: 0, last: 0 });
  const known = useRef<number>(undefined);
  const onSight = useCallback((first: number, last: number) => {
    const pages = { first: Math.floor(first / PAGE), last: Math.floor(last / PAGE) };
    setSight((now) => (now.first === pages.first && now.last === pages.last ? now : pages));
  }, []);
  const pages = Array.from({ length: sight.last - sight.first + 1 }, (_, at) => sight.first + at);
  const answers = useQueries({
    queries: pages.map((page) => ({
      queryKey: [...question, { page }],
      queryFn: () => read(page * PAGE, PAGE),
    })),
  });
  const total = answers.find((answer) => answer.data)?.data?.total;
  if (total !== undefined) known.current = total;
  const rowAt = (index: number): Row | undefined =>
    answers[Math.floor(index / PAGE) - sight.first]?.data?.rows[index % PAGE];
  const error = answers.find((answer) => answer.error)?.error as CallRefused | undefined;
  return { total: known.current, rowAt, onSight, error };
}

/** Any rows of the list by their places, read a thousand places at a time. */
export async function readPlaces<Row>(
  { read }: Pick<PagedList<Row>, 'read'>,
  places: readonly number[],
): Promise<Row[]> {
  const rows: Row[] = [];
  const sorted = [...places].sort((a, b) => a - b);
  for (let at = 0; at < sorted.length; ) {
    const from = sorted[at] ?? 0;
    const page = await read(from, 1000);
    for (; at < sorted.length && (sorted[at] ?? 0) < from + 1000; at += 1) {
      const row = page.rows[(sorted[at] ?? 0) - from];
      if (row !== undefined) rows.push(row);
    }
  }
  return rows;
}
