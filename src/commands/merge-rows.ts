import type { CarriedEntry } from '../contract/changes.ts';
import { Refusal } from '../contract/refusal.ts';
import { addedRowName, recordName } from '../records/record-names.ts';
import { netChanges, type Row, rowName, standsAs } from '../rules/three-way.ts';
import {
  freeKey,
  insertRow,
  type MergeTable,
  mergeTables,
  noteMerged,
  removeRow,
  rowAt,
  tried,
  updateRow,
} from '../store/changes.ts';
import type { WriteDb } from '../store/connection.ts';
import { isConstraint, refusalOf } from '../store/sqlite-errors.ts';
import { MergeDecisions } from './merge-decisions.ts';
import { MergeKeys } from './merge-keys.ts';
import { type MergeQuestions, WHOLE_RECORD } from './merge-questions.ts';

/**
 * Takes the entries of a copy's journal over, one by one and in their order, so that every guard sees the steps as
 * they were taken. Rows the copy added get a key of their own here where theirs is taken.
 */
export class RowMerge {
  taken = 0;
  known = 0;
  left = 0;
  readonly #db: WriteDb;
  readonly #questions: MergeQuestions;
  readonly #tables: ReadonlyMap<string, MergeTable>;
  readonly #keys: MergeKeys;
  readonly #decisions: MergeDecisions;
  readonly #leftOut = new Set<string>();
  readonly #removed = new Set<string>();
  readonly #touched = new Map<string, CarriedEntry>();
  readonly #highest = new Map<string, number>();

  constructor(db: WriteDb, entries: readonly CarriedEntry[], questions: MergeQuestions) {
    this.#db = db;
    this.#questions = questions;
    this.#tables = mergeTables(db);
    const net = netChanges(entries);
    this.#keys = new MergeKeys(net);
    this.#decisions = new MergeDecisions(
      { db, tables: this.#tables, keys: this.#keys, questions },
      net,
      entries,
    );
    for (const { entity, key } of entries)
      this.#highest.set(entity, Math.max(this.#highest.get(entity) ?? 0, Number(key) || 0));
  }

  take(entry: CarriedEntry): void {
    const table = this.#tables.get(entry.entity);
    if (!table)
      throw new Refusal('BAD_INPUT', `This file tells of '${entry.entity}', which no list has.`, 'file');
    for (const field of Object.keys({ ...entry.before, ...entry.after }))
      if (!table.columns.includes(field))
        throw new Refusal(
          'BAD_INPUT',
          `This file tells of '${field}' of ${entry.entity}, which no list has.`,
          'file',
        );
    // Where the copy's own merges put rows is read beforehand.
    if (entry.entity === 'merged_row') this.known += 1;
    else if (this.#decisions.on(entry)?.settled) this.known += 1;
    else if (this.#isLeftOut(entry, table)) this.#leave(entry);
    else if (entry.action === 'added') this.#add(entry, table, entry.after ?? {});
    else if (entry.action === 'changed') this.#change(entry, table, entry.after ?? {});
    else this.#remove(entry, table);
  }

  /** What the records are called that were added or changed, each once, at most `most` of them. */
  touched(most: number): string[] {
    const names = new Set<string>();
    for (const { entity, key } of this.#touched.values()) {
      const table = this.#tables.get(entity);
      const rowKey = this.#keys.at(entity, key);
      const row = table && rowAt(this.#db, entity, table, rowKey);
      if (row) names.add(recordName(this.#db, { entity, rowKey, row }));
      if (names.size >= most) break;
    }
    return [...names];
  }

  #isLeftOut({ entity, key, after, before }: CarriedEntry, { refersTo }: MergeTable): boolean {
    if (this.#leftOut.has(rowName(entity, key))) return true;
    const row = after ?? before ?? {};
    return [...refersTo].some(([field, target]) => this.#leftOut.has(rowName(target, String(row[field]))));
  }

  #leave({ entity, key }: CarriedEntry): void {
    this.#leftOut.add(rowName(entity, key));
    this.left += 1;
  }

  #add(entry: CarriedEntry, table: MergeTable, after: Row): void {
    const { entity, key, hash } = entry;
    const name = rowName(entity, key);
    const there = this.#decisions.broughtBefore(entry);
    if (there !== undefined && !this.#removed.has(name)) {
      this.#keys.set(entity, key, there);
      this.known += 1;
      return;
    }
    const row = this.#keys.led(after, table);
    const here = rowAt(this.#db, entity, table, key);
    if (!table.counted && here) {
      this.#meet(entry, table, row, here);
      return;
    }
    const own = here ? String(freeKey(this.#db, entity, table, this.#highest.get(entity) ?? 0)) : key;
    this.#attempt(entry, () => {
      insertRow(this.#db, entity, table.counted ? { ...row, [table.key]: Number(own) } : row);
      if (there === undefined) noteMerged(this.#db, hash, entity, own);
    });
    // From here on the row stands as the copy had it, step by step.
    this.#decisions.forget(entry);
    if (!this.#leftOut.has(name)) this.#keys.set(entity, key, own);
  }

  /** Both have added the same thing under a key that is its name: a setting, a number. */
  #meet(entry: CarriedEntry, table: MergeTable, row: Row, here: Row): void {
    if (standsAs([row], here)) {
      this.known += 1;
      return;
    }
    const { entity, key } = entry;
    const about = recordName(this.#db, { entity, rowKey: key, row: here });
    const side = this.#questions.ask({
      id: rowName(entity, key),
      about,
      entity,
      ...WHOLE_RECORD,
      sentence: `${about}: both have recorded it, and not alike.`,
      sides: ['here', 'there'],
    });
    if (side !== 'there') this.#leave(entry);
    else this.#attempt(entry, () => updateRow(this.#db, entity, table, key, row));
  }

  #change(entry: CarriedEntry, table: MergeTable, after: Row): void {
    const { entity, key } = entry;
    const own = this.#keys.at(entity, key);
    const here = rowAt(this.#db, entity, table, own);
    if (!here) {
      this.#refused(entry, 'was removed here, and the copy has changed it');
      return;
    }
    const row = this.#keys.led(after, table);
    const before = this.#keys.led(entry.before ?? {}, table);
    const decided = this.#decisions.on(entry);
    const fields = Object.keys(row).filter(
      (field) =>
        row[field] !== before[field] &&
        row[field] !== here[field] &&
        (decided ? decided.take.has(field) : here[field] === before[field]),
    );
    if (fields.length === 0) {
      this.known += 1;
      return;
    }
    const values = Object.fromEntries(fields.map((field) => [field, row[field] ?? null]));
    this.#attempt(entry, () => updateRow(this.#db, entity, table, own, values));
  }

  #remove(entry: CarriedEntry, table: MergeTable): void {
    const { entity, key } = entry;
    const name = rowName(entity, key);
    const own = this.#keys.at(entity, key);
    const here = rowAt(this.#db, entity, table, own);
    if (!here) {
      this.known += 1;
      return;
    }
    if (this.#decisions.on(entry)?.untouched === false) {
      const about = recordName(this.#db, { entity, rowKey: key, row: here });
      const sentence = `${about}: the copy has removed it, and here it was changed.`;
      const side = this.#questions.ask({
        ...WHOLE_RECORD,
        entity,
        id: name,
        about,
        sentence,
        sides: ['here', 'there'],
      });
      if (side !== 'there') {
        this.#leave(entry);
        return;
      }
    }
    this.#attempt(entry, () => removeRow(this.#db, entity, table, own));
    this.#removed.add(name);
  }

  /** Carries one change out; where the rules of the list refuse it, it can only be left out. */
  #attempt(entry: CarriedEntry, change: () => void): void {
    try {
      tried(this.#db, change);
      this.taken += 1;
      if (entry.action !== 'removed') this.#touched.set(rowName(entry.entity, entry.key), entry);
    } catch (error) {
      const refusal = refusalOf(error);
      if (refusal instanceof Refusal && !REFUSED.has(refusal.code)) throw refusal;
      if (!(refusal instanceof Refusal) && !isConstraint(error)) throw error;
      const why = refusal instanceof Refusal ? refusal.message : 'it does not fit what stands here';
      this.#refused(entry, `cannot be taken over as the copy has it: ${why}`);
    }
  }

  #refused(entry: CarriedEntry, why: string): void {
    const { entity, key, after, before } = entry;
    const table = this.#tables.get(entity);
    const row = table ? this.#keys.led(after ?? before ?? {}, table) : {};
    const about =
      entry.action === 'added'
        ? addedRowName(this.#db, entity, row)
        : recordName(this.#db, { entity, rowKey: this.#keys.at(entity, key), row });
    this.#questions.ask({
      id: rowName(entity, key),
      about,
      entity,
      ...WHOLE_RECORD,
      sentence: `${about} ${why}`,
      sides: ['here'],
    });
    this.#leave(entry);
  }
}

/** What the guards of the list say no with. */
const REFUSED = new Set<string>([
  'FIELD_LOCKED',
  'STEP_REFUSED',
  'NUMBER_INVALID',
  'NUMBER_SPENT',
  'NUMBER_TAKEN',
  'NUMBER_OUTSIDE_BLOCKS',
  'BLOCK_OVERLAP',
  'ALREADY_EXISTS',
  'BAD_INPUT',
  'IN_USE',
  'NOT_FOUND',
  'NOT_READY',
]);
