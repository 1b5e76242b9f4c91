import type { Step } from '../../contract/jobs.ts';
import { Refusal } from '../../contract/refusal.ts';
import { REPORT_FIELDS, type Reading, type ReportFieldKey } from '../../contract/sheet-fields.ts';
import { parseIsbn } from '../../rules/isbn/index.ts';
import { minorDigits } from '../../rules/money.ts';
import type { ReportRow } from '../../rules/reconcile.ts';
import { currencyIn, type DecimalMark, readAmount } from './amounts.ts';
import { cellText, FAILED_FORMULA, type Repairs } from './cell-text.ts';
import { type DateOrder, readDate } from './dates.ts';
import type { OpenSheet } from './open-sheet.ts';
import type { RowProblem } from './read-row.ts';
import { checkSettled } from './settle.ts';
import type { TableRow } from './table.ts';

/** A column of a report that is settled. */
export interface ReportColumn {
  index: number;
  header: string;
  field: ReportFieldKey | null;
  detail: string;
  reading: Reading | null;
}

interface Trouble {
  message: string;
  repair: string | null;
}
type Taker = (row: Draft, text: string, column: ReportColumn) => Trouble | null;
type Draft = { -readonly [K in keyof ReportRow]: ReportRow[K] };

const trouble = (message: string, repair: string | null = null): Trouble => ({ message, repair });

/** Words for whether something is sold, as reports have them; common practice, no source. */
const SOLD =
  /^(?:yes|y|true|1|x|✓|active|available|live|on sale|for sale|selling|sold|published|in stock|in print|enabled|orderable)$/i;
const LISTED = /^(?:listed|out of stock|temporarily (?:unavailable|out of stock)|pre-?order)$/i;
const NOT_SOLD =
  /^(?:no|n|false|0|-|inactive|not available|unavailable|removed|off sale|not on sale|not for sale|withdrawn|deleted|retired|discontinued|out of print|blocked|suspended|disabled|ended|gone|archived|taken down|unlisted|draft|pending|in review|processing)$/i;

function number(row: Draft, text: string): Trouble | null {
  const parsed = parseIsbn(text);
  if (!parsed.ok) {
    const { message, hint, repair } = parsed.problem;
    return trouble([message, hint].filter(Boolean).join(' '), repair);
  }
  const { isbn13 } = parsed.isbn;
  if (row.isbn13 !== null && row.isbn13 !== isbn13)
    return trouble('This row has two different numbers; leave one of the columns out.');
  row.isbn13 = isbn13;
  return null;
}

function price(row: Draft, text: string, { detail, reading }: ReportColumn): Trouble | null {
  const named = currencyIn(text);
  // A column may hold several currencies, each cell naming its own.
  const currency = named?.sure ? named.currency : detail;
  const amountMinor = readAmount(text, reading as DecimalMark, minorDigits(currency));
  if (amountMinor === null)
    return trouble(
      `This is no amount in ${currency}; write digits with ${minorDigits(currency)} decimals at most.`,
    );
  row.prices = [...row.prices, { currency, amountMinor }];
  return null;
}

const TAKERS: { [K in ReportFieldKey]: Taker } = {
  isbn: number,
  reference: (row, text) => {
    if (text.length > 200) return trouble('Keep this under 200 characters.');
    row.reference = text;
    return null;
  },
  title: (row, text) => {
    if (text.length > 2_000) return trouble('Keep this under 2,000 characters.');
    row.title = text;
    return null;
  },
  price,
  onSaleDate: (row, text, { reading }) => {
    row.onSaleDate = readDate(text, reading as DateOrder | null);
    return row.onSaleDate === null
      ? trouble('This is no date as the column has them; write it as YYYY-MM-DD.')
      : null;
  },
  standing: (row, text) => {
    if (!SOLD.test(text) && !LISTED.test(text) && !NOT_SOLD.test(text))
      return trouble('This does not tell whether it is sold there; write yes or no.');
    row.selling = LISTED.test(text) ? null : SOLD.test(text);
    return null;
  },
};

/** The columns with the headers of the file; throws BAD_INPUT where something about them was not said. */
function settledReport(table: OpenSheet, columns: readonly Omit<ReportColumn, 'header'>[]): ReportColumn[] {
  const settled = columns.map((column) => ({ ...column, header: table.header[column.index] ?? '' }));
  const missing = settled.find(({ index }) => index >= table.header.length);
  if (missing)
    throw new Refusal(
      'BAD_INPUT',
      `This file has no column ${missing.index + 1}; look at it again.`,
      'columns',
    );
  checkSettled(settled, REPORT_FIELDS, []);
  if (!settled.some(({ field }) => field === 'isbn' || field === 'reference'))
    throw new Refusal(
      'BAD_INPUT',
      'Say which column holds the ISBNs, or the channel’s references.',
      'columns',
    );
  return settled;
}

/** One row, and every cell of it that cannot be read. A row without number and reference is named as a whole. */
function readReportRow(
  tableRow: TableRow,
  columns: readonly ReportColumn[],
  repairs: Repairs,
): { row: ReportRow; problems: RowProblem[] } {
  const row: Draft = {
    isbn13: null,
    reference: '',
    title: '',
    prices: [],
    onSaleDate: null,
    selling: null,
  };
  const problems: RowProblem[] = [];
  for (const column of columns) {
    const text = column.field === null ? '' : cellText(tableRow, column.index, repairs);
    if (column.field === null || text === '') continue;
    const found = FAILED_FORMULA.test(text)
      ? trouble('A formula of the spreadsheet failed here; write the text itself.')
      : TAKERS[column.field](row, text, column);
    if (found === null) continue;
    const { index, header } = column;
    problems.push({ row: tableRow.number, column: index, header, text: text.slice(0, 200), ...found });
  }
  if (problems.length === 0 && row.isbn13 === null && row.reference === '') {
    const message = 'There is no number and no reference in this row, so it names no listing.';
    problems.push({ row: tableRow.number, column: null, header: '', text: '', message, repair: null });
  }
  return { row, problems };
}

/** A report as it was read. */
export interface ReadReport {
  rows: ReportRow[];
  problems: RowProblem[];
  /** Rows that are left out for what is wrong with them. */
  unread: number;
  /** Rows below the header. */
  total: number;
}

/** Reads every row of a report by its settled columns. Throws BAD_INPUT. */
export function readReport(
  table: OpenSheet,
  said: {
    columns: readonly Omit<ReportColumn, 'header'>[];
    repairs: readonly { row: number; column: number; text: string }[];
  },
  step: Step,
): ReadReport & { columns: ReportColumn[] } {
  const columns = settledReport(table, said.columns);
  if (table.body.length === 0)
    throw new Refusal('BAD_INPUT', 'There is no row below the header of this report.', 'file');
  const repairs = new Map(said.repairs.map(({ row, column, text }) => [`${row} ${column}`, text]));
  const rows: ReportRow[] = [];
  const problems: RowProblem[] = [];
  for (const [index, tableRow] of table.body.entries()) {
    const read = readReportRow(tableRow, columns, repairs);
    if (read.problems.length === 0) rows.push(read.row);
    else problems.push(...read.problems);
    step(index + 1, table.body.length, 'rows read');
  }
  return { rows, problems, unread: table.body.length - rows.length, total: table.body.length, columns };
}
