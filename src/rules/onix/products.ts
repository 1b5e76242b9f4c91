import type { EditionFields } from '../../contract/editions.ts';
import type { FormatFields } from '../../contract/formats.ts';

/** The blocks of a product whose parts are kept one by one. */
export const BLOCKS = [
  'DescriptiveDetail',
  'CollateralDetail',
  'PublishingDetail',
  'RelatedMaterial',
] as const;
export type Block = (typeof BLOCKS)[number];

/**
 * A part of a product record that came in by a message and is given back as it came. `bound` parts stand for a
 * value of the catalogue and are given back only as long as that value is the same (`key`); the others always.
 * An unbound part keeps our own part of the same name and key (or of any key, where its key is '*') out.
 */
export interface KeptPart {
  place: 'Product' | Block;
  /** Reference name of the part. */
  name: string;
  key: string;
  bound: boolean;
  /** Version of the message it came with: '3.1', '3.0' or '2.1'. */
  version: string;
  /** The part in reference names. */
  xml: string;
}

export interface RelatedFormat {
  /** List 51. */
  codes: string[];
  isbn13: string;
}

/** Stands for the standing that the format has once it was taken over; the command fills it in. */
export const AT_STANDING = '@standing';

/** What a message tells of one product, in the catalogue's own terms. What it does not tell is left out. */
export interface ReadProduct {
  /** From 1, in the order of the message. */
  row: number;
  line: number;
  /** List 1. */
  notification: string;
  /** The number as it was written, and as it was understood. */
  isbnText: string;
  isbn13: string | null;
  /** Why the number was not understood, or null. */
  isbnProblem: string | null;
  edition: Partial<EditionFields>;
  format: Partial<FormatFields>;
  /** List 64, or null where it is not told. */
  status: string | null;
  publisher: string;
  related: RelatedFormat[];
  /** Identifiers of the work, `type:value`. */
  works: string[];
  kept: KeptPart[];
  /** What could not be taken as it is, in sentences. */
  notes: string[];
}
