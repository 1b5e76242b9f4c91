import { z } from 'zod';
import { anyText, asOf, isoDate, money, operation, rowId } from './operation.ts';
import { CASE_KINDS, INTERIOR_COLOURS } from './terms.ts';

/** The most pages a card can be asked for. */
export const MOST_PAGES = 20_000;

const pages = z
  .int({ error: 'Write a whole number of pages.' })
  .min(1, { error: 'A book has at least one page.' })
  .max(MOST_PAGES, { error: 'Keep this at 20,000 pages or under.' });

/** What a printer asked for one copy of so many pages. */
export const quote = z.object({
  pages,
  amountMinor: z
    .int()
    .nonnegative({ error: 'An amount cannot be negative.' })
    .max(50_000_000, { error: 'Keep the cost of a copy under 50,000,000 minor units.' }),
});
export type Quote = z.infer<typeof quote>;

/**
 * Where the two parts of the cost come from: stated by the printer, in ten-thousandths of a minor unit since a page
 * costs less than one, or fitted to what it asked for books of different page counts.
 */
export const cardPrice = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('stated'),
    fixedParts: z.int().nonnegative({ error: 'An amount cannot be negative.' }).max(500_000_000_000),
    pageParts: z.int().nonnegative({ error: 'An amount cannot be negative.' }).max(10_000_000_000),
  }),
  z.object({
    kind: z.literal('quotes'),
    quotes: z
      .array(quote)
      .min(1, { error: 'Enter at least one quote; from two on, other page counts follow.' })
      .max(200, { error: 'Keep at most 200 quotes on a card.' }),
  }),
]);
export type CardPrice = z.infer<typeof cardPrice>;

const um = z.int().positive().max(2_000_000);

/** Which books a card holds for; null is any. */
export const cardFields = z.object({
  currency: money.shape.currency,
  /** ONIX List 150. */
  form: z
    .string()
    .regex(/^[A-Z]{2}$/, { error: 'Choose a product form.' })
    .nullable(),
  caseKind: z.enum(CASE_KINDS).nullable(),
  interiorColour: z.enum(INTERIOR_COLOURS).nullable(),
  /** The largest trim it holds for. */
  trimWidthUm: um.nullable(),
  trimHeightUm: um.nullable(),
  pagesFrom: pages,
  pagesTo: pages,
  /** From when on it holds; of two cards that fit alike, the later one does. */
  validFrom: isoDate.nullable(),
  price: cardPrice,
  note: anyText,
});
export type CardFields = z.infer<typeof cardFields>;

export const BLANK_CARD = {
  form: null,
  caseKind: null,
  interiorColour: null,
  trimWidthUm: null,
  trimHeightUm: null,
  pagesFrom: 1,
  pagesTo: MOST_PAGES,
  validFrom: null,
  note: '',
} satisfies Omit<CardFields, 'currency' | 'price'>;

/** The straight line through the quotes, by least squares; amounts in ten-thousandths of a minor unit, rounded. */
export const fitted = z.object({
  /** `one page count`: nothing is told of any other. */
  how: z.enum(['stated', 'exact', 'least squares', 'one page count']),
  fixedParts: z.int().nullable(),
  pageParts: z.int().nullable(),
  quotes: z.array(
    quote.extend({
      /** What the line gives there, in whole minor units; null where it gives less than nothing. */
      fittedMinor: z.int().nullable(),
      /** Quote less line: above 0 the printer asks more than the line says. */
      offParts: z.int(),
    }),
  ),
  /** Where the quotes contradict each other or cannot be right, one sentence each. */
  warnings: z.array(z.string()),
});
export type Fitted = z.infer<typeof fitted>;

export const printCard = cardFields.extend({
  id: rowId,
  channelId: rowId,
  channelName: z.string(),
  /** 'Paperback, black, up to 152.4 × 228.6 mm' */
  name: z.string(),
  fitted,
});
export type PrintCard = z.infer<typeof printCard>;

export const listCards = operation({
  name: 'printCosts.list',
  kind: 'query',
  summary:
    'The print-cost cards of the channels, each with the line it gives and how far its quotes are off.',
  input: z.object({ channelId: rowId.optional(), asOf }),
  output: z.object({ cards: z.array(printCard) }),
  errors: [],
});

export const fitQuotes = operation({
  name: 'printCosts.fit',
  kind: 'query',
  summary: 'The fixed part and the part for each page that lie nearest to some quotes; nothing is kept.',
  input: z.object({ currency: money.shape.currency, price: cardPrice }),
  output: fitted,
  errors: [],
});

const cardId = z.object({ cardId: rowId });

export const addCard = operation({
  name: 'printCosts.add',
  kind: 'command',
  summary: 'Keep what printing costs on a channel: stated, or as quotes for two or more page counts.',
  input: cardFields.partial().required({ currency: true, price: true }).extend({ channelId: rowId }),
  output: cardId,
  errors: ['ALREADY_EXISTS'],
});

export const updateCard = operation({
  name: 'printCosts.update',
  kind: 'command',
  summary: 'Change a print-cost card; its quotes are given whole.',
  input: cardFields.partial().extend({ id: rowId }),
  output: cardId.extend({ changed: z.array(z.string()) }),
  errors: ['ALREADY_EXISTS'],
});

export const removeCard = operation({
  name: 'printCosts.remove',
  kind: 'command',
  summary: 'Remove a print-cost card with its quotes; own figures of listings stay.',
  input: z.object({ id: rowId }),
  output: cardId,
  errors: [],
});
