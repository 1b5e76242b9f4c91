import type { EditionFields } from '../../../../src/contract/editions.ts';
import type { FormatFields } from '../../../../src/contract/formats.ts';
import { RETURNS } from '../../../../src/contract/terms.ts';

/** Plain names of what an edition and a format record, as labels and lists show them. */
export const FIELD_NAMES: Record<keyof EditionFields | keyof FormatFields | 'isbn', string> = {
  title: 'Title',
  subtitle: 'Subtitle',
  number: 'Edition number',
  statement: 'Edition statement',
  contributors: 'Contributors',
  language: 'Language',
  imprint: 'Imprint',
  series: 'Series',
  seriesNumber: 'Volume in the series',
  description: 'Description',
  keywords: 'Keywords',
  subjects: 'Subjects',
  audience: 'Audience',
  ageFrom: 'Age from',
  ageTo: 'Age to',
  isbn: 'ISBN',
  form: 'Product form',
  formDetail: 'File format or detail',
  caseKind: 'Kind of case',
  trimWidthUm: 'Trim width',
  trimHeightUm: 'Trim height',
  pages: 'Pages',
  durationMinutes: 'Running time',
  interiorColour: 'Interior colour',
  paper: 'Paper',
  finish: 'Cover finish',
  insideCoverPrint: 'Printing inside the cover',
  largePrint: 'Large print',
  rightToLeft: 'Reads right to left',
  publicationDate: 'Publication date',
  onSaleDate: 'On-sale date',
  note: 'Note',
  prices: 'Prices',
};

/** The plain name of a field that the contract names. */
export function fieldName(field: string): string {
  return Object.hasOwn(FIELD_NAMES, field) ? FIELD_NAMES[field as keyof typeof FIELD_NAMES] : field;
}

/** How the subject schemes are written. */
export const SCHEME_NAMES = { thema: 'Thema', bisac: 'BISAC', own: 'Own scheme' } as const;

/** Languages offered first: ISO 639-2/B codes; any other code may be typed. */
const LANGUAGES = [
  'eng fre ger spa ita por dut swe nor dan fin ice pol cze slo hun rum bul gre rus ukr hrv srp slv est lav',
  'lit gle wel baq cat glg tur ara heb yid per hin chi jpn kor lat mul',
]
  .join(' ')
  .split(' ');

const languageNames = new Intl.DisplayNames('en', { type: 'language', fallback: 'none' });

/** Plain name of a language from its three-letter code. */
export function languageName(code: string): string {
  try {
    return languageNames.of(code) ?? code;
  } catch {
    return code;
  }
}

/** The offered languages in the order of their names. */
export const LANGUAGE_CHOICES = LANGUAGES.map((code) => ({ code, name: languageName(code) })).sort((a, b) =>
  a.name.localeCompare(b.name),
);

/** Plain name of a returns code (ONIX List 66). */
export function returnsName(code: string | null): string {
  return RETURNS.find((entry) => entry.code === code)?.name ?? '';
}

/** '40 %' from basis points. */
export function percent(basisPoints: number): string {
  return `${(basisPoints / 100).toLocaleString(undefined, { maximumFractionDigits: 2 })} %`;
}

/** A name as it stands inside a sentence: 'e-book (EPUB)'. */
export function inSentence(name: string): string {
  return name.charAt(0).toLowerCase() + name.slice(1);
}

/** 'a', 'a and b', 'a, b and c'. */
export function listed(parts: readonly string[]): string {
  return new Intl.ListFormat('en-GB', { type: 'conjunction' }).format(parts);
}

/** '1 format', '3 formats'. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count.toLocaleString()} ${count === 1 ? one : many}`;
}
