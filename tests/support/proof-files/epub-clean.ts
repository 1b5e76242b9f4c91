import type { ProofRecord } from '../../../src/rules/proof-check/record.ts';
import { changed, type EpubParts, page, SALT_ALMANAC } from './epub.ts';

export interface CleanEpub {
  parts: EpubParts;
  record?: Partial<ProofRecord>;
}

const OPF = 'OEBPS/package.opf';
const COPYRIGHT = 'OEBPS/copyright.xhtml';

const XHTML_11 =
  '<!DOCTYPE html PUBLIC "-//W3C//DTD XHTML 1.1//EN" "http://www.w3.org/TR/xhtml11/DTD/xhtml11.dtd">';

const old = (title: string, body: string) => `<?xml version="1.0" encoding="UTF-8"?>
${XHTML_11}
<html xmlns="http://www.w3.org/1999/xhtml" xml:lang="en"><head><title>${title}</title></head><body>${body}</body></html>`;

/** The same book as EPUB 2, with the metadata of its time. */
const EPUB_2: EpubParts = {
  mimetype: 'application/epub+zip',
  'META-INF/container.xml': SALT_ALMANAC['META-INF/container.xml'] ?? '',
  [OPF]: `<?xml version="1.0" encoding="UTF-8"?>
<package xmlns="http://www.idpf.org/2007/opf" version="2.0" unique-identifier="id">
  <metadata xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:opf="http://www.idpf.org/2007/opf">
    <dc:identifier id="id" opf:scheme="UUID">urn:uuid:7c9d3a52-0000-4000-8000-5a17a1a9ac00</dc:identifier>
    <dc:identifier opf:scheme="ISBN">979-8-969999-04-6</dc:identifier>
    <dc:title>The Salt Almanac (second edition)</dc:title>
    <dc:creator opf:role="aut" opf:file-as="Oskarsdal, Maren">Oskarsdal, Maren</dc:creator>
    <dc:language>en</dc:language>
    <dc:publisher>HALYARD and FEN</dc:publisher>
    <dc:date opf:event="creation">2020-01-01</dc:date>
    <dc:date opf:event="publication">2027</dc:date>
    <meta name="cover" content="cover"/>
  </metadata>
  <manifest>
    <item id="ncx" href="toc.ncx" media-type="application/x-dtbncx+xml"/>
    <item id="cover" href="images/cover.png" media-type="image/png"/>
    <item id="copyright" href="copyright.xhtml" media-type="application/xhtml+xml"/>
    <item id="one" href="chapter-1.xhtml" media-type="application/xhtml+xml"/>
  </manifest>
  <spine toc="ncx"><itemref idref="copyright"/><itemref idref="one"/></spine>
  <guide><reference type="copyright-page" title="Copyright" href="copyright.xhtml"/></guide>
</package>`,
  'OEBPS/toc.ncx': `<?xml version="1.0" encoding="UTF-8"?>
<ncx xmlns="http://www.daisy.org/z3986/2005/ncx/" version="2005-1">
  <head><meta name="dtb:uid" content="urn:uuid:7c9d3a52-0000-4000-8000-5a17a1a9ac00"/></head>
  <docTitle><text>The Salt Almanac</text></docTitle>
  <navMap><navPoint id="n1" playOrder="1"><navLabel><text>One</text></navLabel><content src="chapter-1.xhtml"/></navPoint></navMap>
</ncx>`,
  'OEBPS/images/cover.png': SALT_ALMANAC['OEBPS/images/cover.png'] ?? '',
  [COPYRIGHT]: old(
    'Copyright',
    `<h1>The Salt Almanac</h1><p>Second edition &copy; 2027 Maren Oskarsdal</p><p>Foreword by Tobias Wrenfield</p>
    <p>e-ISBN 979-8-969999-04-6</p>`,
  ),
  'OEBPS/chapter-1.xhtml': old('One', '<h2>One</h2><p>The harbour&nbsp;froze.</p>'),
};

/** The print numbers in a table, their formats in cells beside them, and the history of printings. */
const WITH_HISTORY = {
  ...SALT_ALMANAC,
  [COPYRIGHT]: page(
    'Copyright',
    `<p>First published 2019. First edition 2019. Second edition, revised and enlarged, 2027.</p>
    <p>© Maren Oskarsdal 2019, 2027</p>
    <table><tr><td>ISBN 9798969999046</td><td>EPUB</td></tr><tr><td>ISBN 9798969999022</td><td>Paperback</td></tr></table>`,
  ),
};

const ALSO_BY = changed(
  'OEBPS/chapter-2.xhtml',
  '</body>',
  '<h2>Also from this press</h2><p>Knots for Small Hands, ISBN 979-8-969999-06-0</p><p>The Salt Almanac, first edition, 979-8-969999-00-8</p></body>',
);

const FONT_DISGUISED = {
  ...changed(OPF, '</manifest>', '<item id="font" href="fonts/body.otf" media-type="font/otf"/></manifest>'),
  'META-INF/encryption.xml': `<?xml version="1.0" encoding="UTF-8"?>
<encryption xmlns="urn:oasis:names:tc:opendocument:xmlns:container" xmlns:enc="http://www.w3.org/2001/04/xmlenc#">
  <enc:EncryptedData><enc:EncryptionMethod Algorithm="http://www.idpf.org/2008/embedding"/>
  <enc:CipherData><enc:CipherReference URI="OEBPS/fonts/body.otf"/></enc:CipherData></enc:EncryptedData>
</encryption>`,
  'OEBPS/fonts/body.otf': new Uint8Array(64).fill(7),
};

/** Files without a fault, each made another way. */
export const CLEAN_EPUBS: Readonly<Record<string, CleanEpub>> = {
  'EPUB 3': { parts: SALT_ALMANAC },
  'EPUB 2 with another unique identifier': { parts: EPUB_2 },
  'a history of printings and a table of numbers': { parts: WITH_HISTORY },
  'numbers of other books at the end': {
    parts: ALSO_BY,
    record: { others: [{ isbn13: '9798969999008', name: 'Paperback, first edition' }] },
  },
  'a disguised font': { parts: FONT_DISGUISED },
  'a subtitle beside the title': {
    parts: changed(
      OPF,
      '<dc:creator id="author">',
      '<dc:title id="sub">A Year on the Fen</dc:title><meta refines="#sub" property="title-type">subtitle</meta><dc:creator id="author">',
    ),
    record: { subtitle: 'A Year on the Fen' },
  },
  'a subtitle within the title': {
    parts: changed(OPF, '>The Salt Almanac<', '>The Salt Almanac: A Year on the Fen<'),
    record: { subtitle: 'A year on the fen' },
  },
  'a first edition that states none': {
    parts: changed(
      'OEBPS/title.xhtml',
      '<p>Second edition</p>',
      '',
      changed(COPYRIGHT, 'The Salt Almanac. Second edition', 'The Salt Almanac'),
    ),
    record: { statement: '', ordinal: 1, otherEditions: [], earlierYears: [] },
  },
};
