import type { SheetOutcome, SheetProblem } from '../contract/sheets.ts';
import { formName } from '../contract/terms.ts';
import { cellText, type Repairs } from '../exchange/sheets/cell-text.ts';
import { CSV_MARK, csvLine } from '../exchange/sheets/csv-out.ts';
import type { OpenSheet } from '../exchange/sheets/open-sheet.ts';
import type { WorkPlan } from '../exchange/sheets/plan.ts';
import type { ReadRow, RowProblem } from '../exchange/sheets/read-row.ts';
import type { OutCell } from '../exchange/sheets/sheet-out.ts';
import { shownIsbn } from '../rules/isbn/index.ts';
import { editionLabel } from '../rules/labels.ts';
import type { Staging } from '../store/staging.ts';
import type { Listener, RowOutcome } from './sheet-record.ts';

/** As much as a person looks at. */
const SHOWN_WORKS = 100;
const SHOWN_PROBLEMS = 200;

/** Gathers what comes of each row. */
export class Outcomes implements Listener {
  readonly counts = { new: 0, changed: 0, same: 0, refused: 0 };
  readonly problems: RowProblem[] = [];
  readonly #outcomes = new Map<number, RowOutcome>();

  done(row: ReadRow, outcome: RowOutcome): void {
    this.counts[outcome.what] += 1;
    this.#outcomes.set(row.number, outcome);
  }

  refused(row: ReadRow, message: string): void {
    this.refuse(row, [{ row: row.number, column: null, header: '', text: '', message, repair: null }]);
  }

  /** A row that was read with problems of its own. */
  refuse(_row: ReadRow, problems: readonly RowProblem[]): void {
    this.counts.refused += 1;
    this.problems.push(...problems);
  }

  /** The first problems, in the order of the rows. */
  shown(): SheetProblem[] {
    this.problems.sort((a, b) => a.row - b.row || (a.column ?? -1) - (b.column ?? -1));
    return this.problems.slice(0, SHOWN_PROBLEMS);
  }

  /** The first works as they were grouped, with what came of each row. */
  preview(works: readonly WorkPlan[]): SheetOutcome['works'] {
    return works.slice(0, SHOWN_WORKS).map((work) => ({
      title: work.title,
      known: work.known !== null,
      editions: work.editions.map((edition) => {
        const named = { title: work.title, number: null, ...edition.known, ...edition.fields };
        return {
          label: editionLabel(named),
          known: edition.known !== null,
          rows: edition.rows.map(({ row, formatId }) => {
            const known = edition.known?.formats.find(({ id }) => id === formatId);
            const outcome = this.#outcomes.get(row.number);
            const isbn13 = row.isbn13 ?? known?.isbn13 ?? null;
            return {
              row: row.number,
              name: formName({ ...(known ?? { form: '' }), ...row.format }),
              hyphenated: shownIsbn(isbn13),
              what: outcome?.what ?? ('refused' as const),
              changes: outcome?.changes ?? [],
            };
          }),
        };
      }),
    }));
  }
}

/**
 * Writes the refused rows as a CSV file: the columns of the file that was read, as it has them, and the reasons in a
 * column of their own, which the next import leaves out.
 */
export function refusedFile(
  files: Staging,
  name: string,
  table: OpenSheet,
  problems: readonly RowProblem[],
  repairs: Repairs,
): SheetOutcome['refused'] {
  if (problems.length === 0) return null;
  const reasons = Map.groupBy(problems, ({ row }) => row);
  const text = (value: string): OutCell => (value === '' ? null : { as: 'text', value });
  const kept = table.header.map((_, index) => index).filter((index) => table.header[index] !== 'Reason');
  const made = files.make(name, (sink) => {
    sink.write(CSV_MARK + csvLine([...kept.map((index) => text(table.header[index] ?? '')), text('Reason')]));
    for (const row of table.body) {
      const own = reasons.get(row.number);
      if (!own) continue;
      const why = own.map(({ header, message }) => (header === '' ? message : `${header}: ${message}`));
      const cells = kept.map((index) => text(cellText(row, index, repairs)));
      sink.write(csvLine([...cells, text(why.join(' '))]));
    }
  });
  return { ...made, name, type: 'text/csv' };
}
