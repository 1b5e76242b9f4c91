import { z } from 'zod';

/** What a field of a sheet takes beside its cells: nothing, a currency, a channel's name or a contributor's role. */
type Detail = 'none' | 'currency' | 'channel' | 'role';
/** How its cells are read where more than one way is possible. */
type Kind = 'text' | 'date' | 'amount';

export interface SheetField {
  key: string;
  /** As it is written in a sheet of ours. */
  header: string;
  /** Shown beside the choice. */
  about: string;
  detail: Detail;
  kind: Kind;
}

const field = <const K extends string>(
  key: K,
  header: string,
  about: string,
  more: { detail?: Detail; kind?: Kind } = {},
) => ({ key, header, about, detail: more.detail ?? 'none', kind: more.kind ?? 'text' }) as const;

/** What a column of a sheet of formats can hold, in the order in which sheets of ours have them. */
export const SHEET_FIELDS = [
  field('work', 'Work', 'the title the work is kept under, where it differs from the edition’s'),
  field('editionNumber', 'Edition number', 'a number from 1'),
  field('statement', 'Edition statement', 'as printed, such as revised and enlarged'),
  field('title', 'Title', 'title of the edition'),
  field('subtitle', 'Subtitle', ''),
  field('contributors', 'Contributors', 'names with their roles in brackets, parted by semicolons', {
    detail: 'role',
  }),
  field('language', 'Language', 'three letters (ISO 639-2/B), two letters or the English name'),
  field('imprint', 'Imprint', ''),
  field('series', 'Series', ''),
  field('seriesNumber', 'Volume', 'number in the series'),
  field('isbn', 'ISBN', 'in any written form'),
  field('form', 'Form', 'a word such as paperback, or a code of ONIX List 150'),
  field('formDetail', 'File format', 'EPUB, PDF, MP3 or a code of ONIX List 175'),
  field('caseKind', 'Case', 'laminate, cloth or jacket; hardcovers only'),
  field('largePrint', 'Large print', 'yes or no'),
  field('rightToLeft', 'Right to left', 'yes or no'),
  field('publicationDate', 'Publication date', '', { kind: 'date' }),
  field('onSaleDate', 'On-sale date', '', { kind: 'date' }),
  field('price', 'Price', 'retail price with tax, one column a currency', {
    detail: 'currency',
    kind: 'amount',
  }),
  field('priceBeforeTax', 'Price before tax', 'retail price without tax, one column a currency', {
    detail: 'currency',
    kind: 'amount',
  }),
  field('pages', 'Pages', ''),
  field('duration', 'Minutes', 'length of an audiobook, in minutes or h:mm'),
  field('trimWidth', 'Trim width (mm)', '', { kind: 'amount' }),
  field('trimHeight', 'Trim height (mm)', '', { kind: 'amount' }),
  field('trimSize', 'Trim size', 'both in one cell, such as 152 x 229 mm or 6 x 9 in'),
  field('interiorColour', 'Interior', 'black, standard colour or premium colour'),
  field('paper', 'Paper', ''),
  field('finish', 'Finish', 'matte, gloss or uncoated'),
  field('insideCoverPrint', 'Inside cover printed', 'yes or no'),
  field('description', 'Description', ''),
  field('keywords', 'Keywords', 'parted by semicolons'),
  field('subjects', 'Subjects', 'thema:CODE or bisac:CODE, parted by semicolons'),
  field('audience', 'Audience', 'general, children, young adult, education or professional'),
  field('ageFrom', 'Age from', ''),
  field('ageTo', 'Age to', ''),
  field('note', 'Note', 'about the format'),
  field('listing', 'On', 'where the format stands on a channel, one column a channel', { detail: 'channel' }),
] as const satisfies readonly SheetField[];

export type SheetFieldKey = (typeof SHEET_FIELDS)[number]['key'];
export const sheetFieldKey = z.enum(SHEET_FIELDS.map(({ key }) => key));

/** The field of a key. */
export function sheetField(key: SheetFieldKey): SheetField {
  const found = SHEET_FIELDS.find((entry) => entry.key === key);
  if (!found) throw new RangeError(`There is no field ${key}.`);
  return found;
}

/** What a column of a channel's own report can hold. */
export const REPORT_FIELDS = [
  field('isbn', 'ISBN', 'in any written form'),
  field('reference', 'The channel’s reference', 'its own number for the listing'),
  field('title', 'Title', ''),
  field('price', 'Price', 'retail price', { detail: 'currency', kind: 'amount' }),
  field('onSaleDate', 'On-sale date', '', { kind: 'date' }),
  field('standing', 'On sale there', 'whether it is sold: active, available, yes, or removed, inactive, no'),
] as const satisfies readonly SheetField[];
export type ReportFieldKey = (typeof REPORT_FIELDS)[number]['key'];
export const reportFieldKey = z.enum(REPORT_FIELDS.map(({ key }) => key));

/** How dates and amounts of a column are written: order of day, month and year; the mark before the decimals. */
export const READINGS = ['ymd', 'dmy', 'mdy', 'point', 'comma'] as const;
export const reading = z.enum(READINGS);
export type Reading = z.infer<typeof reading>;
