import { useQueries } from '@tanstack/react-query';
import { useCallback, useState } from 'react';
import type { FormatRow } from '../../../../src/contract/format-list.ts';
import { call } from '../../../api.ts';
import { useAsOf } from '../../../location.ts';
import { tsvHead, tsvLine } from '../../../ui/grid/tsv.ts';
import type { GridColumn } from '../../../ui/grid/types.ts';

const PAGE = 100;

/** Rows of a list of ids, read a hundred at a time as they come into sight. */
export function useRows(ids: readonly number[]) {
  const { asOf } = useAsOf();
  const [sight, setSight] = useState({ first: 0, last: 0 });
  const onSight = useCallback((first: number, last: number) => {
    const pages = { first: Math.floor(first / PAGE), last: Math.floor(last / PAGE) };
    setSight((now) => (now.first === pages.first && now.last === pages.last ? now : pages));
  }, []);
  const pages = Array.from({ length: sight.last - sight.first + 1 }, (_, at) => sight.first + at);
  const answers = useQueries({
    queries: pages.map((page) => {
      const wanted = ids.slice(page * PAGE, (page + 1) * PAGE);
      return {
        queryKey: ['formats.rows', { ids: wanted, asOf }],
        queryFn: () => call('formats.rows', { ids: wanted, asOf }),
        enabled: wanted.length > 0,
      };
    }),
  });
  const known = new Map(answers.flatMap((answer) => answer.data?.rows ?? []).map((row) => [row.id, row]));
  const rowAt = (index: number): FormatRow | undefined => known.get(ids[index] ?? -1);
  return { rowAt, onSight };
}

/** Lines of tab-separated cells for any rows, read as needed, with the heads above. */
export async function asTsv(
  ids: readonly number[],
  columns: readonly GridColumn<FormatRow>[],
  asOf: string | undefined,
): Promise<string> {
  const lines = [tsvHead(columns)];
  for (let from = 0; from < ids.length; from += 500) {
    const { rows } = await call('formats.rows', { ids: ids.slice(from, from + 500), asOf });
    for (const row of rows) lines.push(tsvLine(columns, row));
  }
  return lines.join('\n');
}
