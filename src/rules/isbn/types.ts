/** One valid ISBN, taken apart (ISO 2108; STANDARDS A3). Every field is plain text; digits are ASCII. */
export interface Isbn {
  /** Thirteen digits. */
  isbn13: string;
  prefix: '978' | '979';
  /** Registration group element, 1–5 digits. */
  group: string;
  /** Registrant element, 1–7 digits. */
  registrant: string;
  /** Publication element, 1–7 digits. */
  publication: string;
  /** Check digit of the thirteen-digit form. */
  check: string;
  /** The five elements joined by hyphens. */
  hyphenated: string;
  /** The registration group's name in the range table. */
  agency: string;
  /** The ten-character form, X in upper case; null for prefix 979, which has none. */
  isbn10: string | null;
}

/** What was written besides the bare number. */
export type IsbnForm = 'isbn13' | 'isbn10' | 'gtin14' | 'urn' | 'scan';

export const PROBLEM_CODES = [
  'empty',
  'no-number',
  'letter',
  'stray-character',
  'too-short',
  'too-long',
  'lost-zeros',
  'spreadsheet-damage',
  'check-digit',
  'swapped-digits',
  'wrong-digit',
  'not-a-book-number',
  'music-number',
  'packaging-number',
  'range-not-in-use',
  'hyphens-misplaced',
  'several-numbers',
  'extra-text',
  'registrant-incomplete',
  'ambiguous',
] as const;

export type IsbnProblemCode = (typeof PROBLEM_CODES)[number];

/** Why a text is not accepted. A repair is only ever offered: the caller asks the person before using it. */
export interface IsbnProblem {
  code: IsbnProblemCode;
  /** One sentence: what is wrong and where. */
  message: string;
  /** How to mend it, or null where nothing useful can be said. */
  hint: string | null;
  /** 0-based UTF-16 index into the text as typed, where one place can be named. */
  position: number | null;
  /** A hyphenated ISBN (for blocks: a hyphenated prefix) that may be what was meant. */
  repair: string | null;
}

/** A valid number, how it was written, and the digits of a bar-code add-on scanned with it. */
export interface ParsedIsbn {
  ok: true;
  isbn: Isbn;
  form: IsbnForm;
  addOn: string | null;
}

export interface RefusedIsbn {
  ok: false;
  problem: IsbnProblem;
}

export type ParseResult = ParsedIsbn | RefusedIsbn;

/** The five elements of a number, without judging its check digit. */
export interface IsbnParts {
  prefix: '978' | '979';
  group: string;
  registrant: string;
  publication: string;
  check: string;
  agency: string;
}

/** A run of numbers that share one registrant element (STANDARDS A8). */
export interface BlockShape {
  prefix: '978' | '979';
  group: string;
  registrant: string;
  agency: string;
  /** 10^publicationDigits numbers. */
  capacity: number;
  /** Prefix, group and registrant without hyphens. */
  digits: string;
  /** Prefix, group and registrant with hyphens, none at the end: 979-8-969999. */
  hyphenatedPrefix: string;
  /** ISBN-13 of the first and of the last number, digits only. */
  first: string;
  last: string;
  publicationDigits: number;
}

export type BlockResult = { ok: true; block: BlockShape } | RefusedIsbn;
