import { type SQL, type SQLWrapper, sql } from 'drizzle-orm';

/**
 * Stands in SQL for a list of ids, which is bound as one JSON text (`listed`): one statement serves lists of every
 * length, and none is too long. SQLite binds at most 32,766 values to a statement.
 */
export const LISTED = '(SELECT value FROM json_each(?))';

/** A list of ids as it is bound to LISTED. */
export const listed = (ids: readonly (number | string)[]): string => JSON.stringify(ids);

/** `column IN` a list of ids of any length. */
export const isListed = (column: SQLWrapper, ids: readonly number[]): SQL =>
  sql`${column} IN (SELECT value FROM json_each(${listed(ids)}))`;
