import type { IsbnForm } from './types.ts';

/** The stretch of a plain text that should hold the number, after quotes and label are taken off. */
export interface Stretch {
  from: number;
  to: number;
  /** The form that the wrapping states, or null where it states none. */
  form: IsbnForm | null;
}

/** `urn:isbn:` (RFC 8254), or the letters that stand before a printed number. */
const URN = /urn:isbn:/iy;
const LABEL = /(?:e-?)?(?:isbn|sbn|ean|gtin)/iy;
const LABEL_SIZE = /[- ]?1[034](?![0-9])/y;
/** 'no.' or a qualifier in brackets, then punctuation. */
const LABEL_END = /(?: ?(?:no|nr|number)\b)?(?: ?\([^()]*\))?[ :=#.]*/iy;
/** What a scanner may send before the digits: symbology identifiers (ISO/IEC 15424, from memory). */
const SCANNER_RETAIL = /\]E[03]/y;
/** Application identifier 01 of GS1 before a GTIN-14, bracketed, or bare after a symbology identifier. */
const SCANNER_GTIN = /(?:\](?:C1|d2|e0|Q3)01|\(01\) ?)(?=[0-9]{14})/y;
const QUOTES = new Map([
  ['"', '"'],
  ["'", "'"],
  ['“', '”'],
  ['„', '“'],
  ['‘', '’'],
  ['«', '»'],
]);

function lengthOf(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0].length ?? 0;
}

/** Takes surrounding spaces, quotes and a label off; nothing between the digits is touched. */
export function unwrap(text: string): Stretch {
  const stretch = unquote(trim({ from: 0, to: text.length, form: null }, text), text);
  const { from, to } = stretch;
  if (text.charCodeAt(from) <= 57 && text.charCodeAt(from) >= 48) return stretch;
  const urn = lengthOf(URN, text, from);
  if (urn > 0) return { from: from + urn, to, form: 'urn' };
  const retail = lengthOf(SCANNER_RETAIL, text, from);
  if (retail > 0) return { from: from + retail, to, form: 'scan' };
  const gtin = lengthOf(SCANNER_GTIN, text, from);
  if (gtin > 0) return { from: from + gtin, to, form: 'gtin14' };
  const label = lengthOf(LABEL, text, from);
  if (label === 0) return stretch;
  const after = from + label + sizeInLabel(text, from + label, to);
  return trim({ from: after + lengthOf(LABEL_END, text, after), to, form: null }, text);
}

/** 'ISBN 10' may name the form or begin a number whose first digits are 10: the count of all digits decides. */
function sizeInLabel(text: string, at: number, to: number): number {
  const size = lengthOf(LABEL_SIZE, text, at);
  if (size === 0) return 0;
  const digits = text.slice(at, to).replace(/[^0-9Xx]/g, '').length;
  return digits === 10 || digits === 13 ? 0 : size;
}

function trim({ from, to, form }: Stretch, text: string): Stretch {
  let first = from;
  let last = to;
  while (first < last && text.charCodeAt(first) === 32) first += 1;
  while (last > first && text.charCodeAt(last - 1) === 32) last -= 1;
  return { from: first, to: last, form };
}

/** Quotes around the whole, the ="…" of spreadsheets, or the apostrophe that marks a cell as text. */
function unquote(stretch: Stretch, text: string): Stretch {
  const { to, form } = stretch;
  const from = stretch.from + (text.startsWith('="', stretch.from) ? 1 : 0);
  const closing = QUOTES.get(text.charAt(from));
  if (closing === undefined) return stretch;
  if (to - from > 1 && text.charAt(to - 1) === closing)
    return trim({ from: from + 1, to: to - 1, form }, text);
  return text.charAt(from) === "'" ? trim({ from: from + 1, to, form }, text) : stretch;
}
