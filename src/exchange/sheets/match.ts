import { REPORT_FIELDS, type Reading, SHEET_FIELDS, type SheetField } from '../../contract/sheet-fields.ts';
import { parseIsbn, type RangeTable, rangeTable, tryIsbn } from '../../rules/isbn/index.ts';
import { currencyIn, guessMark } from './amounts.ts';
import { guessDates } from './dates.ts';
import type { TableRow } from './table.ts';

/** What a column was matched with earlier, by its header. */
export interface RememberedColumn {
  /** '' for a column that is left out on purpose. */
  field: string;
  detail: string;
  reading: Reading | null;
}

/** One column of a file and what it is taken to hold. */
export interface MatchedColumn {
  /** From zero. */
  index: number;
  header: string;
  /** A few of its cells. */
  samples: string[];
  field: string | null;
  /** Currency, channel or role, as the field asks for. */
  detail: string;
  reading: Reading | null;
  /** Where the match comes from. */
  from: 'remembered' | 'header' | 'cells' | 'none';
  /** One sentence that tells why, and whether anything has to be said by the person. */
  why: string;
}

/** Headers are compared without case, blanks and signs. */
export function headerKey(header: string): string {
  return header
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}€£$]+/gu, ' ')
    .trim();
}

type Pattern = readonly [pattern: RegExp, field: string, detail?: string];

/** Words that headers use, looked for in this order. */
const SHEET_WORDS: readonly Pattern[] = [
  [/^(?:reason|line|row|standing|status)$/, ''],
  [/^(?:work|work title|book)$/, 'work'],
  [/^(?:edition|edition (?:number|no)|ed no|ed)$/, 'editionNumber'],
  [/^edition (?:statement|note|text)$/, 'statement'],
  [/^(?:title|book title|full title|product title|name)$/, 'title'],
  [/^(?:subtitle|sub title)$/, 'subtitle'],
  [/^(?:contributors?|authors?|author names?|by|writer)$/, 'contributors', 'A01'],
  [/^(?:illustrators?|illustrated by)$/, 'contributors', 'A12'],
  [/^(?:translators?|translated by)$/, 'contributors', 'B06'],
  [/^(?:editors?|edited by)$/, 'contributors', 'B01'],
  [/^(?:narrators?|narrated by)$/, 'contributors', 'E03'],
  [/^(?:foreword|foreword by)$/, 'contributors', 'A23'],
  [/^(?:language|lang|language of text|language code)$/, 'language'],
  [/^(?:imprint|imprint name)$/, 'imprint'],
  [/^(?:series|series (?:name|title)|collection)$/, 'series'],
  [/^(?:volume|vol|series (?:number|no)|volume (?:number|no)|number in series)$/, 'seriesNumber'],
  [/^(?:file format|digital format|e ?book format)$/, 'formDetail'],
  [/^(?:case|case kind|cover type|case type)$/, 'caseKind'],
  [/^large print$/, 'largePrint'],
  [/^(?:right to left|rtl)$/, 'rightToLeft'],
  [/^(?:on sale|on sale date|street date|sale date|release date)$/, 'onSaleDate'],
  [
    /^(?:publication date|pub date|published|published on|date of publication|publishing date)$/,
    'publicationDate',
  ],
  [/^(?:form|format|binding|product form|type)$/, 'form'],
  [/^(?:pages?|page count|number of pages|extent|pp)$/, 'pages'],
  [/^(?:minutes|duration|running time|length minutes)$/, 'duration'],
  [/^(?:trim|trim size|size|dimensions)$/, 'trimSize'],
  [/^(?:(?:trim )?width(?: mm)?)$/, 'trimWidth'],
  [/^(?:(?:trim )?height(?: mm)?)$/, 'trimHeight'],
  [/^(?:interior|interior colou?r|ink)$/, 'interiorColour'],
  [/^(?:paper|paper stock)$/, 'paper'],
  [/^(?:finish|cover finish|lamination)$/, 'finish'],
  [/^inside cover printed$/, 'insideCoverPrint'],
  [/^(?:description|blurb|synopsis|summary|long description)$/, 'description'],
  [/^(?:keywords?|tags|search terms)$/, 'keywords'],
  [/^(?:subjects?|categories|category|subject codes?|bisac|thema)$/, 'subjects'],
  [/^audience$/, 'audience'],
  [/^(?:age from|min(?:imum)? age)$/, 'ageFrom'],
  [/^(?:age to|max(?:imum)? age)$/, 'ageTo'],
  [/^(?:note|notes|remarks?|comments?)$/, 'note'],
];

const REPORT_WORDS: readonly Pattern[] = [
  [/^(?:title|book title|product title|name|product|item)$/, 'title'],
  [
    /^(?:reference|ref|sku|item (?:number|no|id)|product (?:number|no|id)|listing (?:number|id)|id)$/,
    'reference',
  ],
  [/^(?:on sale|on sale date|street date|release date|publication date|pub date|published)$/, 'onSaleDate'],
  [/^(?:status|standing|state|availability|available|active|on sale there|live)$/, 'standing'],
];

const NUMBER_HEADER = /\b(?:isbn|isbn 13|isbn 10|isbn13|isbn10|ean|ean13|gtin)\b/;
const PRICE_HEADER = /\b(?:price|rrp|list price|retail|msrp)\b/;
const BEFORE_TAX = /\b(?:before tax|excl|excluding|net of tax|ex vat|without tax)\b/;

/** At least half of the filled cells are numbers, or damaged ones. */
function holdsNumbers(cells: readonly string[], table: RangeTable): boolean {
  const filled = cells.filter((cell) => cell.trim() !== '');
  const numbers = filled.filter((cell) => {
    if (tryIsbn(cell, table) !== null) return true;
    if (cell.replace(/[^0-9]/g, '').length < 9) return false;
    const parsed = parseIsbn(cell, table);
    return !parsed.ok && (parsed.problem.code === 'spreadsheet-damage' || parsed.problem.repair !== null);
  });
  return numbers.length > 0 && numbers.length * 2 >= filled.length;
}

interface Matching {
  fields: readonly SheetField[];
  words: readonly Pattern[];
  channels: readonly string[];
  table: RangeTable;
}

type Found = Pick<MatchedColumn, 'field' | 'detail' | 'from'>;

function byHeader(header: string, { words, channels, fields }: Matching): Found | null {
  const key = headerKey(header);
  const from = 'header' as const;
  if (NUMBER_HEADER.test(key)) return { field: 'isbn', detail: '', from };
  const channel = /^on (.+)$/i.exec(header.trim())?.[1];
  const known = channels.find((name) => headerKey(name) === headerKey(channel ?? ''));
  if (known !== undefined && fields === SHEET_FIELDS) return { field: 'listing', detail: known, from };
  const word = words.find(([pattern]) => pattern.test(key));
  if (word) return { field: word[1] === '' ? null : word[1], detail: word[2] ?? '', from };
  if (PRICE_HEADER.test(key)) {
    const before = fields === SHEET_FIELDS && BEFORE_TAX.test(key);
    const detail = currencyIn(header)?.currency ?? '';
    return { field: before ? 'priceBeforeTax' : 'price', detail, from };
  }
  return null;
}

/** The reading of a column, and what there is to say about it. */
function readingOf(field: SheetField, cells: readonly string[]): { reading: Reading | null; why: string } {
  if (field.kind === 'date') {
    const { order, why } = guessDates(cells);
    return { reading: order, why };
  }
  if (field.kind === 'amount') {
    const { mark, why } = guessMark(cells);
    return { reading: mark, why };
  }
  return { reading: null, why: '' };
}

/** A currency that cells name where the header does not; one that several share is told as a guess. */
function currencyOf(detail: string, cells: readonly string[]): { detail: string; why: string } {
  if (detail !== '') return { detail, why: '' };
  const named = cells.map(currencyIn).find((found) => found !== null);
  if (!named) return { detail: '', why: 'No currency is named: say which.' };
  return {
    detail: named.currency,
    why: named.sure ? '' : `Its sign is taken for ${named.currency}; change it if another is meant.`,
  };
}

function matched(
  index: number,
  header: string,
  cells: readonly string[],
  found: Found,
  matching: Matching,
): MatchedColumn {
  const filled = cells.filter((cell) => cell.trim() !== '');
  const base = { index, header, samples: filled.slice(0, 3).map((cell) => cell.slice(0, 80)) };
  const field = matching.fields.find(({ key }) => key === found.field);
  if (!field) return { ...base, field: null, detail: '', reading: null, from: found.from, why: '' };
  const { reading, why } = readingOf(field, filled);
  const currency = field.detail === 'currency' ? currencyOf(found.detail, filled) : null;
  const detail = currency?.detail ?? found.detail;
  const sentences = [why, currency?.why ?? ''].filter((part) => part !== '').join(' ');
  return { ...base, field: field.key, detail, reading, from: found.from, why: sentences };
}

/** A match of an earlier file holds while its cells can be read that way; an order that they contradict is asked anew. */
function remembered(column: MatchedColumn, known: RememberedColumn): MatchedColumn {
  const reading = column.reading === null || column.reading === 'ymd' ? known.reading : column.reading;
  const contradicted = known.reading !== null && reading !== known.reading;
  return {
    ...column,
    detail: known.detail,
    reading: reading ?? column.reading,
    why: contradicted ? column.why : 'As in an earlier file.',
  };
}

/** Words of a field for one column, without two columns for one field where only one can be. */
function withoutDoubles(columns: MatchedColumn[], fields: readonly SheetField[]): MatchedColumn[] {
  const taken = new Set<string>();
  return columns.map((column) => {
    const field = fields.find(({ key }) => key === column.field);
    if (!field || (field.detail === 'role' && column.detail !== '')) return column;
    const place = `${field.key} ${field.detail === 'currency' || field.detail === 'channel' ? column.detail : ''}`;
    // A file may give every number in ten and in thirteen digits.
    if (field.key === 'isbn' || !taken.has(place)) {
      taken.add(place);
      return column;
    }
    return { ...column, field: null, detail: '', reading: null, why: `${field.header} is taken already.` };
  });
}

/**
 * What the columns of a table are taken to hold: as remembered by their headers, else by the words of the header, else
 * by the cells. Nothing is assumed where two ways are possible: `reading` is null then, and `why` says what to say.
 */
export function matchColumns(
  header: readonly string[],
  rows: readonly TableRow[],
  options: {
    of: 'formats' | 'report';
    channels: readonly string[];
    remembered: ReadonlyMap<string, RememberedColumn>;
    table?: RangeTable;
  },
): MatchedColumn[] {
  const matching: Matching = {
    fields: options.of === 'formats' ? SHEET_FIELDS : REPORT_FIELDS,
    words: options.of === 'formats' ? SHEET_WORDS : REPORT_WORDS,
    channels: options.channels,
    table: options.table ?? rangeTable(),
  };
  const columns = header.map((title, index) => {
    const cells = rows.map((row) => row.cells[index] ?? '');
    const known = options.remembered.get(headerKey(title));
    if (known) {
      const found = {
        field: known.field === '' ? null : known.field,
        detail: known.detail,
        from: 'remembered',
      } as const;
      return remembered(matched(index, title, cells, found, matching), known);
    }
    const none: Found = { field: null, detail: '', from: 'none' };
    const found = byHeader(title, matching);
    if (found) return matched(index, title, cells, found, matching);
    const byCells = holdsNumbers(cells.slice(0, 200), matching.table);
    return matched(
      index,
      title,
      cells,
      byCells ? { field: 'isbn', detail: '', from: 'cells' } : none,
      matching,
    );
  });
  return withoutDoubles(columns, matching.fields);
}
