import type { EditionFields } from '../../contract/editions.ts';
import type { FormatFields } from '../../contract/formats.ts';
import type { FormatStanding } from '../../contract/terms.ts';
import type { KeptPart, RelatedFormat } from '../../rules/onix/products.ts';

/** One format with all that a product record says of it. */
export interface OnixRecord {
  isbn13: string;
  workId: number;
  edition: EditionFields;
  format: Omit<FormatFields, 'note'>;
  standing: FormatStanding;
  /** The day its last listing was gone, for a retired one. */
  endedOn: string | null;
  /** List 66, where every listing agrees. */
  returns: string | null;
  successor: boolean;
  otherFormat: boolean;
  related: RelatedFormat[];
  kept: KeptPart[];
}

/** What every record of a message says alike, from Settings. */
export interface OnixHouse {
  publisher: string;
  /** The message's sender: the publisher, or the catalogue's name where there is none. */
  sender: string;
  lengthUnit: 'mm' | 'in';
  country: string;
  rights: { scope: 'unstated' | 'world' | 'only' | 'except'; countries: string[] };
  /** YYYY-MM-DD */
  today: string;
  demo: boolean;
}

/** `20190502` for 2019-05-02 (List 55, format 00). */
export const onixDay = (day: string): string => day.replaceAll('-', '');
