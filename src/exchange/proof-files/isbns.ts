import { tryIsbn } from '../../rules/isbn/index.ts';

/** An ISBN seen in text: as written, its thirteen digits (null where it is none), and where it begins. */
export interface IsbnInText {
  raw: string;
  isbn13: string | null;
  index: number;
}

/** Signs that stand for a hyphen or a space between digits in set text. */
const DASH = '[-\\u00ad\\u2010-\\u2015\\u2212\\u00a0\\u2000-\\u200b\\u202f\\u2060\\ufeff ]';
const HYPHEN = '[-\\u00ad\\u2010-\\u2015\\u2212]';
/** 13 digits from 978 or 979, parted or not. */
const THIRTEEN = `97[89](?:${DASH}{0,2}[0-9]){10}`;
/** 'ISBN-13 (paperback): ' and then anything that starts out as a number. */
const LABELLED = `(?:e-?)?isbn(?:${DASH}?1[03](?![0-9]))?(?:${DASH}{0,3}\\([^()]{0,40}\\))?[\\s:.#=]{0,6}((?:[0-9]${DASH}{0,2}){8,16}[0-9xX]?)`;
const SOUGHT = new RegExp(`${LABELLED}|(?<![0-9]${HYPHEN}?)(${THIRTEEN})(?!${HYPHEN}?[0-9])`, 'giu');
const SEPARATORS = new RegExp(DASH, 'gu');

const bare = (text: string) => text.replaceAll(SEPARATORS, '');

/** The number that a run of digits begins with; others may follow it: a price, a year, a second number. */
function beginning(raw: string): { raw: string; isbn13: string | null } {
  const sizes = /^97[89]/.test(bare(raw)) ? [13, 10] : [10, 13];
  for (const size of sizes) {
    const part = new RegExp(`^(?:[0-9Xx]${DASH}{0,2}){${size - 1}}[0-9Xx]`, 'u').exec(raw)?.[0];
    const read = part === undefined ? null : tryIsbn(bare(part));
    if (part !== undefined && read !== null) return { raw: part, isbn13: read.isbn.isbn13 };
  }
  return { raw, isbn13: null };
}

/**
 * ISBNs in a text: thirteen digits that begin with 978 or 979, and anything that is called an ISBN. Hyphens are passed over
 * wherever they stand. Ten digits without a name are not taken for one, since telephone numbers look alike.
 */
export function isbnsIn(text: string): IsbnInText[] {
  const found: IsbnInText[] = [];
  const sought = new RegExp(SOUGHT);
  for (let match = sought.exec(text); match !== null; match = sought.exec(text)) {
    const run = (match[1] ?? match[2] ?? '').trim();
    const index = match.index + match[0].lastIndexOf(run);
    const { raw, isbn13 } = beginning(run);
    sought.lastIndex = index + raw.length;
    found.push({ raw: raw.slice(0, 100), isbn13, index });
  }
  return found;
}
