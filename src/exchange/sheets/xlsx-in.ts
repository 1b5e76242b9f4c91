import { MOST_ROWS, type TableIn, type TableRow, TableTrouble } from './table.ts';
import { type Listener, readXml, UNREADABLE, unpack } from './xlsx-parts.ts';

/** Most cells of a row, which a sheet names with letters (XFD is the last; ISO/IEC 29500-1, section 18.3.1.73). */
const LAST_COLUMN = 16_384;

/** The parts that are looked at; pictures, macros and the rest are never unpacked. */
const WANTED = /^xl\/(?:workbook\.xml|styles\.xml|sharedStrings\.xml|_rels\/workbook\.xml\.rels)$/;

/** `_x000D_` and the like back to the signs they stand for (ISO/IEC 29500-1, section 22.9.2.19). */
const unescaped = (text: string): string =>
  text.includes('_x')
    ? text.replaceAll(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) =>
        String.fromCharCode(Number.parseInt(code, 16)),
      )
    : text;

interface Book {
  sheets: { name: string; relation: string }[];
  /** Whether days are counted from 1904 (ISO/IEC 29500-1, section 18.17.4.1). */
  since1904: boolean;
}

function readBook(bytes: Uint8Array): Book {
  const book: Book = { sheets: [], since1904: false };
  readXml(bytes, {
    open: (name, attribute) => {
      if (name === 'workbookPr') book.since1904 = /^(?:1|true|on)$/.test(attribute('date1904') ?? '');
      if (name === 'sheet')
        book.sheets.push({ name: attribute('name') ?? '', relation: attribute('id') ?? '' });
    },
  });
  return book;
}

/** Paths of the parts by relation. */
function readRelations(bytes: Uint8Array | undefined): Map<string, string> {
  const paths = new Map<string, string>();
  if (bytes)
    readXml(bytes, {
      open: (name, attribute) => {
        const target = attribute('Target') ?? '';
        if (name === 'Relationship')
          paths.set(attribute('Id') ?? '', target.startsWith('/') ? target.slice(1) : `xl/${target}`);
      },
    });
  return paths;
}

/** Number formats that show a date, among those that every workbook has (ISO/IEC 29500-1, section 18.8.30). */
const isDateId = (id: number) =>
  (id >= 14 && id <= 17) || id === 22 || (id >= 27 && id <= 36) || (id >= 50 && id <= 58);

/** Whether a format of the workbook's own shows a day: it names day, month or year outside quotes and brackets. */
const isDateCode = (code: string) =>
  /[dmy]/i.test(code.replaceAll(/"[^"]*"|\[[^\]]*\]|\\./g, '').split(';')[0] ?? '') &&
  /[dy]/i.test(code.replaceAll(/"[^"]*"|\[[^\]]*\]|\\./g, ''));

/** Which cell styles show a date. */
function readDateStyles(bytes: Uint8Array | undefined): boolean[] {
  const own = new Map<number, string>();
  const styles: boolean[] = [];
  let within = false;
  if (bytes)
    readXml(bytes, {
      open: (name, attribute) => {
        if (name === 'numFmt') own.set(Number(attribute('numFmtId')), attribute('formatCode') ?? '');
        if (name === 'cellXfs') within = true;
        if (name !== 'xf' || !within) return;
        const id = Number(attribute('numFmtId') ?? 0);
        const code = own.get(id);
        styles.push(code === undefined ? isDateId(id) : isDateCode(code));
      },
      close: (name) => {
        if (name === 'cellXfs') within = false;
      },
    });
  return styles;
}

/** The texts that cells share; phonetic hints beside them are left out. */
function readShared(bytes: Uint8Array | undefined): string[] {
  const texts: string[] = [];
  let current = '';
  let inText = false;
  let phonetic = false;
  if (bytes)
    readXml(bytes, {
      open: (name) => {
        if (name === 'si') current = '';
        if (name === 'rPh') phonetic = true;
        inText = name === 't' && !phonetic;
      },
      text: (text) => {
        if (inText) current += text;
      },
      close: (name) => {
        if (name === 't') inText = false;
        if (name === 'rPh') phonetic = false;
        if (name === 'si') texts.push(unescaped(current));
      },
    });
  return texts;
}

/** 0 for 'A12', 27 for 'AB7'; undefined for what names no column. */
function columnOf(place: string | undefined): number | undefined {
  const letters = /^[A-Z]{1,3}(?=\d|$)/.exec(place ?? '')?.[0];
  if (letters === undefined) return undefined;
  let column = 0;
  for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64;
  return column - 1;
}

/** A day count of a spreadsheet as YYYY-MM-DD; a count that is no day stays as it is. */
function dayOf(value: string, since1904: boolean): string {
  const count = Number(value);
  if (value.trim() === '' || !Number.isFinite(count) || count < 1 || count > 2_958_465) return value;
  // The spreadsheets' calendar has a 29 February 1900 that never was; days before it count one less.
  const start = since1904 ? Date.UTC(1904, 0, 1) : Date.UTC(1899, 11, count < 60 ? 31 : 30);
  return new Date(start + Math.floor(count) * 86_400_000).toISOString().slice(0, 10);
}

/** A number as a person would type it: '9.99' for 9.9900000000000002; long whole numbers keep every digit. */
function plainNumber(value: string): string {
  const number = Number(value);
  if (value.trim() === '' || !Number.isFinite(number)) return value;
  return Number.isInteger(number) && Math.abs(number) < 1e21 ? BigInt(number).toString() : String(number);
}

interface SheetParts {
  shared: readonly string[];
  dateStyles: readonly boolean[];
  since1904: boolean;
  onRow: (rows: number) => void;
}

/** Gathers the cells of a sheet as its XML goes by. */
class SheetReader implements Listener {
  readonly rows: TableRow[] = [];
  readonly #parts: SheetParts;
  #row: TableRow = { number: 0, cells: [] };
  #column = -1;
  #type = '';
  #isDate = false;
  #value = '';
  #taking = false;
  #phonetic = false;

  constructor(parts: SheetParts) {
    this.#parts = parts;
  }

  open(name: string, attribute: (name: string) => string | undefined): void {
    if (name === 'row') this.#beginRow(Number(attribute('r')));
    else if (name === 'c') {
      this.#column = columnOf(attribute('r')) ?? this.#column + 1;
      if (this.#column >= LAST_COLUMN) throw new TableTrouble(UNREADABLE);
      this.#type = attribute('t') ?? 'n';
      this.#isDate = this.#parts.dateStyles[Number(attribute('s') ?? 0)] ?? false;
      this.#value = '';
    } else if (name === 'rPh') this.#phonetic = true;
    else if (name === 'v' || (name === 't' && !this.#phonetic)) this.#taking = true;
  }

  text(text: string): void {
    if (this.#taking) this.#value += text;
  }

  close(name: string): void {
    if (name === 'v' || name === 't') this.#taking = false;
    else if (name === 'rPh') this.#phonetic = false;
    else if (name === 'c') this.#keep();
    else if (name === 'row') this.#keepRow();
  }

  #keepRow(): void {
    if (this.#row.cells.some((cell) => cell.trim() !== '')) this.rows.push(this.#row);
    this.#parts.onRow(this.rows.length);
  }

  #beginRow(given: number): void {
    const after = this.#row.number + 1;
    const number = Number.isInteger(given) && given >= after ? given : after;
    if (number > MOST_ROWS) throw new TableTrouble(UNREADABLE);
    this.#row = { number, cells: [] };
    this.#column = -1;
  }

  #keep(): void {
    const text = this.#textOf();
    if (text === '') return;
    const { cells } = this.#row;
    while (cells.length < this.#column) cells.push('');
    cells[this.#column] = text;
  }

  #textOf(): string {
    const value = this.#value;
    if (this.#type === 's') return this.#parts.shared[Number(value)] ?? '';
    if (this.#type === 'b') return value === '1' ? 'TRUE' : 'FALSE';
    if (this.#type === 'd') return value.slice(0, 10);
    if (this.#type !== 'n') return unescaped(value);
    return this.#isDate ? dayOf(value, this.#parts.since1904) : plainNumber(value);
  }
}

/**
 * Reads one sheet of a workbook (ISO/IEC 29500-1, SpreadsheetML): the first, or the one of this name. Formulas give the
 * value they had when the file was saved; dates come as YYYY-MM-DD. Throws TableTrouble.
 */
export function readXlsx(
  bytes: Uint8Array,
  sheet: string | undefined,
  onRow: (rows: number) => void,
): TableIn {
  const parts = unpack(bytes, (path) => WANTED.test(path));
  const bookPart = parts.get('xl/workbook.xml');
  if (!bookPart) throw new TableTrouble(UNREADABLE);
  const book = readBook(bookPart);
  const chosen = sheet === undefined ? book.sheets[0] : book.sheets.find(({ name }) => name === sheet);
  if (!chosen)
    throw new TableTrouble(sheet === undefined ? UNREADABLE : `There is no sheet called ${sheet}.`);
  const path = readRelations(parts.get('xl/_rels/workbook.xml.rels')).get(chosen.relation);
  const part = unpack(bytes, (name) => name === path).get(path ?? '');
  if (!part) throw new TableTrouble(UNREADABLE);
  const reader = new SheetReader({
    shared: readShared(parts.get('xl/sharedStrings.xml')),
    dateStyles: readDateStyles(parts.get('xl/styles.xml')),
    since1904: book.since1904,
    onRow,
  });
  readXml(part, reader);
  return { kind: 'xlsx', sheets: book.sheets.map(({ name }) => name), sheet: chosen.name, rows: reader.rows };
}
