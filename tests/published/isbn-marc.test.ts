import { existsSync, readFileSync } from 'node:fs';
import { XMLParser } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { parseIsbn } from '../../src/rules/isbn/index.ts';
import { fieldsOf } from '../rules/isbn/numbers.ts';

/** lcnetdev/marc2bibframe2 @ 69fd54e8, CC0 1.0 (STANDARDS H, data/marc): field 020 $a as cataloguers typed it. */
const FILES = [
  { file: 'marc2bibframe2__loc_general.xml', numbers: 158 },
  { file: 'marc2bibframe2__british_library.xml', numbers: 130 },
];
const folder = new URL('../../../shared/data/marc/', import.meta.url);

interface Field {
  tag: string;
  subfield: { code: string; '#text': string }[];
}

/** Every subfield $a of field 020. */
function isbnFields(file: URL): string[] {
  const parser = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: '',
    parseTagValue: false,
    parseAttributeValue: false,
    removeNSPrefix: true,
    isArray: (name) => name === 'record' || name === 'datafield' || name === 'subfield',
  });
  const { collection } = parser.parse(readFileSync(file, 'utf8'));
  return collection.record.flatMap(({ datafield }: { datafield: Field[] }) =>
    datafield
      .filter(({ tag }) => tag === '020')
      .flatMap(({ subfield }) => subfield.filter(({ code }) => code === 'a').map((one) => one['#text'])),
  );
}

describe.each(FILES)('field 020 of $file', ({ file, numbers }) => {
  const path = new URL(file, folder);
  const present = existsSync(path);
  if (!present) console.log(`skipped: ${path.pathname} is not there`);

  it.skipIf(!present)(`holds ${numbers} numbers, all read with their remarks and closing marks`, () => {
    const texts = isbnFields(path);
    expect(texts).toHaveLength(numbers);
    const refused = texts.map((text) => ({ text, read: parseIsbn(text) })).filter(({ read }) => !read.ok);
    expect(refused).toEqual([]);
    const remarked = texts.filter((text) => /[(:]/.test(text)).length;
    console.log(`${file}: ${texts.length} numbers read, ${remarked} with remarks`);
    for (const text of texts) {
      const read = parseIsbn(text);
      // Each begins with the bare number: the same must come of it alone.
      const bare = parseIsbn(/^[0-9Xx-]+/.exec(text)?.[0] ?? '');
      expect(read.ok && fieldsOf(read.isbn)).toEqual(bare.ok && fieldsOf(bare.isbn));
    }
  });
});
