import { rangeTable } from '../rules/isbn/index.ts';
import type { ReadDb } from '../store/connection.ts';
import { storedRangeTable } from '../store/ranges.ts';
import type { Queries } from './context.ts';

/** The range table in use, as the contract shows it. */
export function rangeFacts(db: ReadDb) {
  const { source, serial, issued, date, groups } = rangeTable();
  return {
    source,
    serial,
    issued,
    date,
    groups: groups.length,
    loadedOn: storedRangeTable(db)?.loadedOn ?? null,
  };
}

export const rangeQueries = {
  'ranges.get': ({ db }) => rangeFacts(db),
} satisfies Queries<'ranges.get'>;
