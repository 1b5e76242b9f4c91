import type { EditionFields } from '../../contract/editions.ts';
import type { FormatFields } from '../../contract/formats.ts';
import { SHEET_FIELDS, type SheetFieldKey } from '../../contract/sheet-fields.ts';
import type { ListingStanding } from '../../contract/terms.ts';
import { CASE_KINDS, FORM_DETAILS, PRODUCT_FORMS } from '../../contract/terms.ts';
import { decimal, minorDigits } from '../../rules/money.ts';
import { joinList, millimetres } from './cells.ts';
import { contributorsCell, subjectsCell } from './subjects.ts';

/** One cell on its way out; an ISBN is text even where it looks like a number. */
export type OutCell =
  | { as: 'text'; value: string }
  | { as: 'number'; value: string }
  | { as: 'date'; value: string }
  | null;

/** One format as a row of a sheet. */
export interface OutRow {
  work: { title: string };
  edition: EditionFields;
  format: FormatFields & { standing: string };
  /** With hyphens. */
  isbn: string | null;
  listings: readonly { channelName: string; standing: ListingStanding }[];
}

/** A column on its way out. */
export interface OutColumn {
  header: string;
  cell(row: OutRow): OutCell;
}

const text = (value: string | null): OutCell => (value ? { as: 'text', value } : null);
const count = (value: number | null): OutCell =>
  value === null ? null : { as: 'number', value: String(value) };
const date = (value: string | null): OutCell => (value === null ? null : { as: 'date', value });
const flag = (value: boolean): OutCell => text(value ? 'yes' : 'no');
const length = (um: number | null): OutCell =>
  um === null ? null : { as: 'number', value: millimetres(um) };
const named = (list: readonly { code: string; name: string }[], code: string | null) =>
  text(list.find((entry) => entry.code === code)?.name ?? code);

type Plain = Exclude<SheetFieldKey, 'price' | 'priceBeforeTax' | 'listing' | 'trimSize'>;

const CELLS: { [K in Plain]: OutColumn['cell'] } = {
  work: ({ work }) => text(work.title),
  editionNumber: ({ edition }) => count(edition.number),
  statement: ({ edition }) => text(edition.statement),
  title: ({ edition }) => text(edition.title),
  subtitle: ({ edition }) => text(edition.subtitle),
  contributors: ({ edition }) => text(contributorsCell(edition.contributors)),
  language: ({ edition }) => text(edition.language),
  imprint: ({ edition }) => text(edition.imprint),
  series: ({ edition }) => text(edition.series),
  seriesNumber: ({ edition }) => text(edition.seriesNumber),
  isbn: ({ isbn }) => text(isbn),
  form: ({ format }) => named(PRODUCT_FORMS, format.form),
  formDetail: ({ format }) => named(FORM_DETAILS, format.formDetail),
  caseKind: ({ format }) => text(CASE_KINDS.find((kind) => kind === format.caseKind) ?? null),
  largePrint: ({ format }) => flag(format.largePrint),
  rightToLeft: ({ format }) => flag(format.rightToLeft),
  publicationDate: ({ format }) => date(format.publicationDate),
  onSaleDate: ({ format }) => date(format.onSaleDate),
  pages: ({ format }) => count(format.pages),
  duration: ({ format }) => count(format.durationMinutes),
  trimWidth: ({ format }) => length(format.trimWidthUm),
  trimHeight: ({ format }) => length(format.trimHeightUm),
  interiorColour: ({ format }) => text(format.interiorColour),
  paper: ({ format }) => text(format.paper),
  finish: ({ format }) => text(format.finish),
  insideCoverPrint: ({ format }) => flag(format.insideCoverPrint),
  description: ({ edition }) => text(edition.description),
  keywords: ({ edition }) => text(joinList(edition.keywords)),
  subjects: ({ edition }) => text(subjectsCell(edition.subjects)),
  audience: ({ edition }) => text(edition.audience),
  ageFrom: ({ edition }) => count(edition.ageFrom),
  ageTo: ({ edition }) => count(edition.ageTo),
  note: ({ format }) => text(format.note),
};

function priceColumn(header: string, tax: 'including' | 'excluding', currency: string): OutColumn {
  return {
    header: `${header} ${currency}`,
    cell: ({ format }) => {
      const price = format.prices.find((entry) => entry.currency === currency && entry.tax === tax);
      return price ? { as: 'number', value: decimal(price.amountMinor, minorDigits(currency)) } : null;
    },
  };
}

/** What a sheet can say that every format cannot: currencies of prices with and without tax, and channels. */
export interface OutScope {
  including: readonly string[];
  excluding: readonly string[];
  channels: readonly string[];
}

/** The columns of a sheet of ours; how a format stands comes last and is only told. */
export function sheetColumns(scope: OutScope): OutColumn[] {
  const columns = SHEET_FIELDS.flatMap(({ key, header }): OutColumn[] => {
    if (key === 'price') return scope.including.map((currency) => priceColumn(header, 'including', currency));
    if (key === 'priceBeforeTax')
      return scope.excluding.map((currency) => priceColumn(header, 'excluding', currency));
    if (key === 'trimSize') return [];
    if (key === 'listing')
      return scope.channels.map((channel) => ({
        header: `${header} ${channel}`,
        cell: ({ listings }) =>
          text(listings.find(({ channelName }) => channelName === channel)?.standing ?? null),
      }));
    return [{ header, cell: CELLS[key] }];
  });
  return [...columns, { header: 'Standing', cell: ({ format }) => text(format.standing) }];
}
