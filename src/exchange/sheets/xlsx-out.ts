import { strToU8, Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import type { OutCell } from './sheet-out.ts';

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const SHEET_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** The fixed parts of a workbook of one sheet (ISO/IEC 29500-1, section 12): types, relations, book and styles. */
const PARTS: readonly (readonly [path: string, content: string])[] = [
  [
    '[Content_Types].xml',
    `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${SHEET_TYPE}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${SHEET_TYPE}.worksheet+xml"/><Override PartName="/xl/styles.xml" ContentType="${SHEET_TYPE}.styles+xml"/></Types>`,
  ],
  [
    '_rels/.rels',
    `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
  ],
  [
    'xl/_rels/workbook.xml.rels',
    `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${OFFICE}/styles" Target="styles.xml"/></Relationships>`,
  ],
  [
    'xl/styles.xml',
    // 0 plain · 1 bold, for the header · 2 text, so that digits stay as they are · 3 date.
    `<styleSheet xmlns="${MAIN}"><numFmts count="1"><numFmt numFmtId="164" formatCode="yyyy\\-mm\\-dd"/></numFmts><fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="4"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="49" fontId="1" fillId="0" borderId="0" xfId="0" applyNumberFormat="1" applyFont="1"/><xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/><xf numFmtId="164" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>`,
  ],
];

/** Text as XML; what XML 1.0 cannot hold is written `_xHHHH_` (ISO/IEC 29500-1, section 22.9.2.19). */
export function xmlText(text: string): string {
  return text
    .replaceAll(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_')
    .replaceAll(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`)
    .replaceAll(
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to be written otherwise.
      /[\u0000-\u0008\u000B\u000C\u000D\u000E-\u001F\uFFFE\uFFFF]/g,
      (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`,
    );
}

/** As many characters as a cell of a workbook may hold. */
export const MOST_IN_CELL = 32_767;

/** A cell whose text is longer than a workbook's cell may be. */
export interface TooLong {
  /** From one, as spreadsheets count. */
  row: number;
  header: string;
  /** Characters of the whole text. */
  length: number;
}

/** Days from 1899-12-30, by which spreadsheets count. */
function serial(day: string): number {
  return Math.round((Date.parse(`${day}T00:00:00Z`) - Date.UTC(1899, 11, 30)) / 86_400_000);
}

/** 'A', 'Z', 'AA' for 0, 25, 26. */
export function columnName(index: number): string {
  let name = '';
  for (let rest = index + 1; rest > 0; rest = Math.floor((rest - 1) / 26))
    name = String.fromCharCode(65 + ((rest - 1) % 26)) + name;
  return name;
}

function cellXml(cell: OutCell, place: string, style: number): string {
  if (cell === null) return '';
  if (cell.as === 'number') return `<c r="${place}"><v>${cell.value}</v></c>`;
  if (cell.as === 'date' && cell.value >= '1900-03-01')
    return `<c r="${place}" s="3"><v>${serial(cell.value)}</v></c>`;
  // A cell of this kind is text whatever it begins with; no spreadsheet runs it.
  return `<c r="${place}" s="${style}" t="inlineStr"><is><t xml:space="preserve">${xmlText(cell.value)}</t></is></c>`;
}

function rowXml(cells: readonly OutCell[], number: number, style: number): string {
  const written = cells
    .map((cell, column) => cellXml(cell, `${columnName(column)}${number}`, style))
    .join('');
  return `<row r="${number}">${written}</row>`;
}

/** Rows written into the zip at once. */
const AT_ONCE = 200;

/** The first cell of a row that is longer than a workbook can hold. */
function tooLong(cells: readonly OutCell[], row: number, header: readonly string[]): TooLong | null {
  const at = cells.findIndex((cell) => cell?.as === 'text' && cell.value.length > MOST_IN_CELL);
  const cell = cells[at];
  return cell ? { row, header: header[at] ?? '', length: cell.value.length } : null;
}

/**
 * Writes a workbook of one sheet, its first row fixed and bold. Rows are deflated as they come, so that memory stays
 * flat. `name` is the sheet's (at most 31 characters). `write` takes the bytes. Stops at the first cell that is longer
 * than a workbook can hold, since spreadsheets would cut it or refuse the file, and answers which; null when all is written.
 */
export function writeXlsx(
  name: string,
  header: readonly string[],
  rows: Iterable<readonly OutCell[]>,
  write: (bytes: Uint8Array) => void,
): TooLong | null {
  const zip = new Zip((error, bytes) => {
    if (error) throw error;
    write(bytes);
  });
  const book = `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="${xmlText(name.slice(0, 31))}" sheetId="1" r:id="rId1"/></sheets></workbook>`;
  for (const [path, content] of [...PARTS, ['xl/workbook.xml', book] as const]) {
    const part = new ZipPassThrough(path);
    zip.add(part);
    part.push(strToU8(HEAD + content), true);
  }
  const sheet = new ZipDeflate('xl/worksheets/sheet1.xml', { level: 6 });
  zip.add(sheet);
  let text = `${HEAD}<worksheet xmlns="${MAIN}"><sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><sheetData>`;
  text += rowXml(
    header.map((value) => ({ as: 'text', value })),
    1,
    1,
  );
  let number = 1;
  for (const row of rows) {
    number += 1;
    const long = tooLong(row, number, header);
    if (long) return long;
    text += rowXml(row, number, 2);
    if (number % AT_ONCE > 0) continue;
    sheet.push(strToU8(text), false);
    text = '';
  }
  sheet.push(strToU8(`${text}</sheetData></worksheet>`), true);
  zip.end();
  return null;
}
