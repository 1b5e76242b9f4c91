import { unreadable } from '../watch.ts';
import type { Archive } from '../zip/archive.ts';
import { inflate } from '../zip/inflate.ts';
import { shownName } from '../zip/names.ts';
import type { Findings } from './faults.ts';
import { inArchive } from './paths.ts';
import { attribute, readXml } from './xml.ts';

const MIMETYPE = 'application/epub+zip';
const PACKAGE_TYPE = 'application/oebps-package+xml';
/** Small files of the container; larger ones are none. */
const MOST_SMALL = 1024 * 1024;

/**
 * The first entry has to be `mimetype`, stored, with no extra field and nothing but the type in it, so that the first bytes
 * tell what the file is (OCF 3.3, OCF ZIP container media type identification).
 */
async function checkMimetype(archive: Archive, findings: Findings): Promise<void> {
  const entry = archive.byName.get('mimetype');
  const again = 'Pack it again with a program for e-books.';
  if (entry === undefined) {
    findings.fault(`The file that says what it is, mimetype, is missing. ${again}`);
    return;
  }
  const first = archive.entries.every(({ offset }) => offset >= entry.offset) && entry.offset === 0;
  if (!first) findings.fault(`The file mimetype is not the first in the archive. ${again}`);
  if (!entry.stored)
    findings.fault(`The file mimetype is compressed; it has to be stored as it is. ${again}`);
  const header = await archive.zip.readLocalFileHeaderPromise(entry.raw).catch(() => null);
  if (header !== null && header.extraFieldLength > 0)
    findings.fault(`The file mimetype carries an extra field in the archive. ${again}`);
  const said = (await inflate(archive, entry, 200))?.toString('latin1');
  if (said !== MIMETYPE)
    findings.fault(`The file mimetype says something other than ${MIMETYPE}, or more than that. ${again}`);
}

/** The package document's name by META-INF/container.xml. Throws BAD_INPUT where there is none. */
async function packageName(archive: Archive, findings: Findings): Promise<string> {
  const entry = archive.byName.get('META-INF/container.xml');
  if (entry === undefined)
    throw unreadable(
      'This is not an EPUB: the archive has no META-INF/container.xml, which says where the book is. Export it again.',
    );
  const bytes = await inflate(archive, entry, MOST_SMALL);
  const paths: string[] = [];
  const trouble =
    bytes === null
      ? { what: 'is far too large', line: 0 }
      : readXml(bytes, {
          open(name, attributes) {
            if (name !== 'rootfile') return;
            const type = attribute(attributes, 'media-type')?.trim();
            const path = attribute(attributes, 'full-path')?.trim();
            if (path && (type === undefined || type === PACKAGE_TYPE)) paths.push(path);
          },
        });
  if (trouble !== null) findings.fault(`META-INF/container.xml ${trouble.what} (line ${trouble.line}).`);
  const [path] = paths;
  if (path === undefined)
    throw unreadable(
      'This EPUB does not say where its book is: META-INF/container.xml names no package. Export it again.',
    );
  if (paths.length > 1)
    findings.skipped(
      `The file holds ${paths.length} versions of the book; only the first, ${shownName(path)}, was read.`,
    );
  if (archive.byName.has(path)) return path;
  const decoded = inArchive('', path);
  if (decoded !== null && archive.byName.has(decoded)) return decoded;
  throw unreadable(
    `This EPUB names “${shownName(path)}” as the package of its book, but no such file is in it. Export it again.`,
  );
}

/** Ways to disguise fonts that reading systems undo (EPUB 3.3, font obfuscation; the second from before it). */
const FONT_DISGUISES = ['http://www.idpf.org/2008/embedding', 'http://ns.adobe.com/pdf/enc#RC'];
const FONT_NAME = /\.(?:otf|ttf|ttc|woff2?)$/i;

/** Names of entries that are encrypted, so that they cannot be read; disguised fonts are not among them. */
async function encryptedNames(archive: Archive, findings: Findings): Promise<Set<string>> {
  const locked = new Set<string>();
  const entry = archive.byName.get('META-INF/encryption.xml');
  const bytes = entry === undefined ? null : await inflate(archive, entry, MOST_SMALL);
  if (entry === undefined) return locked;
  let algorithm = '';
  const trouble =
    bytes === null
      ? { what: 'is far too large', line: 0 }
      : readXml(bytes, {
          open(name, attributes) {
            if (name === 'encrypteddata') algorithm = '';
            if (name === 'encryptionmethod' && algorithm === '')
              algorithm = attribute(attributes, 'Algorithm')?.trim() ?? '';
            if (name !== 'cipherreference') return;
            const path = inArchive('', attribute(attributes, 'URI')?.trim() ?? '');
            if (path === null || (FONT_DISGUISES.includes(algorithm) && FONT_NAME.test(path))) return;
            locked.add(path);
          },
        });
  if (trouble !== null) findings.fault(`META-INF/encryption.xml ${trouble.what} (line ${trouble.line}).`);
  return locked;
}

export interface Container {
  packageName: string;
  locked: ReadonlySet<string>;
}

/** Reads what holds the book together: the file's own mark, where the package is, and what is encrypted. */
export async function readContainer(archive: Archive, findings: Findings): Promise<Container> {
  const name = await packageName(archive, findings);
  await checkMimetype(archive, findings);
  const locked = await encryptedNames(archive, findings);
  if (locked.has(name))
    throw unreadable(
      'The package of this EPUB is encrypted (copy protection). Hand over the file from before it was protected.',
    );
  if (locked.size > 0)
    findings.fault(
      `${locked.size === 1 ? 'One file' : `${locked.size} files`} inside ${locked.size === 1 ? 'is' : 'are'} encrypted (copy protection), for example ${shownName([...locked][0] ?? '')}. Hand over the file from before it was protected.`,
    );
  return { packageName: name, locked };
}
