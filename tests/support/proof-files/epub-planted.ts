import type { ProofRecord } from '../../../src/rules/proof-check/record.ts';
import { changed, type EpubParts, packed, SALT_ALMANAC } from './epub.ts';
import type { Planted } from './tally.ts';

const OPF = 'OEBPS/package.opf';
const COPYRIGHT = 'OEBPS/copyright.xhtml';
const TITLE = 'OEBPS/title.xhtml';
const ONE = 'OEBPS/chapter-1.xhtml';

/** A file with one fault, and what it has to change. */
export interface PlantedEpub {
  bytes: Uint8Array;
  expected: Planted;
  record?: Partial<ProofRecord>;
}

const planted = (parts: EpubParts, expected: Planted, record: Partial<ProofRecord> = {}): PlantedEpub => ({
  bytes: packed(parts),
  expected,
  record,
});
const inPackage = (from: string | RegExp, to: string) => changed(OPF, from, to);
const onCopyright = (from: string | RegExp, to: string) => changed(COPYRIGHT, from, to);
const without = (name: string) =>
  Object.fromEntries(Object.entries(SALT_ALMANAC).filter(([key]) => key !== name));

/** What a fault of the container or package changes. */
export const STRUCTURE: Planted = { 'epub.structure': 'differs' };

/** One fault each. */
export const PLANTED_EPUBS: Readonly<Record<string, PlantedEpub>> = {
  'the paperback’s number as identifier': planted(
    inPackage('urn:isbn:9798969999046', 'urn:isbn:9798969999022'),
    { 'epub.identifier': 'differs' },
  ),
  'the first edition’s number as identifier': planted(
    inPackage('urn:isbn:9798969999046', 'urn:isbn:9798969999008'),
    { 'epub.identifier': 'differs' },
  ),
  'an identifier with a wrong check digit': planted(
    inPackage('urn:isbn:9798969999046', 'urn:isbn:9798969999047'),
    { 'epub.identifier': 'differs' },
  ),
  'no ISBN among the identifiers': planted(
    inPackage(
      /<dc:identifier.*?<\/dc:identifier>\s*<meta refines="#own".*?<\/meta>/s,
      '<dc:identifier id="own">urn:uuid:7c9d3a52-0000-4000-8000-5a17a1a9ac00</dc:identifier>',
    ),
    { 'epub.identifier': 'not found' },
  ),
  'the paperback’s number as a second identifier': planted(
    inPackage('<dc:title', '<dc:identifier>urn:isbn:9798969999022</dc:identifier><dc:title'),
    { 'epub.identifier': 'differs' },
  ),
  'the paperback’s number alone on the copyright page': planted(
    onCopyright(/ISBN 979-8-969999-04-6 \(E-book\)<br\/>/, ''),
    { 'epub.copyright-isbn': 'differs' },
  ),
  'no number on the copyright page': planted(onCopyright(/<p>ISBN.*?<\/p>/s, ''), {
    'epub.copyright-isbn': 'not found',
  }),
  'a print number without its format': planted(
    onCopyright('979-8-969999-02-2 (Paperback)<br/>ISBN 979-8-969999-03-9 (Hardcover)', '979-8-969999-02-2'),
    { 'epub.other-isbns': 'differs' },
  ),
  'the first edition’s number on the copyright page': planted(
    onCopyright('979-8-969999-02-2', '979-8-969999-00-8'),
    { 'epub.other-isbns': 'differs' },
  ),
  'a spent number in the book': planted(changed(ONE, 'ninth day.', 'ninth day. ISBN 979-8-969999-01-5'), {
    'epub.other-isbns': 'differs',
  }),
  'a number with a wrong check digit on the copyright page': planted(
    onCopyright('979-8-969999-02-2', '979-8-969999-02-3'),
    { 'epub.other-isbns': 'differs' },
  ),
  'another title': planted(inPackage('>The Salt Almanac<', '>Knots for Small Hands<'), {
    'epub.title': 'differs',
  }),
  'no title': planted(inPackage(/<dc:title.*?<\/meta>/s, ''), { 'epub.title': 'not found' }),
  'another subtitle': planted(
    inPackage(
      '<dc:creator id="author">',
      '<dc:title id="sub">A Winter</dc:title><meta refines="#sub" property="title-type">subtitle</meta><dc:creator id="author">',
    ),
    { 'epub.subtitle': 'differs' },
    { subtitle: 'A Year on the Fen' },
  ),
  'another book inside': planted(
    changed(TITLE, 'The Salt Almanac</h1>', 'Knots</h1>', onCopyright('The Salt Almanac. ', '')),
    { 'epub.printed-title': 'not found' },
  ),
  'the first edition’s statement': planted(
    changed(TITLE, '<p>Second edition</p>', '', onCopyright('Second edition', 'First edition')),
    { 'epub.edition': 'differs' },
  ),
  'no edition statement': planted(
    changed(TITLE, '<p>Second edition</p>', '', onCopyright('. Second edition', '')),
    { 'epub.edition': 'not found' },
  ),
  'last edition’s year': planted(onCopyright('2019, 2027', '2019'), { 'epub.year': 'differs' }),
  'no notice of copyright': planted(onCopyright(/<p>Copyright.*?<\/p>/s, ''), { 'epub.year': 'not found' }),
  'an author misspelt': planted(inPackage('Maren Oskarsdal', 'Maren Oskarsdahl'), {
    'epub.authors': 'differs',
  }),
  'another author': planted(inPackage('Maren Oskarsdal', 'Ilse Quayle'), { 'epub.authors': 'differs' }),
  'no author': planted(inPackage(/<dc:creator.*?<\/meta>/s, ''), { 'epub.authors': 'not found' }),
  'the author as illustrator': planted(inPackage('>aut<', '>ill<'), { 'epub.authors': 'differs' }),
  'no foreword': planted(
    changed(TITLE, /<p>With a foreword.*?<\/p>/, '', inPackage(/<dc:contributor.*?<\/meta>/s, '')),
    { 'epub.contributors': 'not found' },
  ),
  'another language': planted(inPackage('en-GB', 'de'), { 'epub.language': 'differs' }),
  'no language': planted(inPackage(/<dc:language>.*?<\/dc:language>/, ''), {
    'epub.language': 'not found',
  }),
  'another publisher': planted(inPackage('Halyard &amp; Fen', 'Nettlewick House'), {
    'epub.publisher': 'differs',
  }),
  'the day of export as date': planted(inPackage('2027-03-04', '2026-11-20'), { 'epub.date': 'differs' }),
  'an EPUB for a format recorded as PDF': planted(
    SALT_ALMANAC,
    { 'epub.kind': 'differs' },
    { formDetail: 'E107' },
  ),
  'no cover named': planted(inPackage(' properties="cover-image"', ''), { 'epub.cover': 'not found' }),
  'a chapter missing from the archive': planted(without('OEBPS/chapter-2.xhtml'), STRUCTURE),
  'a chapter whose name differs in capitals': planted(
    inPackage('chapter-2.xhtml', 'Chapter-2.xhtml'),
    STRUCTURE,
  ),
  'a chapter that is not well-formed': planted(changed(ONE, '</p>', ''), STRUCTURE),
  'a named character that the document does not declare': planted(
    changed(ONE, 'ninth day', 'ninth&nbsp;day', changed(ONE, '<html', '<!DOCTYPE html><html')),
    STRUCTURE,
  ),
  'a picture from the internet': planted(
    changed(ONE, '</p>', '<img src="https://example.org/a.png" alt=""/></p>'),
    STRUCTURE,
  ),
  'styles from the internet': planted(
    changed('OEBPS/styles.css', 'body', '@import url("https://example.org/a.css"); body'),
    STRUCTURE,
  ),
  'a mark of the kind that is compressed': {
    bytes: packed({ ...SALT_ALMANAC, mimetype: 'application/epub+zip' }, []),
    expected: STRUCTURE,
  },
  'a mark of the kind that is not first': {
    bytes: packed({
      'META-INF/container.xml': SALT_ALMANAC['META-INF/container.xml'] ?? '',
      ...SALT_ALMANAC,
    }),
    expected: STRUCTURE,
  },
  'no table of contents': planted(inPackage(' properties="nav"', ''), STRUCTURE),
  'a reading order that names nothing': planted(inPackage('idref="two"', 'idref="three"'), STRUCTURE),
  'two dates of change': planted(
    inPackage('</metadata>', '<meta property="dcterms:modified">2026-11-21T09:00:00Z</meta></metadata>'),
    STRUCTURE,
  ),
  'chapters under copy protection': planted(
    {
      ...SALT_ALMANAC,
      'META-INF/encryption.xml': `<encryption xmlns="urn:oasis:names:tc:opendocument:xmlns:container"><EncryptedData>
        <EncryptionMethod Algorithm="http://www.w3.org/2001/04/xmlenc#aes256-cbc"/>
        <CipherData><CipherReference URI="OEBPS/chapter-1.xhtml"/></CipherData></EncryptedData></encryption>`,
    },
    { ...STRUCTURE, 'file.unread': 'cannot tell' },
  ),
  'programs inside': planted(changed(ONE, '</p>', '</p><script>document.write(1)</script>'), {
    'epub.scripts': 'cannot tell',
  }),
};
