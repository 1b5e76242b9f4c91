import type { Contributor, EditionFields } from '../../contract/editions.ts';
import type { FormatFields, Price } from '../../contract/formats.ts';
import { type SheetFieldKey, sheetField } from '../../contract/sheet-fields.ts';
import {
  AUDIENCES,
  CASE_KINDS,
  FINISHES,
  INTERIOR_COLOURS,
  LISTING_STANDINGS,
  type ListingStanding,
} from '../../contract/terms.ts';
import { parseIsbn, type RangeTable, rangeTable } from '../../rules/isbn/index.ts';
import { minorDigits } from '../../rules/money.ts';
import { type DecimalMark, readAmount } from './amounts.ts';
import { cellText, FAILED_FORMULA, type Repairs } from './cell-text.ts';
import { splitList } from './cells.ts';
import { type DateOrder, readDate } from './dates.ts';
import type { MatchedColumn } from './match.ts';
import { readContributors, readSubjects } from './subjects.ts';
import type { TableRow } from './table.ts';
import { readDetail, readFlag, readForm, readLanguage, readLength, readTrim } from './words.ts';

/** One cell, or row, that cannot be taken over as it stands. A repair is only offered. */
export interface RowProblem {
  /** From one, as a spreadsheet counts. */
  row: number;
  /** From zero; null where the whole row is meant. */
  column: number | null;
  header: string;
  text: string;
  /** One sentence: what is wrong, and how to mend it. */
  message: string;
  repair: string | null;
}

/** A row as it was understood. Fields without a cell, or with an empty one, are not there. */
export interface ReadRow {
  number: number;
  work: string;
  edition: Partial<EditionFields>;
  format: Partial<FormatFields>;
  isbn13: string | null;
  listings: { channel: string; standing: ListingStanding; on: string | null }[];
  problems: RowProblem[];
}

/** A match that is complete: the person has said what had to be said. */
export type ChosenColumn = Pick<MatchedColumn, 'index' | 'header' | 'detail' | 'reading'> & {
  field: SheetFieldKey | null;
};

/** What a cell is refused with. */
class CellTrouble extends Error {
  readonly repair: string | null;

  constructor(message: string, repair: string | null = null) {
    super(message);
    this.repair = repair;
  }
}

type Taker = (row: ReadRow, text: string, column: ChosenColumn, table: RangeTable) => void;

const oneOf =
  <const T extends string>(words: readonly T[], take: (row: ReadRow, word: T) => void): Taker =>
  (row, text) => {
    const word = words.find((entry) => entry === text.toLowerCase());
    if (word === undefined) throw new CellTrouble(`Write ${words.join(', ')}.`);
    take(row, word);
  };

const flag =
  (key: 'largePrint' | 'rightToLeft' | 'insideCoverPrint'): Taker =>
  (row, text) => {
    const value = readFlag(text);
    if (value === null) throw new CellTrouble('Write yes or no.');
    row.format[key] = value;
  };

const whole = (text: string, least: number, most: number): number => {
  const plain = text.replaceAll(/[\s,.'’](?=[0-9]{3}(?![0-9]))/g, '').replace(/\.0+$/, '');
  const value = /^[0-9]{1,9}$/.test(plain) ? Number(plain) : Number.NaN;
  if (!(value >= least && value <= most))
    throw new CellTrouble(`Write a whole number from ${least} to ${most.toLocaleString('en')}.`);
  return value;
};

const longest = (text: string, most: number): string => {
  if (text.length > most) throw new CellTrouble(`Keep this under ${most.toLocaleString('en')} characters.`);
  return text;
};

const plainText =
  (part: 'edition' | 'format', key: string, most = 20_000): Taker =>
  (row, text) => {
    (row[part] as Record<string, unknown>)[key] = longest(text, most);
  };

const date =
  (key: 'publicationDate' | 'onSaleDate'): Taker =>
  (row, text, column) => {
    const value = readDate(text, column.reading as DateOrder | null);
    if (value === null)
      throw new CellTrouble('This is no date as the column has them; write it as YYYY-MM-DD.');
    row.format[key] = value;
  };

const price =
  (tax: Price['tax']): Taker =>
  (row, text, column) => {
    const digits = minorDigits(column.detail);
    const amountMinor = readAmount(text, column.reading as DecimalMark, digits);
    if (amountMinor === null)
      throw new CellTrouble(
        `This is no amount in ${column.detail}; write digits with ${digits} decimals at most.`,
      );
    const prices = row.format.prices ?? [];
    if (prices.some(({ currency }) => currency === column.detail))
      throw new CellTrouble(
        `There is a price in ${column.detail} already; keep one with tax or one without.`,
      );
    row.format.prices = [...prices, { currency: column.detail, amountMinor, tax }];
  };

const length =
  (key: 'trimWidthUm' | 'trimHeightUm'): Taker =>
  (row, text) => {
    const value = readLength(text);
    if (value === null || value === 0) throw new CellTrouble('Write a length in millimetres.');
    row.format[key] = value;
  };

function people(row: ReadRow, text: string, { detail }: ChosenColumn): void {
  const read: Contributor[] = readContributors(text);
  const named = detail === '' || detail === 'A01' ? read : read.map(({ name }) => ({ role: detail, name }));
  const all = [...(row.edition.contributors ?? []), ...named];
  if (all.length > 100) throw new CellTrouble('An edition has at most 100 contributors.');
  for (const { name } of named) longest(name, 2_000);
  row.edition.contributors = all;
}

function number(row: ReadRow, text: string, _column: ChosenColumn, table: RangeTable): void {
  const parsed = parseIsbn(text, table);
  if (!parsed.ok) {
    const { message, hint, repair } = parsed.problem;
    throw new CellTrouble([message, hint].filter(Boolean).join(' '), repair);
  }
  const { isbn13 } = parsed.isbn;
  if (row.isbn13 !== null && row.isbn13 !== isbn13)
    throw new CellTrouble('This row has two different numbers; a format has one.');
  row.isbn13 = isbn13;
}

function listing(row: ReadRow, text: string, { detail }: ChosenColumn): void {
  const [word = '', on] = text.toLowerCase().split(/\s+(?:since\s+)?(?=\d{4}-)/);
  const standing = /^(?:yes|y|x|true|1|listed)$/.test(word)
    ? 'unsent'
    : LISTING_STANDINGS.find((entry) => entry === word);
  if (/^(?:no|n|false|0)$/.test(word)) return;
  const day = on === undefined ? null : readDate(on, 'ymd');
  if (standing === undefined || (on !== undefined && day === null))
    throw new CellTrouble(
      `Write ${LISTING_STANDINGS.join(', ')}, or yes; a day may follow, as in selling 2024-05-01.`,
    );
  row.listings.push({ channel: detail, standing, on: day });
}

function minutes(text: string): number {
  const clock = /^([0-9]{1,4}):([0-5][0-9])(?::[0-5][0-9])?$/.exec(text);
  return clock
    ? whole(String(Number(clock[1]) * 60 + Number(clock[2])), 1, 100_000)
    : whole(text, 1, 100_000);
}

const TAKERS: { [K in SheetFieldKey]: Taker } = {
  work: (row, text) => {
    row.work = longest(text, 2_000);
  },
  editionNumber: (row, text) => {
    row.edition.number = whole(text.replace(/(?:st|nd|rd|th)(?: edition)?$/i, ''), 1, 999);
  },
  statement: plainText('edition', 'statement'),
  title: plainText('edition', 'title', 2_000),
  subtitle: plainText('edition', 'subtitle'),
  contributors: people,
  language: (row, text) => {
    const code = readLanguage(text);
    if (code === null)
      throw new CellTrouble('Write the language as three letters (ISO 639-2/B), such as eng.');
    row.edition.language = code;
  },
  imprint: plainText('edition', 'imprint'),
  series: plainText('edition', 'series'),
  seriesNumber: plainText('edition', 'seriesNumber'),
  description: plainText('edition', 'description'),
  keywords: (row, text) => {
    const words = splitList(text);
    if (words.length > 200) throw new CellTrouble('An edition has at most 200 keywords.');
    row.edition.keywords = words.map((word) => longest(word, 2_000));
  },
  subjects: (row, text) => {
    row.edition.subjects = readSubjects(text);
  },
  audience: oneOf(AUDIENCES, (row, word) => {
    row.edition.audience = word;
  }),
  ageFrom: (row, text) => {
    row.edition.ageFrom = whole(text, 0, 120);
  },
  ageTo: (row, text) => {
    row.edition.ageTo = whole(text, 0, 120);
  },
  isbn: number,
  form: (row, text) => {
    const word = readForm(text);
    if (word === null)
      throw new CellTrouble(
        'This names no form; write paperback, hardcover, e-book, audiobook or a code of ONIX List 150.',
      );
    // What a column of its own says goes before what the form's word says beside.
    row.format = { ...word, ...row.format, form: word.form };
  },
  formDetail: (row, text) => {
    const code = readDetail(text);
    if (code === null) throw new CellTrouble('Write EPUB, PDF, MP3, AAC or a code of ONIX List 175.');
    row.format.formDetail = code;
  },
  caseKind: oneOf(CASE_KINDS, (row, word) => {
    row.format.caseKind = word;
  }),
  largePrint: flag('largePrint'),
  rightToLeft: flag('rightToLeft'),
  insideCoverPrint: flag('insideCoverPrint'),
  publicationDate: date('publicationDate'),
  onSaleDate: date('onSaleDate'),
  price: price('including'),
  priceBeforeTax: price('excluding'),
  pages: (row, text) => {
    row.format.pages = whole(text, 1, 20_000);
  },
  duration: (row, text) => {
    row.format.durationMinutes = minutes(text);
  },
  trimWidth: length('trimWidthUm'),
  trimHeight: length('trimHeightUm'),
  trimSize: (row, text) => {
    const trim = readTrim(text);
    if (trim === null) throw new CellTrouble('Write width and height, such as 152 x 229 mm or 6 x 9 in.');
    row.format.trimWidthUm = trim.width;
    row.format.trimHeightUm = trim.height;
  },
  interiorColour: oneOf(INTERIOR_COLOURS, (row, word) => {
    row.format.interiorColour = word;
  }),
  paper: plainText('format', 'paper'),
  finish: oneOf(FINISHES, (row, word) => {
    row.format.finish = word;
  }),
  note: plainText('format', 'note'),
  listing,
};

/** Reads one row by its columns; every cell that cannot be taken over is named. Never throws. */
export function readRow(
  row: TableRow,
  columns: readonly ChosenColumn[],
  repairs: Repairs = new Map(),
  table: RangeTable = rangeTable(),
): ReadRow {
  const read: ReadRow = {
    number: row.number,
    work: '',
    edition: {},
    format: {},
    isbn13: null,
    listings: [],
    problems: [],
  };
  for (const column of columns) {
    if (column.field === null) continue;
    const text = cellText(row, column.index, repairs);
    if (text === '') continue;
    try {
      if (FAILED_FORMULA.test(text))
        throw new CellTrouble('A formula of the spreadsheet failed here; write the text itself.');
      TAKERS[column.field](read, text, column, table);
    } catch (error) {
      if (!(error instanceof CellTrouble)) throw error;
      const name = column.header === '' ? sheetField(column.field).header : column.header;
      const place = { row: row.number, column: column.index, header: name, text: text.slice(0, 200) };
      read.problems.push({ ...place, message: error.message, repair: error.repair });
    }
  }
  return read;
}
