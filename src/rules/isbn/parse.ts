import { type PlainText, plainText } from './characters.ts';
import { readClean, readLabelled } from './clean.ts';
import { judgeByCount } from './count.ts';
import { judge } from './judge.ts';
import { refuse } from './problem.ts';
import { type RangeTable, rangeTable } from './range-table.ts';
import { MAX_LENGTH, refusedAtSight } from './sight.ts';
import { spreadsheetDamage } from './spreadsheet.ts';
import { explainText, noNumber, severalInRun } from './surroundings.ts';
import type { IsbnProblem, ParsedIsbn, ParseResult, RefusedIsbn } from './types.ts';
import { type Stretch, unwrap } from './wrapping.ts';
import { collect } from './written.ts';

/** Remarks in brackets and closing punctuation after the number: '(paperback) :'. */
const REMARKS = /^(?: ?\([^()]*\)| ?\[[^[\]]*\])* ?[.,:;>]?$/;
const ADD_ON = /^\+ ?[0-9]{5}$/;

/**
 * Reads one ISBN out of what was typed, pasted, scanned or imported: 13 or 10 digits with any dashes and spaces, any
 * script's digits, a label, `urn:isbn:`, a GTIN-14 with indicator 0, a scan with its five-digit add-on, a remark in
 * brackets. Nothing is mended silently: what is wrong is named, and a repair is offered where one can be told.
 * Hyphens must stand between elements as the range table parts them; a number with fewer hyphens is accepted.
 * Never throws. Why a text is refused is worked out when `problem` is read, where one look shows that it is.
 */
export function parseIsbn(text: string, table: RangeTable = rangeTable()): ParseResult {
  const clean = readClean(text, table) ?? readLabelled(text, table);
  if (clean !== null) return clean;
  return refusedAtSight(text) ? new RefusedAtSight(text, table) : readCarefully(text, table);
}

/**
 * The number that parseIsbn would read, or null without a word why: for looking through many texts of which few are
 * numbers.
 */
export function tryIsbn(text: string, table: RangeTable = rangeTable()): ParsedIsbn | null {
  const clean = readClean(text, table) ?? readLabelled(text, table);
  if (clean !== null || refusedAtSight(text)) return clean;
  const careful = readCarefully(text, table);
  return careful.ok ? careful : null;
}

/** A refusal whose reason nobody has asked for yet; the problem itself is a plain record. */
class RefusedAtSight implements RefusedIsbn {
  declare readonly ok: false;
  readonly #text: string;
  readonly #table: RangeTable;
  #problem: IsbnProblem | null = null;

  constructor(text: string, table: RangeTable) {
    this.ok = false;
    this.#text = text;
    this.#table = table;
  }

  get problem(): IsbnProblem {
    this.#problem ??= this.#explain();
    return this.#problem;
  }

  #explain(): IsbnProblem {
    const read = readCarefully(this.#text, this.#table);
    if (read.ok) throw new Error('A text that is refused at sight turned out to be a number');
    return read.problem;
  }
}

function readCarefully(typed: string, table: RangeTable): ParseResult {
  if (typed.length > MAX_LENGTH)
    return refuse('too-long', `This text has ${typed.length} characters; a number is far shorter.`, {
      hint: 'Enter one number at a time.',
    });
  const plain = plainText(typed);
  const stretch = unwrap(plain.text);
  if (stretch.from >= stretch.to)
    return plain.text.trim() === ''
      ? refuse('empty', 'Nothing was entered.', { hint: 'Type an ISBN of 13 or 10 digits.' })
      : noNumber();
  const end = endOfNumber(plain.text, stretch);
  if (end === stretch.to) return readAll(plain, stretch, table);
  const tail = plain.text.slice(end, stretch.to);
  if (REMARKS.test(tail) && !/[0-9]{9}/.test(tail.replace(/[- ]/g, '')))
    return readAll(plain, { ...stretch, to: end }, table);
  if (ADD_ON.test(tail)) {
    const written = collect(plain, stretch.from, end);
    if (written.digits.length === 13) return judge(written, 'scan', table, tail.slice(-5));
  }
  return spreadsheetDamage(plain, stretch, table) ?? explainText(plain, stretch, table);
}

/** Where digits, hyphens and spaces end, an X closing them included; spaces at the end are left out. */
function endOfNumber(text: string, { from, to }: Stretch): number {
  let end = from;
  while (end < to && isNumberCharacter(text.charCodeAt(end))) end += 1;
  if (end > from && /[Xx]/.test(text.charAt(end)) && !/[\p{L}\p{N}]/u.test(text.charAt(end + 1)))
    return end + 1;
  while (end > from && text.charCodeAt(end - 1) === 32) end -= 1;
  return end;
}

function isNumberCharacter(code: number): boolean {
  return (code >= 48 && code <= 57) || code === 45 || code === 32;
}

function readAll(plain: PlainText, { from, to, form }: Stretch, table: RangeTable): ParseResult {
  const written = collect(plain, from, to);
  if (written.digits === '') return noNumber();
  return severalInRun(written, table) ?? judgeByCount(written, form, table);
}
