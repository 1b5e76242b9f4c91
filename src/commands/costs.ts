import type { CostFields } from '../contract/costs.ts';
import { Refusal } from '../contract/refusal.ts';
import { changesOf } from '../rules/changes.ts';
import type { ReadDb } from '../store/connection.ts';
import { costById, deleteCost, endOfFormat, insertCost, type StoredCost, writeCost } from '../store/costs.ts';
import { listingById } from '../store/listings.ts';
import type { Commands } from './context.ts';
import { needFormat } from './formats.ts';

function needCost(db: ReadDb, id: number): StoredCost {
  const stored = costById(db, id);
  if (!stored) throw new Refusal('NOT_FOUND', `There is no cost ${id}.`, 'id');
  return stored;
}

/** Refuses a day to come, and for a format that has ended any day up to its end: that is history. */
export function refuseCostDay(on: string, today: string, endedOn: string | null): void {
  if (on > today)
    throw new Refusal('STEP_REFUSED', `${on} is still to come; record a cost when it is there.`, 'on');
  if (endedOn !== null && on <= endedOn)
    throw new Refusal(
      'FIELD_LOCKED',
      `This format ended on ${endedOn}; its costs up to then can be read for ever and changed never. Bills that came later can be recorded with their own day.`,
      'on',
    );
}

function refuseHistory({ onDate, endedOn }: StoredCost): void {
  if (endedOn !== null && onDate <= endedOn)
    throw new Refusal(
      'FIELD_LOCKED',
      `Its format ended on ${endedOn}; this cost can be read for ever and changed never.`,
      'id',
    );
}

export const costCommands = {
  'costs.add': ({ db, today }, { formatId, listingId, kind, amount, ...given }) => {
    needFormat(db, formatId);
    if (listingId !== undefined && listingById(db, listingId)?.formatId !== formatId)
      throw new Refusal('NOT_FOUND', `Listing ${listingId} is not one of this format.`, 'listingId');
    const on = given.on ?? today;
    refuseCostDay(on, today, endOfFormat(db, formatId));
    const place = { formatId, listingId: listingId ?? null, roundId: null };
    const fields = { kind, amount, on, voucher: given.voucher ?? '', note: given.note ?? '' };
    return { costId: insertCost(db, place, fields) };
  },

  'costs.update': ({ db, today }, { id, ...wanted }) => {
    const stored = needCost(db, id);
    const { amountMinor, currency, kind, voucher, onDate, note } = stored;
    const now: CostFields = { kind, amount: { amountMinor, currency }, voucher, on: onDate, note };
    const changes = changesOf(now, wanted as Partial<CostFields>);
    const changed = Object.keys(changes);
    if (changed.length === 0) return { costId: id, changed };
    refuseHistory(stored);
    refuseCostDay(changes.on ?? onDate, today, stored.endedOn);
    writeCost(db, id, changes);
    return { costId: id, changed };
  },

  'costs.remove': ({ db }, { id }) => {
    refuseHistory(needCost(db, id));
    deleteCost(db, id);
    return { costId: id };
  },
} satisfies Commands<'costs.add' | 'costs.update' | 'costs.remove'>;
