import type { ParsedInputOf } from '../contract/index.ts';
import { Refusal } from '../contract/refusal.ts';
import { Rehearsal } from '../contract/rehearsal.ts';
import { SHEET_FIELDS } from '../contract/sheet-fields.ts';
import type { SheetOutcome } from '../contract/sheets.ts';
import type { Repairs } from '../exchange/sheets/cell-text.ts';
import { Grouping } from '../exchange/sheets/group.ts';
import { headerKey } from '../exchange/sheets/match.ts';
import { type OpenSheet, openSheet } from '../exchange/sheets/open-sheet.ts';
import { type ChosenColumn, readRow } from '../exchange/sheets/read-row.ts';
import { checkSettled } from '../exchange/sheets/settle.ts';
import { rememberColumns } from '../store/columns.ts';
import { knownIndex } from '../store/known-index.ts';
import { withSearchLater } from '../store/search-later.ts';
import { readSettings } from '../store/settings.ts';
import type { Commands, LongCommandContext } from './context.ts';
import { Outcomes, refusedFile } from './sheet-outcome.ts';
import { SheetRecorder } from './sheet-record.ts';

type Input = ParsedInputOf<'sheets.import'>;

/** Works recorded at once. */
const AT_ONCE = 10;

/** The columns with the headers of the file; throws BAD_INPUT where something about them was not said. */
function settledColumns(table: OpenSheet, input: Input, channels: readonly string[]): ChosenColumn[] {
  const columns = input.columns.map((column) => ({ ...column, header: table.header[column.index] ?? '' }));
  const missing = columns.find(({ index }) => index >= table.header.length);
  if (missing)
    throw new Refusal(
      'BAD_INPUT',
      `This file has no column ${missing.index + 1}; look at it again.`,
      'columns',
    );
  checkSettled(columns, SHEET_FIELDS, channels);
  if (!columns.some(({ field }) => field === 'title' || field === 'work' || field === 'isbn'))
    throw new Refusal('BAD_INPUT', 'Say which column holds the titles, or the ISBNs.', 'columns');
  return columns;
}

/** Reads the rows and groups those that can be read. */
function groupRows(
  { db, step }: LongCommandContext,
  table: OpenSheet,
  columns: ChosenColumn[],
  repairs: Repairs,
  outcomes: Outcomes,
): Grouping {
  const grouping = new Grouping(knownIndex(db));
  for (const [index, tableRow] of table.body.entries()) {
    const row = readRow(tableRow, columns, repairs);
    if (row.problems.length > 0) outcomes.refuse(row, row.problems);
    else grouping.add(row);
    step(index + 1, table.body.length, 'rows read');
  }
  for (const { row, message } of grouping.misplaced) outcomes.refused(row, message);
  return grouping;
}

function notesOf(outside: number, dryRun: boolean): string[] {
  if (outside === 0) return [];
  const lie = outside === 1 ? '1 number lies' : `${outside.toLocaleString('en')} numbers lie`;
  const then = dryRun ? 'they can be recorded all the same' : 'they are recorded all the same';
  return [`${lie} in none of your recorded blocks; ${then}, and join their block once you record it.`];
}

/** Refuses a file with refused rows, unless the good ones alone were asked for. */
function refuseHalf({ counts, problems }: Outcomes, rows: number, goodRowsOnly: boolean): void {
  const [first] = problems;
  if (!first || (goodRowsOnly && counts.refused < rows)) return;
  const place = first.header === '' ? `Row ${first.row}` : `Row ${first.row}, ${first.header}`;
  const more = counts.refused > 1 ? ` ${counts.refused - 1} more rows are refused.` : '';
  throw new Refusal('BAD_INPUT', `${place}: ${first.message}${more} Nothing was recorded.`, 'file');
}

/** Remembers what the columns hold, by their headers. */
function remember({ db }: LongCommandContext, columns: readonly ChosenColumn[]): void {
  rememberColumns(
    db,
    null,
    columns
      .map(({ header, field, detail, reading }) => ({
        header: headerKey(header),
        field: field ?? '',
        detail,
        reading,
      }))
      .filter(({ header }) => header !== ''),
  );
}

function importRows(context: LongCommandContext, input: Input): SheetOutcome {
  const { db, files, step } = context;
  step(0, null, 'reading the file');
  const table = openSheet(files.read(input.file), input.sheet, step);
  const channels = new Map(
    db.all<{ id: number; name: string }>('SELECT id, name FROM channel').map(({ id, name }) => [name, id]),
  );
  const columns = settledColumns(table, input, [...channels.keys()]);
  const repairs = new Map(input.repairs.map(({ row, column, text }) => [`${row} ${column}`, text]));
  const outcomes = new Outcomes();
  const { works } = groupRows(context, table, columns, repairs, outcomes);
  const recorder = new SheetRecorder(context, readSettings(db), channels, outcomes);
  withSearchLater(db, step, () => {
    for (let at = 0; at < works.length; at += AT_ONCE) {
      recorder.record(works.slice(at, at + AT_ONCE));
      step(Math.min(at + AT_ONCE, works.length), works.length, 'works recorded');
    }
  });
  const problems = outcomes.shown();
  if (!input.dryRun) {
    refuseHalf(outcomes, table.body.length, input.goodRowsOnly);
    remember(context, columns);
  }
  const stem = files.nameOf(input.file).replace(/\.[^.]*$/, '');
  const { outside, ...made } = recorder.made;
  return {
    rows: table.body.length,
    counts: outcomes.counts,
    made,
    works: outcomes.preview(works),
    worksTotal: works.length,
    problems,
    problemsTotal: outcomes.problems.length,
    refused: refusedFile(files, `${stem}-refused.csv`, table, outcomes.problems, repairs),
    notes: notesOf(outside, input.dryRun),
  };
}

export const sheetCommands = {
  'sheets.import': (context, input) => {
    const outcome = importRows(context, input);
    if (input.dryRun) throw new Rehearsal(outcome);
    return outcome;
  },
} satisfies Commands<'sheets.import'>;
