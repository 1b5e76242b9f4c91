import type { GridColumn } from './types.ts';

/** What would end a cell or a line becomes a space. */
const plain = (text: string): string => text.replaceAll(/[\t\r\n]+/g, ' ');

/** The heads of the columns, as a spreadsheet takes them. */
export function tsvHead<Row>(columns: readonly GridColumn<Row>[]): string {
  return columns.map((column) => plain(column.header)).join('\t');
}

/** One row, as a spreadsheet takes it. */
export function tsvLine<Row>(columns: readonly GridColumn<Row>[], row: Row): string {
  return columns.map((column) => plain(column.text(row))).join('\t');
}
