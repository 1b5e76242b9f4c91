/** Most lines that are checked at once, and the longest line, as the contract has them. */
export const MOST_LINES = 10_000;
export const LONGEST_LINE = 500;

/** What was pasted, parted into lines that can be checked, with how many could not be sent. */
export interface CheckLines {
  texts: string[];
  /** Lines longer than any number with words around it. */
  tooLong: number;
  /** Lines beyond the most that are checked at once. */
  beyond: number;
}

/** The lines of a pasted text that hold anything, as typed. */
export function linesOf(text: string): CheckLines {
  const lines = text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '');
  const fit = lines.filter((line) => line.length <= LONGEST_LINE);
  return {
    texts: fit.slice(0, MOST_LINES),
    tooLong: lines.length - fit.length,
    beyond: Math.max(fit.length - MOST_LINES, 0),
  };
}

/** The text with the first line that reads `line` replaced; everything else stays as typed. */
export function replaceLine(text: string, line: string, by: string): string {
  const parts = text.split(/(\r\n|\r|\n)/);
  const place = parts.indexOf(line);
  return place < 0 ? text : parts.with(place, by).join('');
}

/** A line parted at the place of its problem: what stands before, the sign itself, what stands after. */
export function markedParts(text: string, position: number | null): [string, string, string] {
  if (position === null || position < 0 || position >= text.length) return [text, '', ''];
  const sign = String.fromCodePoint(text.codePointAt(position) ?? 0);
  return [text.slice(0, position), sign, text.slice(position + sign.length)];
}
