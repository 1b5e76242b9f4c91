import {
  type BlockShape,
  type Isbn,
  type IsbnProblemCode,
  parseBlock,
  parseIsbn,
  type RangeTable,
  rangeTable,
} from '../rules/isbn/index.ts';
import { ownedColumns } from './owned-columns.ts';
import { type DelimitedRecord, delimitedRecords, delimiterOf } from './owned-records.ts';

/** What a list says of a number; null where it says nothing. */
export type OwnedUse = 'free' | 'assigned' | 'spent' | null;

export interface OwnedNumber {
  /** Line of the file, from one. */
  line: number;
  isbn: Isbn;
  use: OwnedUse;
  /** The day in the date column, YYYY-MM-DD; null where there is none. */
  on: string | null;
  title: string;
}

/** One cell that was not taken over. The repair is only offered. */
export interface OwnedProblem {
  line: number;
  /** Column, from one; null where the whole line or file is meant. */
  column: number | null;
  text: string;
  code: IsbnProblemCode | 'duplicate' | 'unknown-use' | 'unknown-date' | 'no-column' | 'too-large';
  message: string;
  hint: string | null;
  repair: string | null;
}

/** The numbers of one block, in the order of their index. */
export interface OwnedBlock {
  block: BlockShape;
  numbers: OwnedNumber[];
  /** Whether the list names every number of the block. */
  complete: boolean;
}

export interface OwnedNumbers {
  blocks: OwnedBlock[];
  problems: OwnedProblem[];
}

const MAX_CHARACTERS = 20_000_000;
const FREE = /^(?:free|unused|unassigned|not (?:used|assigned)|available|open|no|n|0|false)$/i;
const ASSIGNED = /^(?:assigned|used|issued|registered|published|taken|active|yes|y|1|true|x)$/i;
const SPENT = /^(?:spent|cancelled|canceled|withdrawn|void|invalid|misprinted|error|damaged)$/i;

/**
 * Reads a list of owned numbers from CSV text (comma, semicolon or tab; header or none; one column or many; numbers in
 * any written form) and groups them into blocks. Every cell of a number column that is no valid number is reported with
 * its line; nothing is mended. A column headed status, use or the like says which numbers are free, assigned or spent;
 * one headed date (YYYY-MM-DD) and one headed title are taken over too. Never throws.
 */
export function readOwnedNumbers(text: string, table: RangeTable = rangeTable()): OwnedNumbers {
  if (text.length > MAX_CHARACTERS)
    return onlyProblem('too-large', `The file has ${text.length} characters; ${MAX_CHARACTERS} is the most.`);
  const records = [...delimitedRecords(text, delimiterOf(text))];
  const columns = ownedColumns(records, table);
  if (columns.isbns.length === 0)
    return onlyProblem(
      'no-column',
      'No column of this file holds ISBNs: at least half of its cells must be numbers.',
    );
  const problems: OwnedProblem[] = [];
  const found = new Map<string, OwnedNumber>();
  for (const record of columns.header ? records.slice(1) : records) {
    const said = {
      use: readUse(record, columns.use, problems),
      on: readDay(record, columns.date, problems),
      title: columns.title < 0 ? '' : (record.cells[columns.title] ?? '').trim(),
    };
    for (const isbn of numbersOf(record, columns.isbns, problems, table)) {
      const before = found.get(isbn.isbn13);
      if (before === undefined) found.set(isbn.isbn13, { line: record.line, isbn, ...said });
      else problems.push(duplicate(record.line, before));
    }
  }
  return { blocks: intoBlocks(found.values(), table), problems };
}

function onlyProblem(code: OwnedProblem['code'], message: string): OwnedNumbers {
  return {
    blocks: [],
    problems: [{ line: 1, column: null, text: '', code, message, hint: null, repair: null }],
  };
}

function duplicate(line: number, before: OwnedNumber): OwnedProblem {
  return {
    line,
    column: null,
    text: before.isbn.hyphenated,
    code: 'duplicate',
    message: `${before.isbn.hyphenated} already stands on line ${before.line}; this line was not taken over.`,
    hint: null,
    repair: null,
  };
}

/** The different numbers of one record; the ten- and the thirteen-digit form of one number count once. */
function numbersOf(
  { line, cells }: DelimitedRecord,
  columns: readonly number[],
  problems: OwnedProblem[],
  table: RangeTable,
): Isbn[] {
  const numbers = new Map<string, Isbn>();
  for (const column of columns) {
    const text = (cells[column] ?? '').trim();
    if (text === '') continue;
    const parsed = parseIsbn(text, table);
    if (parsed.ok) numbers.set(parsed.isbn.isbn13, parsed.isbn);
    else {
      const { code, message, hint, repair } = parsed.problem;
      problems.push({ line, column: column + 1, text, code, message, hint, repair });
    }
  }
  return [...numbers.values()];
}

function readUse({ line, cells }: DelimitedRecord, column: number, problems: OwnedProblem[]): OwnedUse {
  const text = column < 0 ? '' : (cells[column] ?? '').trim();
  if (text === '') return null;
  if (FREE.test(text)) return 'free';
  if (ASSIGNED.test(text)) return 'assigned';
  if (SPENT.test(text)) return 'spent';
  const message = `'${text.slice(0, 40)}' does not say whether the number is free, assigned or spent.`;
  const hint = 'Write free, assigned or spent.';
  problems.push({ line, column: column + 1, text, code: 'unknown-use', message, hint, repair: null });
  return null;
}

function readDay({ line, cells }: DelimitedRecord, column: number, problems: OwnedProblem[]): string | null {
  const text = column < 0 ? '' : (cells[column] ?? '').trim();
  if (text === '') return null;
  const time = /^[0-9]{4}-[0-9]{2}-[0-9]{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  // A day that the month does not have, such as 2026-02-30, comes back as another day.
  if (!Number.isNaN(time) && new Date(time).toISOString().startsWith(text)) return text;
  const message = `'${text.slice(0, 40)}' is no day of the form YYYY-MM-DD; it was left out.`;
  problems.push({ line, column: column + 1, text, code: 'unknown-date', message, hint: null, repair: null });
  return null;
}

function intoBlocks(numbers: Iterable<OwnedNumber>, table: RangeTable): OwnedBlock[] {
  const blocks = new Map<string, OwnedBlock>();
  for (const number of numbers) {
    const { prefix, group, registrant, isbn13 } = number.isbn;
    const digits = prefix + group + registrant;
    const known = blocks.get(digits);
    if (known !== undefined) {
      known.numbers.push(number);
      continue;
    }
    const shape = parseBlock(isbn13, table);
    if (shape.ok) blocks.set(digits, { block: shape.block, numbers: [number], complete: false });
  }
  for (const owned of blocks.values()) {
    owned.numbers.sort((a, b) => (a.isbn.isbn13 < b.isbn.isbn13 ? -1 : 1));
    owned.complete = owned.numbers.length === owned.block.capacity;
  }
  return [...blocks.values()].sort((a, b) => (a.block.digits < b.block.digits ? -1 : 1));
}
