import { z } from 'zod';
import { anyText, asOf, isoDate, money, operation, rowId } from './operation.ts';

/** What bringing a format out is paid for; plain names of ours. */
export const COST_KINDS = ['upload', 'revised file', 'proof copy', 'own copies', 'number', 'other'] as const;

export const costFields = z.object({
  kind: z.enum(COST_KINDS),
  amount: money,
  /** What was used up instead of money, such as a voucher for a free upload; empty where none. */
  voucher: anyText,
  on: isoDate,
  note: anyText,
});
export type CostFields = z.infer<typeof costFields>;

export const cost = costFields.extend({
  id: rowId,
  formatId: rowId,
  listingId: rowId.nullable(),
  roundId: rowId.nullable(),
  /** Dated before its format ended: it may no longer change. */
  locked: z.boolean(),
});
export type Cost = z.infer<typeof cost>;

/** What a copy earns on a listing at one price, after the channel's share and the print cost. */
const earning = z.object({
  listingId: rowId,
  formatId: rowId,
  formatName: z.string(),
  channelName: z.string(),
  currency: z.string(),
  listMinor: z.int(),
  discountBp: z.int(),
  /** 0 where nothing is printed, null where the print cost is not recorded in this currency. */
  printCostMinor: z.int().nullable(),
  keptMinor: z.int().nullable(),
  /** Copies sold here that would bring the costs of the edition so far back; null where a copy earns nothing. */
  copiesToCover: z.int().nullable(),
});
export type Earning = z.infer<typeof earning>;

export const editionCosts = operation({
  name: 'costs.ofEdition',
  kind: 'query',
  summary:
    'What an edition has cost so far, by currency and one by one, beside what a copy earns on each listing.',
  input: z.object({ editionId: rowId, asOf }),
  output: z.object({
    costs: z.array(cost),
    totals: z.array(z.object({ currency: z.string(), amountMinor: z.int() })),
    vouchers: z.int(),
    earnings: z.array(earning),
  }),
  errors: [],
});

const costId = z.object({ costId: rowId });

export const addCost = operation({
  name: 'costs.add',
  kind: 'command',
  summary: 'Record what a format has cost: a fee, a revised file, proof copies, or a voucher used up.',
  input: costFields
    .partial({ voucher: true, on: true, note: true })
    .extend({ formatId: rowId, listingId: rowId.optional() }),
  output: costId,
  errors: ['FIELD_LOCKED', 'STEP_REFUSED'],
});

export const updateCost = operation({
  name: 'costs.update',
  kind: 'command',
  summary: 'Change a recorded cost; refused once its format has ended.',
  input: costFields.partial().extend({ id: rowId }),
  output: costId.extend({ changed: z.array(z.string()) }),
  errors: ['FIELD_LOCKED', 'STEP_REFUSED'],
});

export const removeCost = operation({
  name: 'costs.remove',
  kind: 'command',
  summary: 'Remove a cost that was recorded by mistake; refused once its format has ended.',
  input: z.object({ id: rowId }),
  output: costId,
  errors: ['FIELD_LOCKED'],
});
