import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseIsbn } from '../../src/rules/isbn/index.ts';
import { fieldsOf } from '../rules/isbn/numbers.ts';
import { marcRecords } from '../support/marc.ts';

/** lcnetdev/marc2bibframe2 @ 69fd54e8, CC0 1.0 (STANDARDS H, data/marc): field 020 $a as cataloguers typed it. */
const FILES = [
  { file: 'marc2bibframe2__loc_general.xml', numbers: 158 },
  { file: 'marc2bibframe2__british_library.xml', numbers: 130 },
];
const folder = new URL('../../../shared/data/marc/', import.meta.url);

describe.each(FILES)('field 020 of $file', ({ file, numbers }) => {
  const path = new URL(file, folder);
  const present = existsSync(path);
  if (!present) console.log(`skipped: ${path.pathname} is not there`);

  it.skipIf(!present)(`holds ${numbers} numbers, all read with their remarks and closing marks`, () => {
    const texts = marcRecords(path).flatMap(({ isbns }) => isbns);
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
