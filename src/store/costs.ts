import { eq } from 'drizzle-orm';
import type { CostFields } from '../contract/costs.ts';
import type { ListingStanding } from '../contract/terms.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { cost } from './schema.ts';

export type StoredCost = typeof cost.$inferSelect & { endedOn: string | null };

const COLUMNS = `c.id, c.format_id AS formatId, c.listing_id AS listingId, c.round_id AS roundId, c.kind,
  c.amount_minor AS amountMinor, c.currency, c.voucher, c.on_date AS onDate, c.note, e.ended_on AS endedOn`;

/** What an edition has cost up to a day, in the order of the days; with the day on which the format ended. */
export function costsOfEdition(db: ReadDb, editionId: number, day: string): StoredCost[] {
  return db.all<StoredCost>(
    `SELECT ${COLUMNS} FROM format f JOIN cost c ON c.format_id = f.id LEFT JOIN format_end e ON e.format_id = f.id
     WHERE f.edition_id = ? AND c.on_date <= ? ORDER BY c.on_date, c.id`,
    editionId,
    day,
  );
}

export function costById(db: ReadDb, id: number): StoredCost | undefined {
  return db.one<StoredCost>(
    `SELECT ${COLUMNS} FROM cost c LEFT JOIN format_end e ON e.format_id = c.format_id WHERE c.id = ?`,
    id,
  );
}

/** The day on which a format ended; null while it has not. */
export function endOfFormat(db: ReadDb, formatId: number): string | null {
  return (
    db.one<{ on: string }>('SELECT ended_on AS "on" FROM format_end WHERE format_id = ?', formatId)?.on ??
    null
  );
}

function columnsOf({ amount, on, ...plain }: Partial<CostFields>): Partial<typeof cost.$inferInsert> {
  return {
    ...plain,
    ...(amount === undefined ? {} : { amountMinor: amount.amountMinor, currency: amount.currency }),
    ...(on === undefined ? {} : { onDate: on }),
  };
}

/** Records a cost; answers its id. */
export function insertCost(
  db: WriteDb,
  place: { formatId: number; listingId: number | null; roundId: number | null },
  { kind, amount, on, voucher, note }: CostFields,
): number {
  const values = { ...place, kind, ...amount, onDate: on, voucher, note };
  return Number(db.orm.insert(cost).values(values).run().lastInsertRowid);
}

export function writeCost(db: WriteDb, id: number, fields: Partial<CostFields>): void {
  db.orm.update(cost).set(columnsOf(fields)).where(eq(cost.id, id)).run();
}

export function deleteCost(db: WriteDb, id: number): void {
  db.orm.delete(cost).where(eq(cost.id, id)).run();
}

/** A listing with what decides about the earnings of a copy, at one of its prices. */
export interface PricedRow {
  listingId: number;
  formatId: number;
  form: string;
  formDetail: string | null;
  caseKind: string | null;
  largePrint: boolean;
  interiorColour: string | null;
  trimWidthUm: number | null;
  trimHeightUm: number | null;
  pages: number | null;
  channelId: number;
  channelName: string;
  leadDays: number;
  standing: ListingStanding;
  discountBp: number | null;
  returns: 'Y' | 'N' | 'C' | 'S' | null;
  printCostMinor: number | null;
  printCostCurrency: string | null;
  currency: string;
  listMinor: number;
  tax: 'including' | 'excluding';
}

/** The listings of an edition, or of one format of it, one row a price; cancelled formats earn nothing. */
export function pricedListings(db: ReadDb, of: { editionId: number } | { formatId: number }): PricedRow[] {
  const [column, id] = 'editionId' in of ? ['edition_id', of.editionId] : ['id', of.formatId];
  const rows = db.all<Omit<PricedRow, 'largePrint'> & { largePrint: number }>(
    `SELECT l.id AS listingId, f.id AS formatId, f.form, f.form_detail AS formDetail, f.case_kind AS caseKind,
       f.large_print AS largePrint, f.interior_colour AS interiorColour, f.trim_width_um AS trimWidthUm,
       f.trim_height_um AS trimHeightUm, f.pages, c.id AS channelId, c.name AS channelName,
       c.lead_days AS leadDays, l.standing, l.discount_bp AS discountBp, l.returns,
       l.print_cost_minor AS printCostMinor, l.print_cost_currency AS printCostCurrency,
       p.currency, p.amount_minor AS listMinor, p.tax
     FROM format f JOIN listing l ON l.format_id = f.id JOIN channel c ON c.id = l.channel_id
     JOIN format_price p ON p.format_id = f.id
     WHERE f.${column} = ? AND f.cancelled_on IS NULL ORDER BY f.id, c.name, p.currency`,
    id,
  );
  return rows.map((row) => ({ ...row, largePrint: row.largePrint === 1 }));
}
