import { z } from 'zod';

// What was read from a final file, as plain data: a reader beside the store makes it, the rules set it against the
// record, and the catalogue keeps it. Lengths are points (1/72 in), measured from the top left of the page as it is
// shown: cropped and turned, y downwards.

const pt = z.number().min(-100_000).max(100_000);

/** A place on a page, in points from the top left of the page as shown. */
export const box = z.object({ xPt: pt, yPt: pt, widthPt: pt, heightPt: pt });
export type Box = z.infer<typeof box>;

/** One line of text as it stands on a page. `turned` is clockwise: 90 reads from top to bottom. */
export const textLine = z.object({
  page: z.int().positive(),
  text: z.string().max(2_000),
  box,
  turned: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
});
export type TextLine = z.infer<typeof textLine>;

/** An ISBN seen in text. `isbn13` has thirteen digits; null where what looks like an ISBN is none. */
export const seenIsbn = z.object({
  page: z.int().positive(),
  raw: z.string().max(100),
  isbn13: z.string().nullable(),
  box: box.nullable(),
});
export type SeenIsbn = z.infer<typeof seenIsbn>;

const imageSeen = z.object({
  box,
  widthPx: z.int(),
  heightPx: z.int(),
  /** Pixels to the inch as placed, the lower of the two directions. */
  ppi: z.number(),
  colour: z.enum(['black and white', 'grey', 'colour', 'unknown']),
});

/** One page. A box that the file does not state is null; a media box always is. */
export const pageFacts = z.object({
  media: box,
  crop: box.nullable(),
  bleed: box.nullable(),
  trim: box.nullable(),
  /** Degrees clockwise: 0, 90, 180, 270. */
  rotate: z.int(),
  /** Points to a unit, 1 as a rule. */
  userUnit: z.number().positive(),
  /** Nothing is printed on it; null where it was not looked at. */
  blank: z.boolean().nullable(),
  /** Something on it is printed in colour; null where it was not looked at. */
  colour: z.boolean().nullable(),
  /** Print reaches beyond the trimmed page; null where it was not looked at. */
  bleeds: z.boolean().nullable(),
  images: z.array(imageSeen).max(200),
  /** Fingerprint of its text without spaces, and of its look: equal where nothing changed. */
  textPrint: z.string().max(64),
  lookPrint: z.string().max(64).nullable(),
});
export type PageFacts = z.infer<typeof pageFacts>;

export const fontFacts = z.object({
  name: z.string().max(300),
  embedded: z.boolean(),
  /** Drawn by its own procedures (Type 3), which need no font file. */
  drawn: z.boolean(),
  firstPage: z.int().positive(),
});

/** A bar code that was decoded on the rendered page. */
export const barcodeFacts = z.object({
  page: z.int().positive(),
  /** EAN-13 digits as scanned. */
  digits: z.string().regex(/^\d{13}$/),
  /** Five digits of the price add-on, null where there is none. */
  addOn: z
    .string()
    .regex(/^\d{5}$/)
    .nullable(),
  /** From the first to the last bar of the main symbol and over its full height, guards included; without quiet zones. */
  box,
  /** Which way it reads, clockwise: 90 reads from top to bottom. */
  turned: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
  /** Width of one module in points. */
  modulePt: z.number().positive(),
  /** Height of the ordinary bars, those between the guards; null where it could not be measured. */
  barHeightPt: z.number().positive().nullable(),
  /**
   * Clear space left and right of the main symbol, as it reads, in modules; as far as it was looked for where it is
   * wider; null where it could not be measured.
   */
  quietLeft: z.number().nullable(),
  quietRight: z.number().nullable(),
  /** Light bars on a dark ground. */
  inverted: z.boolean(),
  /** Reflectance of the spaces less that of the bars under red light, 0 to 1; null where it could not be measured. */
  contrast: z.number().min(0).max(1).nullable(),
});
export type BarcodeFacts = z.infer<typeof barcodeFacts>;

/**
 * How far from each edge of the sheet (its bleed box where it states one, else the page as shown) print begins: points,
 * along each side in equal parts from the left or the top; null where nothing is printed within an inch.
 */
export const sheetEdges = z.object({
  left: z.array(z.number().nullable()).max(100),
  top: z.array(z.number().nullable()).max(100),
  right: z.array(z.number().nullable()).max(100),
  bottom: z.array(z.number().nullable()).max(100),
});
export type SheetEdges = z.infer<typeof sheetEdges>;

/** A picture of a page as shown: PNG in base64, no longer than 480 pixels on its longer side. */
export const pagePicture = z.object({
  page: z.int().positive(),
  widthPx: z.int().positive(),
  heightPx: z.int().positive(),
  png: z.base64(),
});
export type PagePicture = z.infer<typeof pagePicture>;

/** Facts of a PDF: an interior or a cover. */
export const pdfFacts = z.object({
  of: z.literal('pdf'),
  /** '1.7' */
  version: z.string().max(10),
  encrypted: z.boolean(),
  /** The PDF/X version that it claims, as written ('PDF/X-1a:2001'). */
  pdfx: z.string().max(100).nullable(),
  /** Title by the file's own properties. */
  titleProperty: z.string().max(1_000),
  pages: z.array(pageFacts).max(20_000),
  fonts: z.array(fontFacts).max(2_000),
  /** Lines of the first 16 and the last 4 pages. */
  lines: z.array(textLine).max(10_000),
  /** ISBNs anywhere in the file. */
  isbns: z.array(seenIsbn).max(1_000),
  barcodes: z.array(barcodeFacts).max(50),
  /** Of the first page; null where it was not looked at. */
  edges: sheetEdges.nullable(),
  scripts: z.int().nonnegative(),
  attachments: z.int().nonnegative(),
  /** What could not be read, each in a sentence. */
  unread: z.array(z.string().max(500)).max(50),
});
export type PdfFacts = z.infer<typeof pdfFacts>;

/**
 * Facts of a cover that is a picture. `ppi` is what the file states, null where it states none; then places on it count
 * 72 pixels to the inch.
 */
export const pictureFacts = z.object({
  of: z.literal('picture'),
  format: z.enum(['PNG', 'JPEG']),
  widthPx: z.int().positive(),
  heightPx: z.int().positive(),
  ppi: z.number().positive().nullable(),
  colour: z.enum(['black and white', 'grey', 'colour', 'unknown']),
  barcodes: z.array(barcodeFacts).max(50),
  /** Null where it was not looked at, or states no resolution. */
  edges: sheetEdges.nullable(),
  unread: z.array(z.string().max(500)).max(50),
});
export type PictureFacts = z.infer<typeof pictureFacts>;

/** Facts of an e-book (EPUB 3.3, section numbers of the package document). */
export const epubFacts = z.object({
  of: z.literal('epub'),
  version: z.string().max(10),
  /**
   * All dc:identifier values; `unique` marks the one that the package names, `claimsIsbn` one that is written or marked as
   * an ISBN, valid or not.
   */
  identifiers: z
    .array(
      z.object({
        value: z.string().max(500),
        isbn13: z.string().nullable(),
        claimsIsbn: z.boolean(),
        unique: z.boolean(),
      }),
    )
    .max(100),
  sources: z.array(z.string().max(500)).max(100),
  /** `kind` is the title type where one is given: 'main', 'subtitle', 'collection'. */
  titles: z.array(z.object({ text: z.string().max(1_000), kind: z.string().max(40) })).max(50),
  /** Creators, then contributors. `role` is a MARC relator code ('aut') or a code of ONIX List 17 where one is given. */
  creators: z
    .array(z.object({ name: z.string().max(500), role: z.string().max(20), contributor: z.boolean() }))
    .max(300),
  languages: z.array(z.string().max(50)).max(50),
  publishers: z.array(z.string().max(500)).max(50),
  date: z.string().max(100).nullable(),
  modified: z.string().max(100).nullable(),
  /** Lines of the first and last documents of the spine and of any named as copyright page; page counts documents. */
  lines: z
    .array(z.object({ page: z.int().positive(), document: z.string().max(500), text: z.string().max(2_000) }))
    .max(10_000),
  /** The document that is or looks like the copyright page, as it is counted in `lines`; null where none does. */
  copyrightPage: z.int().positive().nullable(),
  isbns: z.array(seenIsbn).max(1_000),
  /** Sizes are 0 where the picture does not tell them. */
  cover: z.object({ name: z.string().max(500), widthPx: z.int(), heightPx: z.int() }).nullable(),
  /** Documents in reading order. */
  documents: z.int().nonnegative(),
  scripts: z.int().nonnegative(),
  /** Faults of the container and package, each in a sentence. */
  faults: z.array(z.string().max(500)).max(200),
  unread: z.array(z.string().max(500)).max(50),
});
export type EpubFacts = z.infer<typeof epubFacts>;

/** Facts of an audiobook: its files in order, from an archive or a single file. Durations are seconds. */
export const audioFacts = z.object({
  of: z.literal('audio'),
  files: z
    .array(
      z.object({ name: z.string().max(500), bytes: z.int().nonnegative(), seconds: z.number().nullable() }),
    )
    .max(2_000),
  titles: z.array(z.string().max(1_000)).max(50),
  isbns: z.array(seenIsbn).max(1_000),
  unread: z.array(z.string().max(500)).max(50),
});
export type AudioFacts = z.infer<typeof audioFacts>;

export const fileFacts = z.discriminatedUnion('of', [pdfFacts, pictureFacts, epubFacts, audioFacts]);
export type FileFacts = z.infer<typeof fileFacts>;

/** What a reader hands over: the file's own hash, what was read, and pictures of pages. */
export const reading = z.object({
  fileName: z.string().max(255),
  bytes: z.int().nonnegative(),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  facts: fileFacts,
  pictures: z.array(pagePicture).max(60),
});
export type Reading = z.infer<typeof reading>;

/** How a fact of the file stands to the record. */
export const CHECK_STATES = ['agreed', 'differs', 'not found', 'cannot tell'] as const;
export type CheckState = (typeof CHECK_STATES)[number];

/** One line of a check's result. */
export const checkLine = z.object({
  /** Which check it is: 'interior.pages'. */
  check: z.string().max(80),
  /** 'Page count' */
  label: z.string().max(120),
  state: z.enum(CHECK_STATES),
  /** What the record says, and what the file says; empty where there is nothing to say. */
  expected: z.string().max(1_000),
  found: z.string().max(1_000),
  /** One sentence: what it means and what to do; empty where it is agreed. */
  advice: z.string().max(1_000),
  /** Where it was seen; page counts from 1. */
  page: z.int().positive().nullable(),
  box: box.nullable(),
});
export type CheckLine = z.infer<typeof checkLine>;
