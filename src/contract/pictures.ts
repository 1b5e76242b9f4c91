import { z } from 'zod';
import { asOf, isoDate, operation, rowId } from './operation.ts';
import { formatStanding, listingStanding } from './terms.ts';

// What the pictures are drawn from, each for today or a past day.

const lane = z.object({
  formatId: rowId,
  name: z.string(),
  hyphenated: z.string().nullable(),
  standing: formatStanding,
  onSaleDate: isoDate.nullable(),
  /** Where the format stood from when to when, without gaps; the last one stands still (`to` is null). */
  spans: z.array(z.object({ standing: formatStanding, from: isoDate, to: isoDate.nullable() })),
});
export type LifeLane = z.infer<typeof lane>;

export const life = z.object({
  workId: rowId,
  title: z.string(),
  day: isoDate,
  editions: z.array(
    z.object({
      editionId: rowId,
      label: z.string(),
      replacesId: rowId.nullable(),
      releaseDay: isoDate.nullable(),
      retirementDay: isoDate.nullable(),
      /** Plans that were dropped: for which day they were, and when they were given up. */
      dropped: z.array(
        z.object({
          kind: z.enum(['release', 'retirement']),
          day: isoDate,
          droppedOn: isoDate,
          reason: z.string(),
        }),
      ),
      lanes: z.array(lane),
    }),
  ),
});
export type Life = z.infer<typeof life>;

export const lifeOfWork = operation({
  name: 'pictures.life',
  kind: 'query',
  summary: 'Where every format of a work stood from when to when, edition after edition.',
  input: z.object({ workId: rowId, asOf }),
  output: life,
  errors: [],
});

export const coverage = z.object({
  day: isoDate,
  channels: z.array(z.object({ id: rowId, name: z.string() })),
  rows: z.array(
    z.object({
      formatId: rowId,
      workId: rowId,
      editionLabel: z.string(),
      name: z.string(),
      standing: formatStanding,
      /** One entry a channel, in the order of the channels; null where the format is not listed. */
      cells: z.array(z.object({ standing: listingStanding, since: isoDate.nullable() }).nullable()),
    }),
  ),
  /** Formats there are in all, of which the rows are a part. */
  total: z.int(),
});
export type Coverage = z.infer<typeof coverage>;

export const coverageGrid = operation({
  name: 'pictures.coverage',
  kind: 'query',
  summary: 'Which format is on which channel, and where each listing stands.',
  input: z.object({
    /** Retired and cancelled formats too. */
    ended: z.boolean().default(false),
    from: z.int().nonnegative().default(0),
    count: z.int().min(1).max(200).default(40),
    asOf,
  }),
  output: coverage,
  errors: [],
});

export const stock = z.object({
  day: isoDate,
  capacity: z.int(),
  free: z.int(),
  /** Free numbers at the end of a day, from the first on; a run of equal days is one point. */
  points: z.array(z.object({ day: isoDate, free: z.int() })),
  perYear: z.number(),
  runsOutOn: isoDate.nullable(),
});
export type Stock = z.infer<typeof stock>;

export const numbersLeft = operation({
  name: 'pictures.stock',
  kind: 'query',
  summary: 'How many numbers were left on which day, and when they run out at the pace of late.',
  input: z.object({ asOf }),
  output: stock,
  errors: [],
});

const moneyBar = z.object({
  listingId: rowId,
  formatId: rowId,
  workId: rowId,
  label: z.string(),
  standing: listingStanding,
  currency: z.string(),
  listMinor: z.int(),
  /** Null where it is not recorded in this currency; what is kept cannot be told then. */
  printCostMinor: z.int().nullable(),
  channelMinor: z.int().nullable(),
  keptMinor: z.int().nullable(),
});
export type MoneyBar = z.infer<typeof moneyBar>;

export const money = z.object({
  day: isoDate,
  channels: z.array(
    z.object({ channelId: rowId, name: z.string(), bars: z.array(moneyBar), total: z.int() }),
  ),
});
export type MoneyByChannel = z.infer<typeof money>;

export const moneyByChannel = operation({
  name: 'pictures.money',
  kind: 'query',
  summary:
    'What a copy brings on each listing: of the list price, what printing costs, what the channel keeps and what is left.',
  input: z.object({
    /** At most so many listings of a channel, those that keep least first. */
    most: z.int().min(1).max(500).default(12),
    asOf,
  }),
  output: money,
  errors: [],
});
