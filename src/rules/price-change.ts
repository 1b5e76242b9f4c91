import type { PriceEffect } from '../contract/money.ts';
import { madeOf } from '../contract/terms.ts';
import { compensation } from './compensation.ts';
import { costWithName, type MoneyListing, type MoneyTerms, soldAs } from './listing-money.ts';
import { majorUnits } from './money.ts';
import { type WorkCalendar, workingDayFrom, workingDaysAfter, workingDaysBefore } from './working-days.ts';

export interface ChangedListing extends MoneyListing {
  leadDays: number;
}

type Terms = Pick<MoneyTerms, 'cards' | 'day' | 'lengthUnit'> & { calendar: WorkCalendar };

const DAY_MS = 86_400_000;
const daysBetween = (from: string, to: string) => Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

function wayOf(standing: MoneyListing['standing']): PriceEffect['way'] {
  if (standing === 'unsent') return 'with the sheet';
  return standing === 'leaving' || standing === 'gone' ? 'over' : 'ask';
}

/** What another list price does on one listing: what is kept now and then, and from when the channel can have it. */
export function priceEffectOf(listing: ChangedListing, listThenMinor: number, terms: Terms): PriceEffect {
  const printCost = costWithName(listing, terms);
  const kept = (listMinor: number) => {
    const sold = soldAs({ ...listing, listMinor }, printCost);
    return sold === null ? null : compensation(sold);
  };
  const then = kept(listThenMinor);
  const way = wayOf(listing.standing);
  const earliestOn = way === 'ask' ? workingDaysAfter(terms.calendar, terms.day, listing.leadDays) : null;
  return {
    listingId: listing.listingId,
    channelName: listing.channelName,
    standing: listing.standing,
    currency: listing.currency,
    listNowMinor: listing.listMinor,
    listThenMinor,
    keptNowMinor: kept(listing.listMinor)?.keptMinor ?? null,
    keptThenMinor: then?.keptMinor ?? null,
    printCost,
    belowCost: then !== null ? then.exact < 0n : printCost.minor !== null && listThenMinor < printCost.minor,
    way,
    earliestOn,
    days: earliestOn === null ? null : daysBetween(terms.day, earliestOn),
  };
}

/** The first day that every channel which is asked can keep: one day for all of them (common practice, no source). */
export function commonDay(effects: readonly PriceEffect[], day: string): string {
  return effects.reduce(
    (latest, { earliestOn }) => (earliestOn && earliestOn > latest ? earliestOn : latest),
    day,
  );
}

/** When a channel has to be told, so that it can keep a day: its lead time before it, and not before today. */
export function tellOn(from: string, leadDays: number, today: string, calendar: WorkCalendar): string {
  const due = workingDaysBefore(calendar, from, leadDays);
  return due > today ? due : workingDayFrom(calendar, today);
}

/** 'Give Printworks Direct the new price of The Salt Almanac · Paperback: GBP 9.99 → GBP 10.99' */
export function tellTask(what: string, effects: readonly PriceEffect[]): string {
  const told = (minor: number, currency: string) => `${currency} ${majorUnits(minor, currency)}`;
  const changes = effects.map(
    ({ currency, listNowMinor, listThenMinor }) =>
      `${told(listNowMinor, currency)} → ${told(listThenMinor, currency)}`,
  );
  return `Give ${effects[0]?.channelName ?? ''} the new price of ${what}: ${changes.join(', ')}`;
}

/** What else a new price asks for, one sentence each. */
export function priceNotes(form: string, effects: readonly PriceEffect[], from: string): string[] {
  const notes: string[] = [];
  const losing = effects.filter(({ belowCost, way }) => belowCost && way !== 'over');
  if (losing.length > 0)
    notes.push(
      `A copy would be sold at a loss on ${[...new Set(losing.map(({ channelName }) => channelName))].join(', ')}.`,
    );
  const late = effects.filter(({ earliestOn }) => earliestOn !== null && earliestOn > from);
  if (late.length > 0)
    notes.push(
      `${[...new Set(late.map(({ channelName }) => channelName))].join(', ')} cannot have it by ${from}, by the lead time that is recorded.`,
    );
  if (madeOf(form) === 'print')
    notes.push(
      'A price on the cover or in the bar code’s add-on has to follow; that takes a new cover file.',
    );
  if (effects.some(({ way }) => way === 'with the sheet'))
    notes.push('Listings that were not sent yet take the new price along with their sheet.');
  return notes;
}
