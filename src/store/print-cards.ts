import { asc, eq } from 'drizzle-orm';
import type { CardFields, Quote } from '../contract/print-costs.ts';
import type { ReadDb, WriteDb } from './connection.ts';
import { printCard, printQuote } from './schema.ts';

/** A card as it is kept: null stands for any, where the table has '' or 0. */
export type StoredCard = CardFields & { id: number; channelId: number };

type Row = typeof printCard.$inferSelect;

function cardOf(row: Row, quotes: Quote[]): StoredCard {
  const { fixedParts, pageParts, trimWidthUm, trimHeightUm, ...rest } = row;
  const stated = fixedParts !== null && pageParts !== null;
  return {
    ...rest,
    form: row.form || null,
    caseKind: row.caseKind || null,
    interiorColour: row.interiorColour || null,
    trimWidthUm: trimWidthUm || null,
    trimHeightUm: trimHeightUm || null,
    validFrom: row.validFrom || null,
    price: stated ? { kind: 'stated', fixedParts, pageParts } : { kind: 'quotes', quotes },
  };
}

/** Every card with its quotes, in two queries; those of one channel lie together. */
export function printCards(db: ReadDb): StoredCard[] {
  const quotes = Map.groupBy(
    db.orm.select().from(printQuote).orderBy(asc(printQuote.pages), asc(printQuote.id)).all(),
    ({ cardId }) => cardId,
  );
  const rows = db.orm.select().from(printCard).orderBy(asc(printCard.channelId), asc(printCard.id)).all();
  return rows.map((row) =>
    cardOf(
      row,
      (quotes.get(row.id) ?? []).map(({ pages, amountMinor }) => ({ pages, amountMinor })),
    ),
  );
}

export function cardById(db: ReadDb, id: number): StoredCard | undefined {
  const row = db.orm.select().from(printCard).where(eq(printCard.id, id)).get();
  if (!row) return undefined;
  const quotes = db.orm
    .select({ pages: printQuote.pages, amountMinor: printQuote.amountMinor })
    .from(printQuote)
    .where(eq(printQuote.cardId, id))
    .orderBy(asc(printQuote.pages), asc(printQuote.id))
    .all();
  return cardOf(row, quotes);
}

function columnsOf({ price, ...fields }: CardFields): Omit<Row, 'id' | 'channelId'> {
  const { form, caseKind, interiorColour, trimWidthUm, trimHeightUm, validFrom } = fields;
  const stated = price.kind === 'stated';
  return {
    ...fields,
    form: form ?? '',
    caseKind: caseKind ?? '',
    interiorColour: interiorColour ?? '',
    trimWidthUm: trimWidthUm ?? 0,
    trimHeightUm: trimHeightUm ?? 0,
    validFrom: validFrom ?? '',
    fixedParts: stated ? price.fixedParts : null,
    pageParts: stated ? price.pageParts : null,
  };
}

function writeQuotes(db: WriteDb, cardId: number, { price, currency }: CardFields): void {
  const quotes = price.kind === 'quotes' ? price.quotes : [];
  if (quotes.length > 0)
    db.orm
      .insert(printQuote)
      .values(quotes.map((quote) => ({ cardId, currency, ...quote })))
      .run();
}

function dropQuotes(db: WriteDb, cardId: number): void {
  db.orm.delete(printQuote).where(eq(printQuote.cardId, cardId)).run();
}

/** Keeps a card; answers its id. */
export function insertCard(db: WriteDb, channelId: number, fields: CardFields): number {
  const values = { channelId, ...columnsOf(fields) };
  const id = Number(db.orm.insert(printCard).values(values).run().lastInsertRowid);
  writeQuotes(db, id, fields);
  return id;
}

/** Writes a card, and where asked its quotes anew. */
export function writeCard(db: WriteDb, id: number, fields: CardFields, quotesToo: boolean): void {
  if (quotesToo) dropQuotes(db, id);
  db.orm.update(printCard).set(columnsOf(fields)).where(eq(printCard.id, id)).run();
  if (quotesToo) writeQuotes(db, id, fields);
}

export function deleteCard(db: WriteDb, id: number): void {
  dropQuotes(db, id);
  db.orm.delete(printCard).where(eq(printCard.id, id)).run();
}

/** Removes the cards of a channel that goes itself. */
export function forgetCards(db: WriteDb, channelId: number): void {
  const ids = db.all<{ id: number }>('SELECT id FROM print_card WHERE channel_id = ?', channelId);
  for (const { id } of ids) deleteCard(db, id);
}
