import type { ListingFields } from '../contract/listings.ts';
import { Refusal } from '../contract/refusal.ts';
import { formName } from '../contract/terms.ts';
import { changesOf } from '../rules/changes.ts';
import type { ReadDb } from '../store/connection.ts';
import { deleteListing, insertListing, listingById, writeListing } from '../store/listings.ts';
import type { Commands } from './context.ts';
import { needFormat } from './formats.ts';
import { moveListing } from './listing-steps.ts';

interface ChannelTerms {
  name: string;
  closedOn: string | null;
  discountBp: number | null;
  returns: ListingFields['returns'];
}

function needListing(db: ReadDb, id: number) {
  const stored = listingById(db, id);
  if (!stored) throw new Refusal('NOT_FOUND', `There is no listing ${id}.`, 'id');
  return stored;
}

/** Refuses to touch a listing of a format that is retired or cancelled. */
function refuseEndedFormat(
  db: ReadDb,
  listing: { formatId: number; standing: string },
  field: string | undefined,
): void {
  const format = needFormat(db, listing.formatId);
  if (listing.standing !== 'gone' && (format.standing === 'retired' || format.standing === 'cancelled'))
    throw new Refusal(
      'FIELD_LOCKED',
      `This ${formName(format).toLowerCase()} is ${format.standing}; its listings can be read for ever and changed never.`,
      field,
    );
}

export const listingCommands = {
  'listings.create': ({ db }, { formatId, channelId, ...fields }) => {
    const format = needFormat(db, formatId);
    const channel = db.one<ChannelTerms>(
      `SELECT name, closed_on AS closedOn, default_discount_bp AS discountBp, default_returns AS returns
       FROM channel WHERE id = ?`,
      channelId,
    );
    if (!channel) throw new Refusal('NOT_FOUND', `There is no channel ${channelId}.`, 'channelId');
    if (channel.closedOn)
      throw new Refusal(
        'STEP_REFUSED',
        `${channel.name} was closed on ${channel.closedOn}; it takes no new listing.`,
        'channelId',
      );
    if (format.standing === 'retired' || format.standing === 'cancelled')
      throw new Refusal(
        'STEP_REFUSED',
        `This ${formName(format).toLowerCase()} is ${format.standing}; it takes no new listing.`,
        'formatId',
      );
    if (db.one('SELECT 1 FROM listing WHERE format_id = ? AND channel_id = ?', formatId, channelId))
      throw new Refusal('ALREADY_EXISTS', `This format is already listed on ${channel.name}.`, 'channelId');
    const terms = {
      discountBp: fields.discountBp ?? channel.discountBp,
      returns: fields.returns ?? channel.returns,
      onSaleDate: fields.onSaleDate ?? format.onSaleDate,
      printCost: fields.printCost ?? null,
      reference: fields.reference ?? '',
      note: fields.note ?? '',
    };
    return { listingId: insertListing(db, formatId, channelId, terms) };
  },

  'listings.update': ({ db }, { id, ...wanted }) => {
    const stored = needListing(db, id);
    const { printCostMinor: amountMinor, printCostCurrency: currency } = stored;
    const printCost = amountMinor === null || currency === null ? null : { amountMinor, currency };
    const changes = changesOf<ListingFields>({ ...stored, printCost }, wanted as Partial<ListingFields>);
    const changed = Object.keys(changes);
    if (changed.length > 0) refuseEndedFormat(db, stored, changed[0]);
    if (stored.standing === 'gone' && changed.length > 0)
      throw new Refusal(
        'FIELD_LOCKED',
        'This listing is gone; it can be read for ever and changed never.',
        changed[0],
      );
    writeListing(db, id, changes);
    return { listingId: id, changed };
  },

  'listings.remove': ({ db }, { id }) => {
    const stored = needListing(db, id);
    if (stored.firstSentOn)
      throw new Refusal(
        'FIELD_LOCKED',
        `This listing was sent on ${stored.firstSentOn}, so it is kept for the record.`,
        'id',
      );
    if (db.one('SELECT 1 FROM task WHERE listing_id = ?', id))
      throw new Refusal('IN_USE', 'This listing is part of a plan, so it is kept for the record.', 'id');
    if (needFormat(db, stored.formatId).standing === 'retired') refuseEndedFormat(db, stored, 'id');
    deleteListing(db, id);
    return { listingId: id };
  },

  'listings.move': (context, input) => moveListing(context, input),
} satisfies Commands<'listings.create' | 'listings.update' | 'listings.remove' | 'listings.move'>;
