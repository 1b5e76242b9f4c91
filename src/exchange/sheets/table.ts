/** A table out of a file: the texts of its cells, row by row. Rows count from one, as spreadsheets count them. */
export interface TableIn {
  kind: 'csv' | 'xlsx';
  /** Names of the sheets of a workbook; one without a name for CSV. */
  sheets: string[];
  /** Which of them was read. */
  sheet: string;
  rows: TableRow[];
}

export interface TableRow {
  /** From one. */
  number: number;
  cells: string[];
}

/** Why a file cannot be read as a table, as one sentence. */
export class TableTrouble extends Error {}

/** More rows than a workbook may have (1,048,576) are no table that a person made. */
export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 1_000;
