import { eq } from 'drizzle-orm';
import type { Listing, ListingFields } from '../contract/listings.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { LISTED, listed } from './ids.ts';
import { listing } from './schema.ts';

type Columns = typeof listing.$inferSelect;
export type StoredListing = Columns & { channelName: string; steps: Listing['steps'] };

interface Step {
  listingId: number;
  from: Listing['standing'];
  to: Listing['standing'];
  on: string;
  note: string;
}

/** The listings of some formats with channel names and recorded steps, in two queries. */
export function listingsOfFormats(db: ReadDb, formatIds: number[]): StoredListing[] {
  if (formatIds.length === 0) return [];
  const rows = db.all<Omit<StoredListing, 'steps'>>(
    `SELECT l.id, l.format_id AS formatId, l.channel_id AS channelId, l.standing, l.discount_bp AS discountBp, l.returns,
       l.print_cost_minor AS printCostMinor, l.print_cost_currency AS printCostCurrency, l.on_sale_date AS onSaleDate,
       l.reference, l.note, l.first_sent_on AS firstSentOn, l.first_cleared_on AS firstClearedOn,
       l.last_step_on AS lastStepOn, c.name AS channelName
     FROM listing l JOIN channel c ON c.id = l.channel_id
     WHERE l.format_id IN ${LISTED} ORDER BY l.format_id, c.name`,
    listed(formatIds),
  );
  const steps = new Map<number, Step[]>();
  for (const step of db.all<Step>(
    `SELECT s.listing_id AS listingId, s.from_standing AS "from", s.to_standing AS "to", s.on_date AS "on", s.note
     FROM listing_step s JOIN listing l ON l.id = s.listing_id
     WHERE l.format_id IN ${LISTED} ORDER BY s.id`,
    listed(formatIds),
  )) {
    const list = steps.get(step.listingId);
    if (list) list.push(step);
    else steps.set(step.listingId, [step]);
  }
  return rows.map((row) => ({
    ...row,
    steps: (steps.get(row.id) ?? []).map(({ from, to, on, note }) => ({ from, to, on, note })),
  }));
}

/** One listing as stored. */
export function listingById(db: ReadDb, id: number): Columns | undefined {
  return db.orm.select().from(listing).where(eq(listing.id, id)).get();
}

/** Listing fields of the contract as columns; money is split into amount and currency. */
function columnsOf(fields: Partial<ListingFields>): Partial<typeof listing.$inferInsert> {
  const { printCost, ...plain } = fields;
  if (printCost === undefined) return plain;
  return {
    ...plain,
    printCostMinor: printCost?.amountMinor ?? null,
    printCostCurrency: printCost?.currency ?? null,
  };
}

/** Lists a format on a channel, unsent; answers the listing's id. */
export function insertListing(
  db: WriteDb,
  formatId: number,
  channelId: number,
  fields: Partial<ListingFields>,
): number {
  return Number(
    db.orm
      .insert(listing)
      .values({ ...columnsOf(fields), formatId, channelId })
      .run().lastInsertRowid,
  );
}

/** Writes the named fields of a listing. */
export function writeListing(db: WriteDb, id: number, fields: Partial<ListingFields>): void {
  const columns = columnsOf(fields);
  if (Object.keys(columns).length > 0) db.orm.update(listing).set(columns).where(eq(listing.id, id)).run();
}

/** Removes a listing that was never sent. */
export function deleteListing(db: WriteDb, id: number): void {
  db.orm.delete(listing).where(eq(listing.id, id)).run();
}
