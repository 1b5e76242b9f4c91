import { z } from 'zod';
import { price } from './formats.ts';
import { asOf, filledText, isoDate, operation, rowId } from './operation.ts';
import { formatStanding, listingStanding } from './terms.ts';

const codes = z.array(z.string().max(200)).max(200);

/** Which formats are shown: every condition that is given must hold; within one, any of its values. */
export const formatTerms = z.object({
  /** Titles, people and numbers, as in the search. */
  text: z.string().max(200).default(''),
  standings: z.array(formatStanding).default([]),
  forms: codes.default([]),
  /** Listed on one of these channels; with `listingStandings`, and standing there so. */
  channelIds: z.array(rowId).max(500).default([]),
  listingStandings: z.array(listingStanding).default([]),
  languages: codes.default([]),
  imprints: codes.default([]),
  /** The day that `from` and `to` (both included) speak of. */
  dateOf: z.enum(['publication', 'on sale']).default('on sale'),
  from: isoDate.nullable().default(null),
  to: isoDate.nullable().default(null),
  /** Only formats, or editions of them, that the audit found something about. */
  withFindings: z.boolean().default(false),
});
export type FormatTerms = z.infer<typeof formatTerms>;

export const FORMAT_SORTS = [
  'title',
  'form',
  'number',
  'standing',
  'publication',
  'on sale',
  'language',
  'imprint',
  'price',
] as const;
export type FormatSort = (typeof FORMAT_SORTS)[number];

export const findFormats = operation({
  name: 'formats.find',
  kind: 'query',
  summary: 'The ids of every format that passes a filter, in the order asked for; rows are then read by id.',
  input: z.object({
    terms: formatTerms.default(formatTerms.parse({})),
    sort: z.object({ by: z.enum(FORMAT_SORTS), down: z.boolean() }).default({ by: 'title', down: false }),
    asOf,
  }),
  output: z.object({ ids: z.array(rowId), all: z.int() }),
  errors: [],
});

export const formatRow = z.object({
  id: rowId,
  workId: rowId,
  editionId: rowId,
  /** 'The Salt Almanac, 2nd edition' */
  edition: z.string(),
  name: z.string(),
  standing: formatStanding,
  hyphenated: z.string().nullable(),
  people: z.string(),
  language: z.string(),
  imprint: z.string(),
  publicationDate: isoDate.nullable(),
  onSaleDate: isoDate.nullable(),
  prices: z.array(price),
  listings: z.array(z.object({ channelName: z.string(), standing: listingStanding })),
});
export type FormatRow = z.infer<typeof formatRow>;

export const readFormatRows = operation({
  name: 'formats.rows',
  kind: 'query',
  summary:
    'Formats by id as a table shows them, in the order of the ids; ids that are not there are left out.',
  input: z.object({ ids: z.array(rowId).max(500), asOf }),
  output: z.object({ rows: z.array(formatRow) }),
  errors: [],
});

export const formatChoices = operation({
  name: 'formats.choices',
  kind: 'query',
  summary: 'What a filter of formats can choose from: the forms, languages and imprints that occur.',
  input: z.object({}),
  output: z.object({
    forms: z.array(z.string()),
    languages: z.array(z.string()),
    imprints: z.array(z.string()),
  }),
  errors: [],
});

export const listFilters = operation({
  name: 'filters.list',
  kind: 'query',
  summary: 'The saved filters of the list of formats, by name.',
  input: z.object({}),
  output: z.object({ filters: z.array(z.object({ id: rowId, name: z.string(), terms: formatTerms })) }),
  errors: [],
});

export const saveFilter = operation({
  name: 'filters.save',
  kind: 'command',
  summary:
    'Keep a filter of the list of formats under a name; a name that is there already gets the new filter.',
  input: z.object({
    name: filledText.max(80, { error: 'Keep the name under 80 characters.' }),
    terms: formatTerms,
  }),
  output: z.object({ id: rowId }),
  errors: [],
});

export const removeFilter = operation({
  name: 'filters.remove',
  kind: 'command',
  summary: 'Forget a saved filter.',
  input: z.object({ id: rowId }),
  output: z.object({ id: rowId }),
  errors: [],
});
