import { asc, eq } from 'drizzle-orm';
import type { FormatFields } from '../contract/formats.ts';
import type { FormatStanding } from '../contract/terms.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { isListed, LISTED, listed } from './ids.ts';
import { deleteParts } from './onix-parts.ts';
import { columns, rows } from './rows.ts';
import { format, formatPrice } from './schema.ts';

type Stored = typeof format.$inferSelect;
export type StoredFormat = Stored &
  Pick<FormatFields, 'prices'> & {
    standing: FormatStanding;
    isbn13: string | null;
    numberSince: string | null;
  };

/** What a submission sheet tells of a format. */
export type SheetFormat = Omit<StoredFormat, 'standing' | 'numberSince'>;

interface Derived {
  id: number;
  standing: FormatStanding;
  isbn13: string | null;
  numberSince: string | null;
}

const FORMAT = columns(format);
const PRICE = columns(formatPrice, 'formatId', 'currency', 'amountMinor', 'tax');

/** The prices of some formats, by format. */
function pricesOf(db: ReadDb, ids: readonly number[]): Map<number, FormatFields['prices']> {
  const found = rows(
    db,
    PRICE,
    `FROM format_price WHERE format_id IN ${LISTED} ORDER BY currency`,
    listed(ids),
  );
  const prices = new Map<number, FormatFields['prices']>();
  for (const { formatId, ...price } of found) {
    const known = prices.get(formatId);
    if (known) known.push(price);
    else prices.set(formatId, [price]);
  }
  return prices;
}

/** Formats with prices, standing and number, in three queries however many there are. */
function whole(db: ReadDb, formats: Stored[]): StoredFormat[] {
  const ids = formats.map((row) => row.id);
  if (ids.length === 0) return [];
  const derived = new Map(
    db
      .all<Derived>(
        `SELECT s.format_id AS id, s.standing, n.isbn13, n.assigned_on AS numberSince
         FROM format_standing s LEFT JOIN number n ON n.format_id = s.format_id
           AND (n.spent_on IS NULL OR s.standing = 'cancelled')
         WHERE s.format_id IN ${LISTED} ORDER BY n.assigned_on`,
        listed(ids),
      )
      .map((row) => [row.id, row]),
  );
  const prices = pricesOf(db, ids);
  return formats.map((row) => ({
    ...row,
    prices: prices.get(row.id) ?? [],
    standing: derived.get(row.id)?.standing ?? 'planned',
    isbn13: derived.get(row.id)?.isbn13 ?? null,
    numberSince: derived.get(row.id)?.numberSince ?? null,
  }));
}

/** One format. */
export function formatById(db: ReadDb, id: number): StoredFormat | undefined {
  return whole(db, db.orm.select().from(format).where(eq(format.id, id)).all())[0];
}

/** Some formats, by id. */
export function formatsByIds(db: ReadDb, ids: number[]): Map<number, StoredFormat> {
  const formats = rows(db, FORMAT, `FROM format WHERE id IN ${LISTED}`, listed(ids));
  return new Map(whole(db, formats).map((row) => [row.id, row]));
}

/** Of some formats what a submission sheet tells, by id, in three queries. */
export function sheetFormats(db: ReadDb, ids: number[]): Map<number, SheetFormat> {
  const numbers = db.all<{ id: number; isbn13: string }>(
    `SELECT f.id, n.isbn13 FROM format f JOIN number n ON n.format_id = f.id
       AND (n.spent_on IS NULL OR f.cancelled_on IS NOT NULL)
     WHERE f.id IN ${LISTED} ORDER BY n.assigned_on`,
    listed(ids),
  );
  const isbns = new Map(numbers.map(({ id, isbn13 }) => [id, isbn13]));
  const prices = pricesOf(db, ids);
  const formats = rows(db, FORMAT, `FROM format WHERE id IN ${LISTED}`, listed(ids));
  return new Map(
    formats.map((row) => [
      row.id,
      { ...row, prices: prices.get(row.id) ?? [], isbn13: isbns.get(row.id) ?? null },
    ]),
  );
}

/** The formats of some editions, in the order they were made. */
export function formatsOfEditions(db: ReadDb, editionIds: number[]): StoredFormat[] {
  if (editionIds.length === 0) return [];
  return whole(
    db,
    db.orm.select().from(format).where(isListed(format.editionId, editionIds)).orderBy(asc(format.id)).all(),
  );
}

/** Writes the prices anew where they differ: one row a currency. */
function writePrices(db: WriteDb, id: number, prices: FormatFields['prices']): void {
  db.orm.delete(formatPrice).where(eq(formatPrice.formatId, id)).run();
  const rows = prices.map((price) => ({ formatId: id, ...price }));
  if (rows.length > 0) db.orm.insert(formatPrice).values(rows).run();
}

/** Adds a format with all its fields; answers its id. */
export function insertFormat(
  db: WriteDb,
  fields: FormatFields & { editionId: number; plannedOn: string },
): number {
  const { prices, ...columns } = fields;
  const id = Number(db.orm.insert(format).values(columns).run().lastInsertRowid);
  writePrices(db, id, prices);
  return id;
}

/** Writes the named fields of a format. */
export function writeFormat(db: WriteDb, id: number, fields: Partial<FormatFields>): void {
  const { prices, ...columns } = fields;
  if (Object.keys(columns).length > 0) db.orm.update(format).set(columns).where(eq(format.id, id)).run();
  if (prices !== undefined) writePrices(db, id, prices);
}

/** Marks a format cancelled; the database spends its number in the same breath. */
export function markCancelled(db: WriteDb, id: number, on: string, reason: string): void {
  db.orm.update(format).set({ cancelledOn: on, cancelReason: reason }).where(eq(format.id, id)).run();
}

/** Removes a format that never had a number, with its prices. */
export function deleteFormat(db: WriteDb, id: number): void {
  writePrices(db, id, []);
  deleteParts(db, id);
  db.orm.delete(format).where(eq(format.id, id)).run();
}
