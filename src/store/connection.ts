import type Database from 'better-sqlite3';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import * as schema from './schema.ts';

type Orm = BetterSQLite3Database<typeof schema>;

/** A connection that can read. Queries take this type, so that they cannot write by accident. */
export interface ReadDb {
  readonly orm: Pick<Orm, 'select' | 'selectDistinct' | 'query' | 'all' | 'get'>;
  /** One row or undefined; the statement is prepared once and kept. */
  one<T>(sql: string, ...params: unknown[]): T | undefined;
  all<T>(sql: string, ...params: unknown[]): T[];
}

/** The one connection that can write, inside a command's transaction. */
export interface WriteDb extends ReadDb {
  readonly orm: Orm;
  run(sql: string, ...params: unknown[]): { changes: number; lastInsertRowid: number };
}

/** Statements of the query builder that are kept; those of lists of another length have another text. */
const KEPT = 250;

/**
 * A connection for the query builder, which prepares a statement anew for each run: each takes memory outside the heap,
 * which the collector does not know of, and an import of thousands of records would run into gigabytes. Here the
 * statements used last are kept by their text.
 */
function keeping(raw: Database.Database): Database.Database {
  const kept = new Map<string, Database.Statement>();
  const prepare = (sql: string): Database.Statement => {
    const statement = kept.get(sql) ?? raw.prepare(sql);
    kept.delete(sql);
    kept.set(sql, statement);
    const [oldest] = kept.keys();
    if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
    // The builder asks for rows as lists where it wants them so; whoever comes next begins with rows by name.
    return statement.reader ? statement.raw(false) : statement;
  };
  return Object.create(raw, { prepare: { value: prepare } });
}

/** Wraps a raw connection; prepared statements are cached by their text. */
export function wrap(raw: Database.Database): WriteDb {
  const cache = new Map<string, Prepared>();
  const prepared = (sql: string): Prepared => {
    const known = cache.get(sql);
    if (known) return known;
    const made = { statement: raw.prepare(sql), named: /\?\d/.test(sql) };
    cache.set(sql, made);
    return made;
  };
  return {
    orm: drizzle(keeping(raw), { schema }),
    one: <T>(sql: string, ...params: unknown[]) => {
      const { statement, named } = prepared(sql);
      return statement.get(...bound(named, params)) as T | undefined;
    },
    all: <T>(sql: string, ...params: unknown[]) => {
      const { statement, named } = prepared(sql);
      return statement.all(...bound(named, params)) as T[];
    },
    run: (sql, ...params) => {
      const { statement, named } = prepared(sql);
      const result = statement.run(...bound(named, params));
      return { changes: result.changes, lastInsertRowid: Number(result.lastInsertRowid) };
    },
  };
}

/** A statement, and whether its places bear numbers. */
interface Prepared {
  statement: Database.Statement;
  named: boolean;
}

/** better-sqlite3 binds `?1`, `?2` by name, plain `?` by place; both are written here as a list of values. */
function bound(named: boolean, params: unknown[]): unknown[] {
  if (!named) return params;
  return [Object.fromEntries(params.map((value, index) => [String(index + 1), value]))];
}
