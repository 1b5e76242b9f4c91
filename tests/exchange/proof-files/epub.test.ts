import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { type EpubFacts, reading } from '../../../src/contract/proof-checks/facts.ts';
import { changed, type EpubParts, packed, page, SALT_ALMANAC } from '../../support/proof-files/epub.ts';
import { readBytes, refusalOf } from '../../support/proof-files/laid.ts';

async function factsOf(parts: EpubParts): Promise<EpubFacts> {
  const { facts } = await readBytes(packed(parts), 'e-book');
  if (facts.of !== 'epub') throw new Error('Not read as an EPUB');
  return facts;
}

test('reads a clean EPUB 3: metadata with what refines it, the copyright page, numbers and cover', async () => {
  const bytes = packed(SALT_ALMANAC);
  const read = await readBytes(bytes, 'e-book', 'salt.epub');
  expect(reading.parse(read)).toEqual(read);
  expect(read.fileName).toBe('salt.epub');
  expect(read.sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
  expect(read.facts).toMatchObject({
    of: 'epub',
    version: '3.0',
    identifiers: [
      { value: 'urn:isbn:9798969999046', isbn13: '9798969999046', claimsIsbn: true, unique: true },
    ],
    sources: ['urn:isbn:9798969999022'],
    titles: [{ text: 'The Salt Almanac', kind: 'main' }],
    creators: [
      { name: 'Maren Oskarsdal', role: 'aut', contributor: false },
      { name: 'Tobias Wrenfield', role: 'aui', contributor: true },
    ],
    languages: ['en-GB'],
    publishers: ['Halyard & Fen'],
    date: '2027-03-04',
    modified: '2026-11-20T09:00:00Z',
    copyrightPage: 2,
    cover: { name: 'OEBPS/images/cover.png', widthPx: 1600, heightPx: 2560 },
    documents: 4,
    scripts: 0,
    faults: [],
    unread: [],
  });
  const facts = read.facts as EpubFacts;
  expect(facts.isbns.map(({ page, raw, isbn13 }) => [page, raw, isbn13])).toEqual([
    [2, '979-8-969999-04-6', '9798969999046'],
    [2, '979-8-969999-02-2', '9798969999022'],
    [2, '979-8-969999-03-9', '9798969999039'],
  ]);
  expect(facts.lines.filter((line) => line.page === 2).map(({ text }) => text)).toEqual([
    'The Salt Almanac. Second edition',
    'Copyright © 2019, 2027 Maren Oskarsdal. All rights reserved.',
    'Published by Halyard & Fen, Nettlewick',
    'ISBN 979-8-969999-04-6 (E-book)',
    'ISBN 979-8-969999-02-2 (Paperback)',
    'ISBN 979-8-969999-03-9 (Hardcover)',
    'These numbers are invented and must never be printed.',
  ]);
});

test('tells a file of another kind by its first bytes', async () => {
  const epub = packed(SALT_ALMANAC);
  expect(await refusalOf(epub, 'interior')).toBe('This is an EPUB; the interior is a PDF.');
  expect(await refusalOf(epub, 'cover')).toBe(
    'This is an EPUB; the cover is a PDF, or a PNG or JPEG picture.',
  );
  expect(await refusalOf(new Uint8Array(0), 'interior')).toBe('The file is empty; the interior is a PDF.');
  expect(await refusalOf(Buffer.from('<!DOCTYPE html><p>x'), 'e-book')).toBe(
    'This is a web page; the e-book is an EPUB or a PDF.',
  );
  const letter = packed({ '[Content_Types].xml': '<Types/>', 'word/document.xml': '<w/>' }, []);
  expect(await refusalOf(letter, 'e-book')).toBe(
    'This is a word processor’s document; the e-book is an EPUB or a PDF.',
  );
  expect(await refusalOf(packed({ 'a.txt': 'a' }, []), 'e-book')).toMatch(/^This is not an EPUB: /);
});

test('reads EPUB 2: schemes and roles as attributes, dates with events, guide, cover by name', async () => {
  const opf = `<?xml version="1.0"?>
    <package xmlns="http://www.idpf.org/2007/opf" version="2.0" unique-identifier="id">
    <metadata xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:opf="http://www.idpf.org/2007/opf">
      <dc:identifier id="id" opf:scheme="UUID">urn:uuid:00000000-0000-4000-8000-000000000000</dc:identifier>
      <dc:identifier opf:scheme="ISBN">979-8-969999-04-6</dc:identifier>
      <dc:title>The Salt Almanac</dc:title>
      <dc:creator opf:role="aut" opf:file-as="Oskarsdal, Maren">Maren Oskarsdal</dc:creator>
      <dc:date opf:event="creation">2020-01-01</dc:date><dc:date opf:event="publication">2027</dc:date>
      <dc:language>en</dc:language><meta name="cover" content="pic"/>
    </metadata>
    <manifest><item id="ncx" href="toc.ncx" media-type="application/x-dtbncx+xml"/>
      <item id="pic" href="images/cover.png" media-type="image/png"/>
      <item id="a" href="copyright.xhtml" media-type="application/xhtml+xml"/>
      <item id="b" href="chapter-1.xhtml" media-type="application/xhtml+xml"/></manifest>
    <spine toc="ncx"><itemref idref="b"/><itemref idref="a"/></spine>
    <guide><reference type="copyright-page" href="copyright.xhtml#x"/></guide></package>`;
  const doctype =
    '<!DOCTYPE html PUBLIC "-//W3C//DTD XHTML 1.1//EN" "http://www.w3.org/TR/xhtml11/DTD/xhtml11.dtd">';
  const facts = await factsOf({
    ...SALT_ALMANAC,
    'OEBPS/package.opf': opf,
    'OEBPS/toc.ncx': '<ncx xmlns="http://www.daisy.org/z3986/2005/ncx/"/>',
    'OEBPS/chapter-1.xhtml': `${doctype}<html><body><p>caf&eacute;&nbsp;&alpha;</p></body></html>`,
  });
  expect(facts).toMatchObject({
    version: '2.0',
    identifiers: [
      { claimsIsbn: false, unique: true },
      { isbn13: '9798969999046', claimsIsbn: true, unique: false },
    ],
    creators: [{ name: 'Maren Oskarsdal', role: 'aut' }],
    date: '2027',
    copyrightPage: 2,
    cover: { widthPx: 1600 },
    faults: [],
  });
  expect(facts.lines[0]?.text).toMatch(/^café /);
});

test('finds the copyright page by what it says of itself, and by its content', async () => {
  const unnamed = changed('OEBPS/nav.xhtml', /<li><a epub:type="copyright-page".*<\/li>/, '');
  expect((await factsOf(unnamed)).copyrightPage).toBe(2);
  const saying = changed(
    'OEBPS/chapter-2.xhtml',
    '<h1>Two</h1>',
    '<section epub:type="copyright-page"><h1>Two</h1></section>',
    unnamed,
  );
  expect((await factsOf(saying)).copyrightPage).toBe(4);
  const none = { ...unnamed, 'OEBPS/copyright.xhtml': page('Blank', '<p>For the harbour.</p>') };
  expect((await factsOf(none)).copyrightPage).toBeNull();
});
