import type { ParsedInputOf } from '../contract/index.ts';
import type { PriceEffect } from '../contract/money.ts';
import { Refusal } from '../contract/refusal.ts';
import { formName } from '../contract/terms.ts';
import { editionLabel } from '../rules/labels.ts';
import {
  type ChangedListing,
  commonDay,
  priceEffectOf,
  priceNotes,
  tellOn,
  tellTask,
} from '../rules/price-change.ts';
import type { ReadDb } from '../store/connection.ts';
import { pricedListings } from '../store/costs.ts';
import { editionById } from '../store/editions.ts';
import { formatById, type StoredFormat } from '../store/formats.ts';
import { printCards } from '../store/print-cards.ts';
import { readSettings } from '../store/settings.ts';
import { calendarOf } from './plans.ts';

type Change = ParsedInputOf<'prices.preview'>;

/** The format and its new prices by currency. Throws what stands against them. */
function asked(db: ReadDb, { formatId, prices, from }: Change, today: string) {
  const format = formatById(db, formatId);
  if (!format) throw new Refusal('NOT_FOUND', `There is no format ${formatId}.`, 'formatId');
  const name = formName(format).toLowerCase();
  if (format.standing === 'retired' || format.standing === 'cancelled')
    throw new Refusal(
      'FIELD_LOCKED',
      `This ${name} is ${format.standing}; its prices can be read for ever and changed never.`,
      'prices',
    );
  if (from !== undefined && from < today)
    throw new Refusal('STEP_REFUSED', `${from} is past; a new price holds from today on or later.`, 'from');
  const wanted = new Map<string, number>();
  for (const { currency, amountMinor } of prices) {
    const now = format.prices.find((price) => price.currency === currency);
    if (!now)
      throw new Refusal(
        'STEP_REFUSED',
        `This ${name} has no price in ${currency} yet; add one where the format is edited.`,
        'prices',
      );
    if (wanted.has(currency))
      throw new Refusal('STEP_REFUSED', `There are two new prices in ${currency}; give one.`, 'prices');
    if (now.amountMinor !== amountMinor) wanted.set(currency, amountMinor);
  }
  if (wanted.size === 0)
    throw new Refusal('STEP_REFUSED', 'These are the prices it has; write another one.', 'prices');
  return { format, wanted };
}

/** 'The Salt Almanac, 2nd edition · Paperback' */
function nameOf(db: ReadDb, format: StoredFormat): string {
  const edition = editionById(db, format.editionId);
  return `${edition ? `${editionLabel(edition)} · ` : ''}${formName(format)}`;
}

/** Everything that a price change does: effects by listing and currency, the day, tasks and notes. */
export function priceChange(db: ReadDb, change: Change, today: string) {
  const { format, wanted } = asked(db, change, today);
  const calendar = calendarOf(db);
  const { lengthUnit } = readSettings(db);
  const terms = { cards: printCards(db), day: today, lengthUnit, calendar };
  const listings = new Map<number, { listing: ChangedListing; effects: PriceEffect[] }>();
  for (const listing of pricedListings(db, { formatId: format.id })) {
    const then = wanted.get(listing.currency);
    if (then === undefined) continue;
    const effect = priceEffectOf(listing, then, terms);
    const known = listings.get(listing.listingId);
    if (known) known.effects.push(effect);
    else listings.set(listing.listingId, { listing, effects: [effect] });
  }
  const rows = [...listings.values()].flatMap(({ effects }) => effects);
  const from = change.from ?? commonDay(rows, today);
  const what = nameOf(db, format);
  const tasks = [...listings.values()]
    .filter(({ effects }) => effects[0]?.way === 'ask')
    .map(({ listing, effects }) => ({
      listingId: listing.listingId,
      title: tellTask(what, effects),
      dueOn: tellOn(from, listing.leadDays, today, calendar),
    }));
  return { format, wanted, formatName: what, rows, from, tasks, notes: priceNotes(format.form, rows, from) };
}
