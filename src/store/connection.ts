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

/** Wraps a raw connection; prepared statements are cached by their text. */
export function wrap(raw: Database.Database): WriteDb {
  const cache = new Map<string, Database.Statement>();
  const prepared = (sql: string): Database.Statement => {
    const known = cache.get(sql);
    if (known) return known;
    const statement = raw.prepare(sql);
    cache.set(sql, statement);
    return statement;
  };
  return {
    orm: drizzle(raw, { schema }),
    one: <T>(sql: string, ...params: unknown[]) => prepared(sql).get(...bound(sql, params)) as T | undefined,
    all: <T>(sql: string, ...params: unknown[]) => prepared(sql).all(...bound(sql, params)) as T[],
    run: (sql, ...params) => {
      const result = prepared(sql).run(...bound(sql, params));
      return { changes: result.changes, lastInsertRowid: Number(result.lastInsertRowid) };
    },
  };
}

/** better-sqlite3 binds `?1`, `?2` by name, plain `?` by place; both are written here as a list of values. */
function bound(sql: string, params: unknown[]): unknown[] {
  if (!/\?\d/.test(sql)) return params;
  return [Object.fromEntries(params.map((value, index) => [String(index + 1), value]))];
}
