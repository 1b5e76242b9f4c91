import type { InputOf } from '../../../src/contract/index.ts';
import { call } from '../../api.ts';
import { CSV_HEAD, csvRecords } from './csv.ts';
import { PAGE } from './words.ts';

/** Which numbers are meant: the filter of the table, without its page. */
export type NumberFilter = Pick<InputOf<'numbers.list'>, 'blockId' | 'standing' | 'asOf'>;

/**
 * Reads every number of a filter, a thousand at a time, as one CSV file; `onRead` is told how many of how many are
 * read. Answers undefined when `stopped` says so in between. Throws `CallRefused`.
 */
export async function numbersCsv(
  filter: NumberFilter,
  onRead: (read: number, of: number) => void,
  stopped: () => boolean,
): Promise<Blob | undefined> {
  const parts = [CSV_HEAD];
  for (let from = 0; ; from += PAGE) {
    const page = await call('numbers.list', { ...filter, from, count: PAGE });
    if (stopped()) return undefined;
    parts.push(csvRecords(page.rows));
    onRead(Math.min(from + PAGE, page.total), page.total);
    if (page.rows.length < PAGE || from + PAGE >= page.total) break;
  }
  return new Blob(parts, { type: 'text/csv;charset=utf-8' });
}
