import type { OutCell, OutRow } from './sheet-out.ts';
import { contributorsCell } from './subjects.ts';

/** What else an agency is told. */
export interface AgencyRow extends OutRow {
  publisher: string;
  /** ISO 3166-1 code out of the settings; empty where it is not told. */
  country: string;
  /** Numbers of the other formats of the same edition, with hyphens. */
  alsoAs: readonly string[];
}

const text = (value: string | null): OutCell => (value ? { as: 'text', value } : null);

/**
 * The columns of an agency sheet: the metadata to be registered with each number (STANDARDS.md A12, after the Users'
 * Manual). The number of the whole that a part belongs to and usage constraints of digital formats are asked for there
 * too; the catalogue does not record them, so their columns are empty for the user to fill.
 */
export const AGENCY_COLUMNS: readonly { header: string; cell(row: AgencyRow): OutCell }[] = [
  { header: 'ISBN', cell: ({ isbn }) => text(isbn) },
  { header: 'Product form (ONIX List 150)', cell: ({ format }) => text(format.form) },
  { header: 'Product form detail (ONIX List 175)', cell: ({ format }) => text(format.formDetail) },
  { header: 'Title', cell: ({ edition }) => text(edition.title) },
  { header: 'Subtitle', cell: ({ edition }) => text(edition.subtitle) },
  { header: 'Series', cell: ({ edition }) => text(edition.series) },
  { header: 'Volume', cell: ({ edition }) => text(edition.seriesNumber) },
  { header: 'Contributors', cell: ({ edition }) => text(contributorsCell(edition.contributors)) },
  {
    header: 'Edition number',
    cell: ({ edition }) => (edition.number === null ? null : { as: 'number', value: String(edition.number) }),
  },
  { header: 'Edition statement', cell: ({ edition }) => text(edition.statement) },
  { header: 'Language of text (ISO 639-2/B)', cell: ({ edition }) => text(edition.language) },
  { header: 'Imprint', cell: ({ edition }) => text(edition.imprint) },
  { header: 'Publisher', cell: ({ publisher }) => text(publisher) },
  { header: 'Country of publication', cell: ({ country }) => text(country) },
  {
    header: 'Publication date',
    cell: ({ format }) =>
      format.publicationDate === null ? null : { as: 'date', value: format.publicationDate },
  },
  { header: 'Other formats of this edition', cell: ({ alsoAs }) => text(alsoAs.join('; ')) },
  { header: 'ISBN of the whole (parts only)', cell: () => null },
  { header: 'Usage constraints (digital only)', cell: () => null },
];
