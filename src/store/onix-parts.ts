import type { ReadDb, WriteDb } from './connection.ts';

/** A part of a message that is kept with a format, as stored. */
export interface StoredPart {
  place: 'Product' | 'DescriptiveDetail' | 'CollateralDetail' | 'PublishingDetail' | 'RelatedMaterial';
  name: string;
  key: string;
  bound: boolean;
  version: string;
  xml: string;
}

/** The kept parts of some formats, in their order, by format; empty in a catalogue that never took a message over. */
export function partsOfFormats(db: ReadDb, formatIds: readonly number[]): Map<number, StoredPart[]> {
  const rows = db.all<Omit<StoredPart, 'bound'> & { formatId: number; bound: number }>(
    `SELECT format_id AS formatId, place, name, key, bound, version, xml FROM onix_part
     WHERE format_id IN (SELECT value FROM json_each(?)) ORDER BY format_id, position`,
    JSON.stringify(formatIds),
  );
  const parts = new Map<number, StoredPart[]>();
  for (const { formatId, bound, ...row } of rows) {
    const list = parts.get(formatId) ?? [];
    list.push({ ...row, bound: bound === 1 });
    parts.set(formatId, list);
  }
  return parts;
}

/** Removes what is kept with a format. */
export function deleteParts(db: WriteDb, formatId: number): void {
  db.run('DELETE FROM onix_part WHERE format_id = ?', formatId);
}

const COLUMNS = ['place', 'name', 'key', 'bound', 'version', 'xml'] as const;

const isSame = (a: StoredPart, b: StoredPart | undefined) =>
  b !== undefined && COLUMNS.every((column) => a[column] === b[column]);

/** Puts these parts in the place of what was kept with a format; the same parts again write nothing. */
export function writeParts(db: WriteDb, formatId: number, parts: readonly StoredPart[]): void {
  const now = partsOfFormats(db, [formatId]).get(formatId) ?? [];
  if (parts.length === now.length && parts.every((part, index) => isSame(part, now[index]))) return;
  deleteParts(db, formatId);
  for (const [index, part] of parts.entries())
    db.run(
      `INSERT INTO onix_part (format_id, position, place, name, key, bound, version, xml)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
      formatId,
      index + 1,
      part.place,
      part.name,
      part.key,
      part.bound ? 1 : 0,
      part.version,
      part.xml,
    );
}
