import type { ReportFindingKind } from '../contract/reports.ts';
import type { ListingStanding } from '../contract/terms.ts';
import { majorUnits } from './money.ts';
import { sameTitle } from './same-title.ts';

// A channel's own report set against the record. Which differences matter is common practice, no source.

/** A row of a report as it was understood; cells that are not there are null or ''. */
export interface ReportRow {
  isbn13: string | null;
  /** The channel's own number for the listing. */
  reference: string;
  title: string;
  prices: readonly { currency: string; amountMinor: number }[];
  onSaleDate: string | null;
  /** Whether it is sold there; null where the report lists it and says no more. */
  selling: boolean | null;
}

/** What is on record of a format, or of a number without one, as far as the channel is concerned. */
export interface RecordedItem {
  formatId: number | null;
  isbn13: string | null;
  /** 'The Salt Almanac, 1st edition · Paperback' */
  name: string;
  /** Its listing on the channel; null where it is not listed there. */
  listing: { standing: ListingStanding; reference: string; goneBy: string | null } | null;
  /** Why it should be sold nowhere. */
  ended: 'retired' | 'cancelled' | 'a spent number' | null;
  title: string;
  subtitle: string;
  prices: readonly { currency: string; amountMinor: number; tax: 'including' | 'excluding' }[];
  onSaleDate: string | null;
}

export interface Difference {
  kind: ReportFindingKind;
  formatId: number | null;
  isbn13: string | null;
  reference: string;
  /** Of a price; null otherwise. */
  currency: string | null;
  name: string;
  there: string;
  here: string;
}

export interface Report {
  rows: readonly ReportRow[];
  /** The day it tells of, YYYY-MM-DD. */
  day: string;
  /** Whether it lists everything the channel has. */
  complete: boolean;
}

type Told = Pick<Difference, 'kind' | 'there' | 'here'> & { currency?: string };

const NOT_RECORDED = 'none recorded';
const referenceKey = (reference: string) => reference.trim().toLowerCase();

/** What names a difference's item from one report to the next: its number, else its format, else the reference. */
export function differenceKey({
  kind,
  isbn13,
  formatId,
  reference,
  currency,
}: Pick<Difference, 'kind' | 'isbn13' | 'formatId' | 'reference' | 'currency'>): string {
  const item = isbn13 ?? (formatId === null ? `reference ${referenceKey(reference)}` : `format ${formatId}`);
  return `${kind} ${item} ${currency ?? ''}`;
}

/** Whether an item is sold, or listed, where it should not be; null where nothing is wrong with that. */
function presence(item: RecordedItem, rows: readonly ReportRow[], day: string): Told | null {
  const standing = item.listing?.standing;
  const surely = rows.some(({ selling }) => selling === true);
  const there = surely ? 'on sale' : 'listed';
  if (rows.every(({ selling }) => selling === false))
    return standing === 'selling' ? { kind: 'only here', there: 'not on sale', here: 'selling' } : null;
  if (item.ended !== null) return { kind: 'still selling', there, here: item.ended };
  if (standing === 'gone') return { kind: 'still selling', there, here: 'gone' };
  const goneBy = item.listing?.goneBy ?? null;
  if (standing === 'leaving')
    return goneBy !== null && goneBy < day
      ? { kind: 'still selling', there, here: `leaving, to be gone by ${goneBy}` }
      : null;
  if (standing === undefined) {
    const here = item.formatId === null ? 'a number that no format has' : 'not listed on this channel';
    return { kind: 'only there', there, here };
  }
  if (standing === 'unsent' || (surely && standing !== 'selling'))
    return { kind: 'only there', there, here: standing };
  return null;
}

const written = (amountMinor: number, currency: string) => `${majorUnits(amountMinor, currency)} ${currency}`;

function priceDifferences(item: RecordedItem, row: ReportRow): Told[] {
  return row.prices.flatMap(({ currency, amountMinor }) => {
    const here = item.prices.find((price) => price.currency === currency);
    if (here?.amountMinor === amountMinor) return [];
    const recorded = here
      ? `${written(here.amountMinor, currency)}${here.tax === 'excluding' ? ' before tax' : ''}`
      : NOT_RECORDED;
    return [{ kind: 'price', currency, there: written(amountMinor, currency), here: recorded } as const];
  });
}

/** Price, date and title of a listed item; an empty cell says nothing. */
function detailDifferences(item: RecordedItem, row: ReportRow): Told[] {
  const told = priceDifferences(item, row);
  if (row.onSaleDate !== null && row.onSaleDate !== item.onSaleDate)
    told.push({ kind: 'on-sale date', there: row.onSaleDate, here: item.onSaleDate ?? NOT_RECORDED });
  if (row.title !== '' && !sameTitle(row.title, item))
    told.push({ kind: 'title', there: row.title, here: item.title });
  return told;
}

/**
 * Whether a report says anything on a difference of an earlier one, so that its silence mends it: it lists the item
 * with such a cell filled, or it is complete and does not list it at all.
 */
export function tellsOf({
  rows,
  complete,
}: Report): (of: Pick<Difference, 'kind' | 'isbn13' | 'reference' | 'currency'>) => boolean {
  const byIsbn = Map.groupBy(rows, ({ isbn13 }) => isbn13 ?? '');
  const byReference = Map.groupBy(rows, ({ reference }) => referenceKey(reference));
  return ({ kind, isbn13, reference, currency }) => {
    const named = referenceKey(reference);
    const found = byIsbn.get(isbn13 ?? '?') ?? byReference.get(named === '' ? '?' : named) ?? [];
    if (found.length === 0) return complete;
    if (kind === 'price') return found.some(({ prices }) => prices.some((one) => one.currency === currency));
    if (kind === 'on-sale date') return found.some(({ onSaleDate }) => onSaleDate !== null);
    return kind !== 'title' || found.some(({ title }) => title !== '');
  };
}

const leavesSoon = (item: RecordedItem) => item.listing?.standing === 'leaving';

function ofItem(item: RecordedItem, rows: readonly ReportRow[], day: string): Difference[] {
  const { formatId, isbn13, name } = item;
  const reference = item.listing?.reference || (rows[0]?.reference ?? '');
  const place = (told: Told): Difference => ({
    formatId,
    isbn13,
    reference,
    name,
    ...told,
    currency: told.currency ?? null,
  });
  const where = presence(item, rows, day);
  if (where !== null) return [place(where)];
  if (item.listing === null || leavesSoon(item)) return [];
  const sold = rows.filter(({ selling }) => selling !== false);
  const all = sold.flatMap((row) => detailDifferences(item, row)).map(place);
  return [...new Map(all.toReversed().map((one) => [differenceKey(one), one])).values()].reverse();
}

/** What the report lists and nothing here is known of, once for each number or reference. */
function unknown(rows: readonly ReportRow[]): Difference[] {
  const listed = rows.filter(({ selling }) => selling !== false);
  const all = listed.map(({ isbn13, reference, title, selling }): Difference => {
    const there = selling === true ? 'on sale' : 'listed';
    const here = 'not in the catalogue';
    const of = { formatId: null, isbn13, reference, currency: null, name: title };
    return { kind: 'only there', ...of, there, here };
  });
  return [...new Map(all.toReversed().map((one) => [differenceKey(one), one])).values()].reverse();
}

/**
 * Where a report and the record differ, each difference once: an item that is listed where it should not be, or not
 * where it should, gives that alone; otherwise its prices, date and title are compared. Rows are told apart by their
 * number, else by the channel's reference. A format that leaves within the time the channel takes is no difference.
 */
export function differences({ rows, day, complete }: Report, record: readonly RecordedItem[]): Difference[] {
  const byIsbn = new Map(record.flatMap((item) => (item.isbn13 === null ? [] : [[item.isbn13, item]])));
  const byReference = new Map(
    record.flatMap((item) => {
      const key = referenceKey(item.listing?.reference ?? '');
      return key === '' ? [] : [[key, item]];
    }),
  );
  const itemOf = ({ isbn13, reference }: ReportRow) => {
    if (isbn13 !== null && byIsbn.has(isbn13)) return byIsbn.get(isbn13);
    const referred = byReference.get(referenceKey(reference));
    return isbn13 === null || referred?.isbn13 === null ? referred : undefined;
  };
  const listed = Map.groupBy(rows, itemOf);
  const missing = record.filter(
    (item) => complete && item.listing?.standing === 'selling' && !listed.has(item),
  );
  return [
    ...record.flatMap((item) => {
      const own = listed.get(item);
      return own ? ofItem(item, own, day) : [];
    }),
    ...missing.map(
      ({ formatId, isbn13, name, listing }): Difference => ({
        kind: 'only here',
        formatId,
        isbn13,
        reference: listing?.reference ?? '',
        currency: null,
        name,
        there: 'not listed',
        here: 'selling',
      }),
    ),
    ...unknown(listed.get(undefined) ?? []),
  ];
}
