import { z } from 'zod';
import { asOf, operation, rowId } from './operation.ts';
import { FILE_KINDS, formatStanding } from './terms.ts';

/** `ready`; `missing`: a channel will ask for it; `care`: worth a look, not asked for by every channel. */
export const NEED_STATES = ['ready', 'missing', 'care'] as const;

const need = z.object({
  /** What is needed, as a stable name: 'isbn', 'file cover', 'description' … */
  need: z.string(),
  label: z.string(),
  state: z.enum(NEED_STATES),
  /** What is there, or what is wrong. */
  detail: z.string(),
  /** The channels that ask; empty for every one. */
  channels: z.array(z.string()),
  /** Where it is mended. */
  mend: z.object({
    at: z.enum(['number', 'edition', 'format', 'file', 'check', 'listing', 'add-listing']),
    listingId: rowId.nullable(),
    fileKind: z.enum(FILE_KINDS).nullable(),
  }),
});
export type Need = z.infer<typeof need>;

export const formatReadiness = z.object({
  formatId: rowId,
  name: z.string(),
  standing: formatStanding,
  /** Whether nothing is missing that a channel will ask for. */
  ready: z.boolean(),
  needs: z.array(need),
});
export type FormatReadiness = z.infer<typeof formatReadiness>;

export const editionReadiness = operation({
  name: 'editions.readiness',
  kind: 'query',
  summary:
    'What every channel will ask for before a format is sent, by format: what is there, what is missing, and where it is mended.',
  input: z.object({ editionId: rowId, asOf }),
  output: z.object({ editionId: rowId, formats: z.array(formatReadiness) }),
  errors: [],
});

export const copyrightPage = operation({
  name: 'editions.copyrightPage',
  kind: 'query',
  summary:
    'The text block for the back of the title page of each format: edition statement, every ISBN with its form, dates and imprint, by the copyright page text in use.',
  input: z.object({ editionId: rowId }),
  output: z.object({
    formats: z.array(z.object({ formatId: rowId, name: z.string(), text: z.string() })),
    /** What to look at before it is printed, one sentence each. */
    remarks: z.array(z.string()),
  }),
  errors: [],
});
