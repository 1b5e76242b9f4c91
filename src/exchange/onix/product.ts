import type { EditionFields } from '../../contract/editions.ts';
import type { FormatFields } from '../../contract/formats.ts';
import type { FormatStanding } from '../../contract/terms.ts';
import type { Block } from './order.ts';

/**
 * A part of a product record that came in by a message and is given back as it came. `bound` parts stand for a
 * value of the catalogue and are given back only as long as that value is the same (`key`); the others always.
 * An unbound part keeps our own part of the same name and key (or of any key, where its key is '*') out.
 */
export interface KeptPart {
  place: 'Product' | Block;
  /** Reference name of the part. */
  name: string;
  key: string;
  bound: boolean;
  /** Version of the message it came with: '3.1', '3.0' or '2.1'. */
  version: string;
  /** The part in reference names. */
  xml: string;
}

export interface RelatedFormat {
  /** List 51. */
  codes: string[];
  isbn13: string;
}

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
