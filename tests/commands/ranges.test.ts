import { existsSync, readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { openTestCatalogue, type TestCatalogue } from '../support/catalogue.ts';

// The agency's own range message, STANDARDS.md A9 and MANIFEST.md; read in place, never copied.
const MESSAGE = new URL('../../../shared/data/isbn/RangeMessage-2026-08-22.xml', import.meta.url);
const there = existsSync(MESSAGE);
if (!there) console.log('Skipped: the agency’s range message is not at ../shared/data/isbn.');

let catalogue: TestCatalogue;
beforeEach(() => {
  catalogue = openTestCatalogue('2026-11-25');
});
afterEach(() => catalogue.close());

const newer = (xml: string) => xml.replace('22 Aug 2026', '22 Oct 2026');

it('says which table is in use', () => {
  expect(catalogue.call('ranges.get', {})).toMatchObject({ date: '2026-08-22', groups: 287, loadedOn: null });
});

it.skipIf(!there)('puts a newer message in use, for this catalogue and until it is undone', () => {
  const xml = readFileSync(MESSAGE, 'utf8');
  // 978-0 with registrants 00 to 19 of three digits instead of two, as a later message might have it.
  const changed = newer(xml).replace(
    /(<Prefix>978-0<\/Prefix>[\s\S]*?<Range>0000000-1999999<\/Range>\s*<Length>)2/,
    '$13',
  );
  const of = () => catalogue.call('isbns.check', { texts: ['9780140449136'] }).checks[0]?.hyphenated;
  expect(of()).toBe('978-0-14-044913-6');
  expect(catalogue.call('ranges.load', { xml: changed })).toMatchObject({
    date: '2026-10-22',
    loadedOn: '2026-11-25',
  });
  expect(of()).toBe('978-0-140-44913-6');
  expect(catalogue.call('catalogue.info', {}).rangesDate).toBe('2026-10-22');
  catalogue.call('journal.undo', {
    commandSeq: catalogue.call('journal.list', { count: 1 }).entries[0]?.commandSeq ?? 0,
  });
  expect(of()).toBe('978-0-14-044913-6');
});

it.skipIf(!there)('refuses an older, a broken and a hostile message, and keeps the table', () => {
  const xml = readFileSync(MESSAGE, 'utf8');
  const bad = [
    xml.replace('22 Aug 2026', '22 Aug 2020'),
    newer(xml).slice(0, 100_000),
    newer(xml).replace(/<Length>2</, '<Length>9<'),
    `<!DOCTYPE a [<!ENTITY b "${'c'.repeat(100)}">]>${newer(xml)}`,
    'not xml at all',
  ];
  for (const text of bad)
    expect(catalogue.refusal('ranges.load', { xml: text })).toMatchObject({
      code: 'BAD_INPUT',
      field: 'xml',
    });
  expect(catalogue.call('ranges.get', {})).toMatchObject({ date: '2026-08-22', loadedOn: null });
});
