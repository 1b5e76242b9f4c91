/** What a spreadsheet may run as a formula when a cell begins with it, also behind blanks or in full width. */
const FORMULA = /^'*\s*[=+\-@＝＋－＠]|^'*[\t\r]/;
const WRITTEN_SAFE = /^'(?='*\s*[=+\-@＝＋－＠]|'*[\t\r])/;

/**
 * A text for a cell of a CSV file, which a spreadsheet must not run: what looks like a formula gets an apostrophe in
 * front. `fromSafe` takes exactly that one away again. A plain negative number is left as it is.
 */
export function toSafe(text: string): string {
  return FORMULA.test(text) && !/^-[0-9]+(?:[.,][0-9]+)?$/.test(text) ? `'${text}` : text;
}

/** The text as it was before `toSafe`. */
export function fromSafe(text: string): string {
  return text.replace(WRITTEN_SAFE, '');
}

/** Several texts in one cell: 'salt; sea'; one that holds a semicolon, or could be taken for quoted, is quoted. */
export function joinList(parts: readonly string[]): string {
  return parts
    .map((part) => (/[;"]/.test(part) || part !== part.trim() ? `"${part.replaceAll('"', '""')}"` : part))
    .join('; ');
}

/** The texts of one cell, blanks around them and empty ones left out. An unclosed quote runs to the end. */
export function splitList(cell: string): string[] {
  const parts: string[] = [];
  let at = 0;
  while (at < cell.length) {
    const begin = /\S/.exec(cell.slice(at));
    if (begin === null) break;
    at += begin.index;
    if (cell[at] !== '"') {
      const end = cell.indexOf(';', at);
      parts.push(cell.slice(at, end < 0 ? cell.length : end).trim());
      at = end < 0 ? cell.length : end + 1;
      continue;
    }
    const quoted = /^"((?:[^"]|"")*)"?/.exec(cell.slice(at));
    at += quoted?.[0].length ?? 1;
    const end = cell.indexOf(';', at);
    const tail = cell.slice(at, end < 0 ? cell.length : end).trim();
    parts.push([(quoted?.[1] ?? '').replaceAll('""', '"'), tail].filter((part) => part !== '').join(' '));
    at = end < 0 ? cell.length : end + 1;
  }
  return parts.filter((part) => part !== '');
}

/** Micrometres as millimetres without loss: 152400 is '152.4'. */
export function millimetres(um: number): string {
  return String(um / 1000);
}
