import { type Zippable, zipSync } from 'fflate';

/** The files of an e-book by their names in the archive, in the order they are packed. */
export type EpubParts = Record<string, string | Uint8Array>;

/** A grey picture of one pixel, with the size of a cover in its header. */
export function fakePng(widthPx: number, heightPx: number): Uint8Array {
  const bytes = Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
    'base64',
  );
  bytes.writeUInt32BE(widthPx, 16);
  bytes.writeUInt32BE(heightPx, 20);
  return bytes;
}

export const CONTAINER = `<?xml version="1.0" encoding="UTF-8"?>
<container version="1.0" xmlns="urn:oasis:names:tc:opendocument:xmlns:container">
  <rootfiles><rootfile full-path="OEBPS/package.opf" media-type="application/oebps-package+xml"/></rootfiles>
</container>`;

export const page = (title: string, body: string) => `<?xml version="1.0" encoding="UTF-8"?>
<html xmlns="http://www.w3.org/1999/xhtml" xmlns:epub="http://www.idpf.org/2007/ops" xml:lang="en" lang="en">
<head><title>${title}</title></head>
<body>${body}</body>
</html>`;

const METADATA = `<dc:identifier id="own">urn:isbn:9798969999046</dc:identifier>
    <meta refines="#own" property="identifier-type" scheme="onix:codelist5">15</meta>
    <dc:title id="title">The Salt Almanac</dc:title>
    <meta refines="#title" property="title-type">main</meta>
    <dc:creator id="author">Maren Oskarsdal</dc:creator>
    <meta refines="#author" property="role" scheme="marc:relators">aut</meta>
    <dc:contributor id="foreword">Tobias Wrenfield</dc:contributor>
    <meta refines="#foreword" property="role" scheme="marc:relators">aui</meta>
    <dc:language>en-GB</dc:language>
    <dc:publisher>Halyard &amp; Fen</dc:publisher>
    <dc:date>2027-03-04</dc:date>
    <dc:source>urn:isbn:9798969999022</dc:source>
    <meta property="dcterms:modified">2026-11-20T09:00:00Z</meta>`;

const PACKAGE = `<?xml version="1.0" encoding="UTF-8"?>
<package xmlns="http://www.idpf.org/2007/opf" version="3.0" unique-identifier="own" xml:lang="en">
  <metadata xmlns:dc="http://purl.org/dc/elements/1.1/">
    ${METADATA}
  </metadata>
  <manifest>
    <item id="nav" href="nav.xhtml" media-type="application/xhtml+xml" properties="nav"/>
    <item id="cover" href="images/cover.png" media-type="image/png" properties="cover-image"/>
    <item id="title-page" href="title.xhtml" media-type="application/xhtml+xml"/>
    <item id="copyright" href="copyright.xhtml" media-type="application/xhtml+xml"/>
    <item id="one" href="chapter-1.xhtml" media-type="application/xhtml+xml"/>
    <item id="two" href="chapter-2.xhtml" media-type="application/xhtml+xml"/>
    <item id="styles" href="styles.css" media-type="text/css"/>
  </manifest>
  <spine>
    <itemref idref="title-page"/><itemref idref="copyright"/><itemref idref="one"/><itemref idref="two"/>
  </spine>
</package>`;

const NAVIGATION = page(
  'Contents',
  `<nav epub:type="toc"><h1>Contents</h1><ol>
    <li><a href="chapter-1.xhtml">One</a></li><li><a href="chapter-2.xhtml">Two</a></li>
  </ol></nav>
  <nav epub:type="landmarks" hidden="hidden"><h2>Landmarks</h2><ol>
    <li><a epub:type="bodymatter" href="chapter-1.xhtml">Start</a></li>
    <li><a epub:type="copyright-page" href="copyright.xhtml">Copyright</a></li>
  </ol></nav>`,
);

/** The demo press's e-book of the second edition, without a fault, as its record says (tests/support/proof-files/record.ts). */
export const SALT_ALMANAC: EpubParts = {
  mimetype: 'application/epub+zip',
  'META-INF/container.xml': CONTAINER,
  'OEBPS/package.opf': PACKAGE,
  'OEBPS/nav.xhtml': NAVIGATION,
  'OEBPS/images/cover.png': fakePng(1600, 2560),
  'OEBPS/title.xhtml': page(
    'The Salt Almanac',
    '<h1>The Salt Almanac</h1><p>Second edition</p><p>Maren Oskarsdal</p><p>With a foreword by Tobias Wrenfield</p><p>Halyard &amp; Fen</p>',
  ),
  'OEBPS/copyright.xhtml': page(
    'Copyright',
    `<p>The Salt Almanac. Second edition</p>
    <p>Copyright © 2019, 2027 Maren Oskarsdal. All rights reserved.</p>
    <p>Published by Halyard &amp; Fen, Nettlewick</p>
    <p>ISBN 979-8-969999-04-6 (E-book)<br/>ISBN 979-8-969999-02-2 (Paperback)<br/>ISBN 979-8-969999-03-9 (Hardcover)</p>
    <p>These numbers are invented and must never be printed.</p>`,
  ),
  'OEBPS/chapter-1.xhtml': page('One', '<h1>One</h1><p>The harbour froze on the ninth day.</p>'),
  'OEBPS/chapter-2.xhtml': page('Two', '<h1>Two</h1><p>They counted the barrels twice.</p>'),
  'OEBPS/styles.css': 'body { margin: 1em; }',
};

/** Packs parts as an EPUB: what is named in `stored` is not compressed, the mark of the kind never is. */
export function packed(parts: EpubParts, stored: readonly string[] = ['mimetype']): Uint8Array {
  const files: Zippable = {};
  for (const [name, content] of Object.entries(parts))
    files[name] = [
      typeof content === 'string' ? Buffer.from(content) : content,
      { level: stored.includes(name) ? 0 : 6, mtime: '2026-11-20T09:00:00Z' },
    ];
  return zipSync(files);
}

/** A book like the clean one, with the text of one part changed; throws where there is nothing to change. */
export function changed(name: string, from: string | RegExp, to: string, base = SALT_ALMANAC): EpubParts {
  const before = base[name];
  if (typeof before !== 'string') throw new Error(`No text ${name}`);
  const after = before.replace(from, to);
  if (after === before) throw new Error(`Nothing in ${name} matches ${from}`);
  return { ...base, [name]: after };
}
