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
  const cache = new Map<string, Prepared>();
  const prepared = (sql: string): Prepared => {
    const known = cache.get(sql);
    if (known) return known;
    const made = { statement: raw.prepare(sql), named: /\?\d/.test(sql) };
    cache.set(sql, made);
    return made;
  };
  return {
    orm: drizzle(raw, { schema }),
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
