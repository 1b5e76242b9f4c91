import type { Made } from '../../contract/terms.ts';
import type { Bulk, PrinterFigures, SheetKind } from '../geometry/types.ts';

/** What the checks allow. Every one may be set anew in the settings; printers and channels differ. */
export interface ProofFigures {
  /** How far a page, box or sheet may be from the recorded size (common practice, no source: half a millimetre). */
  sizeToleranceUm: number;
  /** How far a full cover may be from the computed one: bulk figures are rounded (common practice, no source: 1/16 in). */
  coverToleranceUm: number;
  /** Fewest pixels to the inch of a picture (common practice, no source). */
  picturePpi: number;
  /** Fewest pixels to the inch of black and white line art (common practice, no source). */
  lineArtPpi: number;
  /** Most blank pages before the first printed one (common practice, no source). */
  blankFirstPages: number;
  /** How far an audiobook may be from the recorded duration, in minutes: it is recorded in whole minutes. */
  durationToleranceMinutes: number;
}

export const USUAL_PROOF_FIGURES: ProofFigures = {
  sizeToleranceUm: 500,
  coverToleranceUm: 1_588,
  picturePpi: 300,
  lineArtPpi: 600,
  blankFirstPages: 0,
  durationToleranceMinutes: 2,
};

/** Another number of the catalogue, with what carries it: 'Paperback, second edition'. */
export interface OtherNumber {
  isbn13: string;
  name: string;
}

/** What of the record a final file is held against: one format with its edition. */
export interface ProofRecord {
  title: string;
  subtitle: string;
  /** Edition statement as recorded ('Second edition'), '' where there is none. */
  statement: string;
  /** Ordinal of the edition; null where it is not recorded. */
  ordinal: number | null;
  /** Statements and ordinals of the work's other editions, which must not stand in the file. */
  otherEditions: readonly { statement: string; ordinal: number | null }[];
  /** Ordered as recorded; `role` is a code of ONIX List 17, `roleName` its plain name. */
  contributors: readonly { role: string; roleName: string; name: string }[];
  /** ISO 639-2/B: 'eng'. */
  language: string;
  imprint: string;
  publisher: string;
  series: string;
  seriesNumber: string;
  /** Year of publication of this format, from its publication or on-sale date; null where neither is recorded. */
  year: number | null;
  /** Years of the work's earlier editions: they may stand in a notice of copyright. */
  earlierYears: readonly number[];
  /** 'Hardcover (jacket)' */
  formatName: string;
  /** Code of ONIX List 150, and how it is made. */
  form: string;
  formDetail: string | null;
  made: Made;
  /** Number of this format, thirteen digits; null where it has none yet. */
  isbn13: string | null;
  /** Numbers of the other formats of this edition. */
  siblings: readonly OtherNumber[];
  /** Numbers of other editions of the work, and of whatever else in the catalogue was seen in the file. */
  others: readonly OtherNumber[];
  /** Spent numbers that were seen in the file: never to be used again. */
  spent: readonly OtherNumber[];
  pages: number | null;
  trimWidthUm: number | null;
  trimHeightUm: number | null;
  interior: 'black and white' | 'colour' | null;
  insideCoverPrint: boolean;
  rightToLeft: boolean;
  paper: string;
  /** Thickness of that paper by the table of papers; null where it is not known. */
  bulk: Bulk | null;
  /** The printed sheet of its cover; null where nothing is printed. */
  sheet: SheetKind | null;
  printer: PrinterFigures;
  /** Page counts that its channels ask for: a multiple of so many. */
  pageMultiples: readonly { channelName: string; multiple: number }[];
  prices: readonly { currency: string; amountMinor: number }[];
  /** Of an audiobook. */
  durationMinutes: number | null;
  /** The unit in which lengths are told. */
  lengthUnit: 'mm' | 'in';
  figures: ProofFigures;
}
