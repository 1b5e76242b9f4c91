import type { CarriedEntry } from '../contract/changes.ts';

// Two people have worked on copies of one list. Field by field: what only one of them changed holds; what both made
// alike is there already; what both made differently is a conflict, which a person decides.

export type Row = Readonly<Record<string, string | number | null>>;
type Value = Row[string];

/** All that a copy has done to one row since it was copied. */
export interface NetChange {
  entity: string;
  /** Key of the row in the copy. */
  key: string;
  /** Seal of the entry by which the copy added the row; null where it was there when the copy was made. */
  addedBy: string | null;
  /** How the row stood in the copy, one after the other, before it stood as it does at last. */
  stood: Row[];
  /** The row as the copy left it; null where the copy removed it. */
  last: Row | null;
}

export const rowName = (entity: string, key: string) => `${entity} ${key}`;

/** The changes of a journal's entries, one a row, by `rowName`. */
export function netChanges(entries: readonly CarriedEntry[]): Map<string, NetChange> {
  const net = new Map<string, NetChange>();
  for (const { entity, key, hash, before, after } of entries) {
    const name = rowName(entity, key);
    const known = net.get(name);
    if (known) {
      if (known.last) known.stood.push(known.last);
      known.last = after;
    } else
      net.set(name, {
        entity,
        key,
        addedBy: before ? null : hash,
        stood: before ? [before] : [],
        last: after,
      });
  }
  return net;
}

export interface FieldConflict {
  field: string;
  before: Value;
  here: Value;
  there: Value;
}

/** How a row that both lists had compares: fields to take over, and fields that both changed otherwise. */
export interface FieldsJudged {
  take: string[];
  conflicts: FieldConflict[];
}

/**
 * Sets one row's changes against the row as it stands here. What stands here as it once stood in the copy was not
 * changed here since, or was taken over from the copy before: the copy's later value holds.
 */
export function judgeFields(stood: readonly Row[], last: Row, here: Row): FieldsJudged {
  const judged: FieldsJudged = { take: [], conflicts: [] };
  for (const field of Object.keys(last)) {
    const values = stood.map((row) => row[field] ?? null);
    const there = last[field] ?? null;
    const own = here[field] ?? null;
    if (own === there || values.every((value) => value === there)) continue;
    if (values.includes(own)) judged.take.push(field);
    else judged.conflicts.push({ field, before: values[0] ?? null, here: own, there });
  }
  return judged;
}

/** Whether a row stands as one of these rows does. */
export function standsAs(rows: readonly Row[], here: Row): boolean {
  return rows.some((row) =>
    Object.keys(row).every((field) => (row[field] ?? null) === (here[field] ?? null)),
  );
}

/** Rows that the copy itself took over from elsewhere, with the seal of the entry that first added them. */
export function originsIn(entries: readonly CarriedEntry[]): Map<string, string> {
  const origins = new Map<string, string>();
  for (const { entity, after } of entries)
    if (entity === 'merged_row' && after)
      origins.set(rowName(String(after.entity), String(after.row_key)), String(after.origin_hash));
  return origins;
}
