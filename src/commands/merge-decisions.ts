import type { CarriedEntry } from '../contract/changes.ts';
import { recordName } from '../records/record-names.ts';
import {
  type FieldConflict,
  judgeFields,
  type NetChange,
  originsIn,
  type Row,
  rowName,
  standsAs,
} from '../rules/three-way.ts';
import { cameFrom, type MergeTable, mergedAs, rowAt } from '../store/changes.ts';
import type { ReadDb } from '../store/connection.ts';
import type { MergeKeys } from './merge-keys.ts';
import type { MergeQuestions } from './merge-questions.ts';

/** What was decided on a row that both lists have, before anything was taken over. */
interface Decided {
  /** The row stands here as the copy left it. */
  settled: boolean;
  /** Fields to be taken over. */
  take: ReadonlySet<string>;
  /** The row stands here as it once stood in the copy. */
  untouched: boolean;
}

type Named = Pick<CarriedEntry, 'entity' | 'key'>;

interface Ground {
  db: ReadDb;
  tables: ReadonlyMap<string, MergeTable>;
  keys: MergeKeys;
  questions: MergeQuestions;
}

/** Sets the rows that both lists have against each other, and asks where both have changed the same field. */
export class MergeDecisions {
  readonly #ground: Ground;
  readonly #decided = new Map<string, Decided>();
  /** Seal of the entry by which a row that the copy itself took over was first added. */
  readonly #origins: ReadonlyMap<string, string>;

  constructor(ground: Ground, net: ReadonlyMap<string, NetChange>, entries: readonly CarriedEntry[]) {
    this.#ground = ground;
    this.#origins = originsIn(entries);
    // First where every row stands here, then what it says: rows refer to each other.
    for (const { entity, key, addedBy } of net.values()) {
      const own = addedBy === null ? undefined : this.broughtBefore({ entity, key, hash: addedBy });
      if (own !== undefined) ground.keys.set(entity, key, own);
    }
    for (const change of net.values()) this.#decide(change);
  }

  on({ entity, key }: Named): Decided | undefined {
    return this.#decided.get(rowName(entity, key));
  }

  /** From here on the row stands as the copy had it, step by step. */
  forget({ entity, key }: Named): void {
    this.#decided.delete(rowName(entity, key));
  }

  /** Where a row of the copy was put by an earlier merge, or first was where it comes from here. */
  broughtBefore({ entity, key, hash }: Named & { hash: string }): string | undefined {
    const { db } = this.#ground;
    const origin = this.#origins.get(rowName(entity, key));
    const first = origin === undefined ? undefined : (cameFrom(db, origin) ?? mergedAs(db, origin));
    return mergedAs(db, hash) ?? first;
  }

  #decide(change: NetChange): void {
    const { db, tables, keys } = this.#ground;
    const { entity, key, addedBy, stood, last } = change;
    const table = tables.get(entity);
    if (!table || (addedBy !== null && this.broughtBefore({ entity, key, hash: addedBy }) === undefined))
      return;
    const name = rowName(entity, key);
    const here = rowAt(db, entity, table, keys.at(entity, key));
    if (!here) {
      if (last === null) this.#decided.set(name, { settled: true, take: new Set(), untouched: true });
      return;
    }
    const marked = (row: Row) => keys.marked(row, table);
    const { take, conflicts } = last
      ? judgeFields(stood.map(marked), marked(last), here)
      : { take: [], conflicts: [] };
    const chosen = conflicts.filter((conflict) => this.#ask(change, here, conflict) === 'there');
    this.#decided.set(name, {
      settled: last !== null && conflicts.length === 0 && take.length === 0,
      take: new Set([...take, ...chosen.map(({ field }) => field)]),
      untouched: standsAs(
        stood.map((row) => keys.led(row, table)),
        here,
      ),
    });
  }

  #ask({ entity, key }: NetChange, here: Row, conflict: FieldConflict) {
    const { db, keys, questions } = this.#ground;
    const about = recordName(db, { entity, rowKey: keys.at(entity, key), row: here });
    return questions.ask({
      ...conflict,
      id: `${rowName(entity, key)} ${conflict.field}`,
      about,
      entity,
      sentence: `${about}: both have changed ${conflict.field.replaceAll('_', ' ')}.`,
      sides: ['here', 'there'],
    });
  }
}
