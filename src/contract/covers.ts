import { z } from 'zod';
import { filledText, operation, rowId } from './operation.ts';

const um = z.int().min(0).max(1_000_000);

/** The printer's own figures; where one is missing, a usual one is taken. Lengths in micrometres. */
export const printerFigures = z
  .object({
    bleedUm: um,
    coverAllowanceUm: um,
    safeMarginUm: um,
    spineMarginUm: um,
    spineTextFromPages: z.int().min(0).max(20_000),
    boardUm: um,
    hingeUm: um,
    turnInUm: um,
    overhangUm: um,
    boardWiderUm: z.int().min(-100_000).max(100_000),
    flapUm: um,
    jacketWiderUm: um,
    barcodeFromSpineUm: um,
    barcodeFromFootUm: um,
    /** The place of the bar code with its number line and quiet zones. */
    barcodeWidthUm: um,
    barcodeHeightUm: um,
    /** The spine is given to the nearest such step; 0 for no step. */
    spineStepUm: um,
    /** Books are filled up with blank pages to a multiple of this. */
    pageMultiple: z.int().min(1).max(64),
  })
  .partial();
export type GivenFigures = z.infer<typeof printerFigures>;

/** How thick a paper is: pages to the inch, or the thickness of one leaf. */
export const bulk = z.union(
  [z.object({ pagesPerInch: z.int().min(50).max(3_000) }), z.object({ leafUm: z.int().min(10).max(2_000) })],
  { error: 'Write 50 to 3,000 pages to the inch, or a leaf of 0.01 to 2 mm.' },
);

/** A paper of the user's own table. */
export const paper = z.object({ name: filledText, bulk, source: z.string().default('') });

const rect = z.object({ xUm: z.number(), yUm: z.number(), widthUm: z.number(), heightUm: z.number() });

export const SHEET_KINDS = ['paperback cover', 'case', 'jacket'] as const;

export const listPapers = operation({
  name: 'covers.papers',
  kind: 'query',
  summary:
    'The papers whose thickness is known: the user’s own first, then usual ones, each with its source.',
  input: z.object({}),
  output: z.object({ papers: z.array(paper) }),
  errors: [],
});

export const drawCover = operation({
  name: 'covers.draw',
  kind: 'query',
  summary:
    'Spine, cover, case or jacket of a printed format from its trim, pages and paper, as a template of true size in SVG or PDF.',
  input: z.object({
    formatId: rowId,
    sheet: z.enum(SHEET_KINDS).optional(),
    as: z.enum(['svg', 'pdf']),
    bulk,
    /** Where another page count than the recorded one is to be tried. */
    pages: z.int().positive().max(20_000).optional(),
    /** Where another trim than the recorded one is to be tried. */
    trim: z
      .object({
        widthUm: z.int().min(10_000).max(2_000_000),
        heightUm: z.int().min(10_000).max(2_000_000),
      })
      .optional(),
    figures: printerFigures.default({}),
  }),
  output: z.object({
    fileName: z.string(),
    mediaType: z.string(),
    base64: z.string(),
    sheet: z.object({
      kind: z.enum(SHEET_KINDS),
      widthUm: z.number(),
      heightUm: z.number(),
      trimmed: rect,
      edge: z.object({ kind: z.enum(['bleed', 'turn-in']), um: z.number() }),
      spineUm: z.number(),
      panels: z.array(rect.extend({ kind: z.string(), safe: rect.nullable() })),
      foldsUm: z.array(z.number()),
      barcode: rect.nullable(),
    }),
    /** Every figure used, the usual ones filled in. */
    figures: printerFigures.required(),
    /** Advice, one sentence each. */
    notes: z.array(z.string()),
  }),
  errors: ['NOT_READY'],
});
