import { afterAll, expect, test } from 'vitest';
import type { CheckLine } from '../../../src/contract/proof-checks/facts.ts';
import { checkFile } from '../../../src/rules/proof-check/index.ts';
import type { ProofRecord } from '../../../src/rules/proof-check/record.ts';
import { packed, page, SALT_ALMANAC } from '../../support/proof-files/epub.ts';
import { CLEAN_EPUBS } from '../../support/proof-files/epub-clean.ts';
import { PLANTED_EPUBS } from '../../support/proof-files/epub-planted.ts';
import { epubRecord } from '../../support/proof-files/epub-record.ts';
import { readBytes } from '../../support/proof-files/laid.ts';
import { Tally } from '../../support/proof-files/tally.ts';

const COPYRIGHT = 'OEBPS/copyright.xhtml';
const TITLE = 'OEBPS/title.xhtml';
const ONE = 'OEBPS/chapter-1.xhtml';

async function linesOf(bytes: Uint8Array, record: Partial<ProofRecord> = {}): Promise<CheckLine[]> {
  const { facts } = await readBytes(bytes, 'e-book');
  return checkFile('e-book', facts, epubRecord(record));
}

const tally = new Tally('E-books');
afterAll(() => tally.print());

test('every planted fault is found, each by its own line and no other', async () => {
  for (const [name, { bytes, expected, record }] of Object.entries(PLANTED_EPUBS))
    tally.take(name, await linesOf(bytes, record), expected);
  expect(tally.planted).toBeGreaterThanOrEqual(12);
  expect(tally.missed).toEqual([]);
  expect(tally.falseAlarms).toEqual([]);
});

test('clean files raise nothing', async () => {
  for (const [name, { parts, record }] of Object.entries(CLEAN_EPUBS))
    tally.take(name, await linesOf(packed(parts), record), {});
  expect(tally.clean).toBeGreaterThanOrEqual(6);
  expect(tally.falseAlarms).toEqual([]);
});

test('a number of another format is named with its format', async () => {
  const { bytes } = PLANTED_EPUBS['the paperback’s number as identifier'] ?? { bytes: new Uint8Array() };
  const line = (await linesOf(bytes)).find(({ check }) => check === 'epub.identifier');
  expect(line).toMatchObject({
    expected: '979-8-969999-04-6',
    found: '979-8-969999-02-2',
    advice:
      '979-8-969999-02-2 is of another format of this edition, Paperback; the identifier has to be this e-book’s own number. The number of a printed format belongs in the source (dc:source), if anywhere.',
  });
});

test('a book of pictures alone cannot be told by its text', async () => {
  const pictures = page('', '<img src="images/cover.png" alt=""/>');
  const parts = { ...SALT_ALMANAC, [TITLE]: pictures, [COPYRIGHT]: pictures, [ONE]: pictures };
  const lines = await linesOf(packed({ ...parts, 'OEBPS/chapter-2.xhtml': pictures }));
  const untold = lines.filter(({ state }) => state === 'cannot tell').map(({ check }) => check);
  expect(untold).toEqual(['epub.copyright-isbn', 'epub.printed-title', 'epub.edition']);
});
