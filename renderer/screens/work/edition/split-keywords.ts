/** Signs that part keywords wherever they stand, those of other scripts with them. */
const SIGNS = /[;,\n\r\t|•·、，；]/;

/** A slash parts only where blanks stand around it, since 'and/or' is one keyword. */
const SLASH = /\s\/\s/;

/** What a list begins its lines with: a dash, a star, a figure, a hash. */
const HEAD = /^(?:[-–*]\s+|\d{1,2}[.)]\s+|#)/;

/**
 * The keywords in a typed or pasted text, each once whatever its capitals: parted by semicolons, commas, bars, tabs,
 * dots of a list, new lines or slashes; the marks of a list and quotation marks around a keyword are left out.
 */
export function splitKeywords(text: string): string[] {
  const parts = text
    .split(SIGNS)
    .flatMap((part) => part.split(SLASH))
    .map((part) =>
      part
        .replace(/\s+/g, ' ')
        .trim()
        .replace(HEAD, '')
        .replace(/^["“”«‘](.*)["“”»’]$/, '$1')
        .trim(),
    );
  const seen = new Map<string, string>();
  for (const part of parts)
    if (part !== '' && !seen.has(part.toLowerCase())) seen.set(part.toLowerCase(), part);
  return [...seen.values()];
}
