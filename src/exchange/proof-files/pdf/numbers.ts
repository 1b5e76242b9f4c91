import type { SeenIsbn } from '../../../contract/proof-checks/facts.ts';
import { isbnsIn } from '../isbns.ts';
import type { PageText } from './text.ts';

/** Whether a page may hold a number: the digits of a prefix near one another, or the word itself. */
export const mayHoldIsbn = (text: string) => /9\D{0,2}7\D{0,2}[89]|i\s?s\s?b\s?n/i.test(text);

/** A number that goes on in the next line stands in one piece: the end of the line is a space then. */
const joined = (text: string) => text.replace(/(?<=[\d-] ?)\n(?=\s?\d)/g, ' ');

/** The ISBNs on a page, each with its place. */
export function isbnsOn(page: number, { text, boxOf }: PageText): SeenIsbn[] {
  return isbnsIn(joined(text)).map(({ raw, isbn13, index }) => ({
    page,
    raw,
    isbn13,
    box: boxOf(index, index + raw.length),
  }));
}
