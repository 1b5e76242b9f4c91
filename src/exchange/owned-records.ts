/** One record of a delimited text and the line of the file it begins on, counted from one. */
export interface DelimitedRecord {
  line: number;
  cells: readonly string[];
}

/** Comma, semicolon or tab, whichever stands most often outside quotes in the first lines; a comma when none does. */
export function delimiterOf(text: string): ',' | ';' | '\t' {
  // The sample may end inside a quoted cell, which then has no closing quote.
  const sample = text.slice(0, 20_000).replace(/"[^"]*(?:"|$)/g, '');
  const count = (mark: string): number => sample.split(mark).length - 1;
  const [tabs, semicolons, commas] = [count('\t'), count(';'), count(',')];
  if (tabs > 0 && tabs >= semicolons && tabs >= commas) return '\t';
  return semicolons > commas ? ';' : ',';
}

/**
 * The records of a delimited text (RFC 4180, section 2, any line ending): quoted cells may hold delimiters, line breaks and
 * doubled quotes. A quote inside an unquoted cell is kept as it is; an unclosed one runs to the end. Blank lines are
 * left out.
 */
export function* delimitedRecords(text: string, delimiter: string): Generator<DelimitedRecord> {
  let line = 1;
  let cells: string[] = [];
  let begun = line;
  let at = text.startsWith('\uFEFF') ? 1 : 0;
  while (at < text.length) {
    const { cell, end } = readCell(text, at, delimiter);
    cells.push(cell);
    line += lineBreaks(text, at, end);
    const mark = text[end];
    at = end + 1;
    if (mark === delimiter && at < text.length) continue;
    if (mark === delimiter) cells.push('');
    if (mark === '\r' && text[at] === '\n') at += 1;
    if (cells.some((one) => one.trim() !== '')) yield { line: begun, cells };
    if (mark === '\r' || mark === '\n') line += 1;
    begun = line;
    cells = [];
  }
}

/** One cell from `start`; `end` is the index of the delimiter or line break behind it, or the end of the text. */
function readCell(text: string, start: number, delimiter: string): { cell: string; end: number } {
  if (text[start] !== '"') {
    const end = endOfPlain(text, start, delimiter);
    return { cell: text.slice(start, end), end };
  }
  let cell = '';
  let from = start + 1;
  for (;;) {
    const quote = text.indexOf('"', from);
    if (quote < 0) return { cell: cell + text.slice(from), end: text.length };
    cell += text.slice(from, quote);
    if (text[quote + 1] !== '"') {
      const end = endOfPlain(text, quote + 1, delimiter);
      return { cell: cell + text.slice(quote + 1, end), end };
    }
    cell += '"';
    from = quote + 2;
  }
}

function endOfPlain(text: string, from: number, delimiter: string): number {
  let end = from;
  while (end < text.length && text[end] !== delimiter && text[end] !== '\n' && text[end] !== '\r') end += 1;
  return end;
}

function lineBreaks(text: string, from: number, to: number): number {
  return text.slice(from, to).match(/\r\n|\r|\n/g)?.length ?? 0;
}
