import { z } from 'zod';
import { asOf, isoDate, money, operation, rowId } from './operation.ts';
import { listingStanding } from './terms.ts';

/** Where the print cost of a listing comes from, and why it is not known where it is not. */
export const listingCost = z.object({
  minor: z.int().nullable(),
  from: z.enum(['own figure', 'card', 'nothing printed', 'not known']),
  cardId: rowId.nullable(),
  /** What the card holds for; '' without one. */
  cardName: z.string(),
  beyondQuotes: z.boolean(),
  why: z.string(),
});

/** What part of a run comes back, and what is left then. */
export const returnsEffect = z.object({
  receiptsMinor: z.int(),
  printMinor: z.int(),
  /** Receipts less printing, before freight and handling. */
  marginMinor: z.int(),
  /** The largest share of returns at which nothing is lost, in basis points; null where every copy earns. */
  bearableBp: z.int().nullable(),
});

export const moneyRow = z.object({
  listingId: rowId,
  formatId: rowId,
  formatName: z.string(),
  made: z.enum(['print', 'e-book', 'audio']),
  channelId: rowId,
  channelName: z.string(),
  standing: listingStanding,
  currency: z.string(),
  listMinor: z.int(),
  tax: z.enum(['including', 'excluding']),
  /** Discount, or the share of the channel where nothing is printed; null where none is recorded, and 0 is taken. */
  discountBp: z.int().nullable(),
  /** ONIX List 66. */
  returns: z.enum(['Y', 'N', 'C', 'S']).nullable(),
  printCost: listingCost,
  /** Null where it cannot be told, since the print cost is not known. */
  keptMinor: z.int().nullable(),
  /** Before rounding, in ten-thousandths of a minor unit. */
  keptParts: z.int().nullable(),
  channelMinor: z.int().nullable(),
  /** The lowest list price at which nothing is lost, and the first one with each of the user's endings. */
  lowestMinor: z.int().nullable(),
  lowestEnding: z.array(z.object({ ending: z.string(), minor: z.int() })),
  /** Null where it cannot be told, or where nothing comes back. */
  afterReturns: returnsEffect.nullable(),
});
export type MoneyRow = z.infer<typeof moneyRow>;

export const editionMoney = operation({
  name: 'money.ofEdition',
  kind: 'query',
  summary:
    'What a copy brings on every listing of an edition, in each currency: kept, lowest price, and what returns leave.',
  input: z.object({
    editionId: rowId,
    /** How many copies go out, and the share of them that comes back. */
    shipped: z.int().min(1).max(10_000_000).default(100),
    returnedBp: z.int().min(0).max(10_000).default(2_500),
    asOf,
  }),
  output: z.object({ rows: z.array(moneyRow) }),
  errors: [],
});

export const COMPARE_OVER = ['price', 'pages', 'discount'] as const;

const point = z.object({ x: z.int(), keptMinor: z.int().nullable() });

/** One listing of a format as a line: what a copy keeps while one thing changes and all else stays. */
export const moneyCurve = z.object({
  listingId: rowId,
  channelName: z.string(),
  discountBp: z.int().nullable(),
  printCostMinor: z.int().nullable(),
  points: z.array(point),
  /** Where it stands today; null where that cannot be told. */
  now: point.nullable(),
  /** Why the line is short or missing; '' otherwise. */
  note: z.string(),
});
export type MoneyCurve = z.infer<typeof moneyCurve>;

export const moneyCurves = z.object({
  formatName: z.string(),
  currency: z.string(),
  listMinor: z.int(),
  pages: z.int().nullable(),
  over: z.enum(COMPARE_OVER),
  from: z.int(),
  to: z.int(),
  curves: z.array(moneyCurve),
});
export type MoneyCurves = z.infer<typeof moneyCurves>;

export const compareMoney = operation({
  name: 'money.compare',
  kind: 'query',
  summary:
    'What a copy of a format keeps on each channel while the list price, the pages or the discount change.',
  input: z.object({ formatId: rowId, currency: money.shape.currency, over: z.enum(COMPARE_OVER), asOf }),
  output: moneyCurves,
  errors: ['NOT_READY'],
});

const change = z.object({
  formatId: rowId,
  /** The new prices; currencies that are not named keep theirs. */
  prices: z.array(money).min(1, { error: 'Give at least one new price.' }).max(50),
  /** The day from which channels are to show it; otherwise the first day that every one of them can keep. */
  from: isoDate.optional(),
});

/** One listing under a price change. */
export const priceEffect = z.object({
  listingId: rowId,
  channelName: z.string(),
  standing: listingStanding,
  currency: z.string(),
  listNowMinor: z.int(),
  listThenMinor: z.int(),
  keptNowMinor: z.int().nullable(),
  keptThenMinor: z.int().nullable(),
  printCost: listingCost,
  belowCost: z.boolean(),
  /** `ask`: the channel has to be told; `with the sheet`: it goes along when it is sent; `over`: no longer sold. */
  way: z.enum(['ask', 'with the sheet', 'over']),
  /** The first day it can hold there, by the channel's lead time; null where nothing is asked. */
  earliestOn: isoDate.nullable(),
  days: z.int().nullable(),
});
export type PriceEffect = z.infer<typeof priceEffect>;

export const previewPrices = operation({
  name: 'prices.preview',
  kind: 'query',
  summary: 'What new prices of a format would do on every listing of it; nothing is changed.',
  input: change,
  output: z.object({
    formatName: z.string(),
    rows: z.array(priceEffect),
    /** The day that every channel can keep, or the one asked for. */
    from: isoDate,
    /** Tasks that telling the channels takes, one a channel. */
    tasks: z.array(z.object({ listingId: rowId, title: z.string(), dueOn: isoDate })),
    notes: z.array(z.string()),
  }),
  errors: ['FIELD_LOCKED', 'STEP_REFUSED'],
});

export const changePrices = operation({
  name: 'prices.change',
  kind: 'command',
  summary: 'Give a format new prices, with a task to tell each channel that has the old ones.',
  input: change,
  output: z.object({ formatId: rowId, changed: z.array(z.string()), taskIds: z.array(rowId) }),
  errors: ['FIELD_LOCKED', 'STEP_REFUSED'],
});
