import { readFileSync } from 'node:fs';
import { XMLParser } from 'fast-xml-parser';

interface Field {
  tag: string;
  subfield: { code: string; '#text': string }[];
}

/** What a catalogue record of MARC 21 tells of a book; texts as cataloguers typed them, with their closing marks. */
export interface MarcRecord {
  /** Every field 020 $a: a number, often with a remark in brackets. */
  isbns: string[];
  /** Field 245 $a and $b. */
  title: string;
  subtitle: string;
  /** Field 100 $a, the main author; '' where there is none. */
  author: string;
  /** Field 250, with $a and $b together; '' where there is none. */
  edition: string;
}

/** A text without the punctuation that cataloguers (ISBD) put between a field's parts and at its end. */
const trimmed = (text: string) => text.replace(/[\s/:;,=]+$/, '').trim();

/** Reads a collection of MARCXML. */
export function marcRecords(file: URL): MarcRecord[] {
  const parser = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: '',
    parseTagValue: false,
    parseAttributeValue: false,
    removeNSPrefix: true,
    isArray: (name) => name === 'record' || name === 'datafield' || name === 'subfield',
  });
  const { collection } = parser.parse(readFileSync(file, 'utf8'));
  return collection.record.map(({ datafield }: { datafield: Field[] }) => {
    const fields = (tag: string) => datafield.filter((field) => field.tag === tag);
    const part = (field: Field | undefined, code: string) =>
      (field?.subfield ?? []).filter((one) => one.code === code).map((one) => one['#text']);
    const [title] = fields('245');
    const [edition] = fields('250');
    return {
      isbns: fields('020').flatMap((field) => part(field, 'a')),
      title: trimmed(part(title, 'a').join(' ')),
      subtitle: trimmed(part(title, 'b').join(' ')),
      author: trimmed(part(fields('100')[0], 'a').join(' ')),
      edition: trimmed([...part(edition, 'a'), ...part(edition, 'b')].join(' ')),
    };
  });
}
