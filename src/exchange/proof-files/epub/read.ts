import type { EpubFacts } from '../../../contract/proof-checks/facts.ts';
import { told, unreadable, type Watch } from '../watch.ts';
import { type Archive, openArchive } from '../zip/archive.ts';
import { inflate } from '../zip/inflate.ts';
import { readBody } from './body.ts';
import { readContainer } from './container.ts';
import { copyrightPage, guideOf, landmarkOf, navigationOf } from './copyright.ts';
import { readCover } from './cover.ts';
import { Findings } from './faults.ts';
import { checkPackage, type Listed, readManifest, readSpine } from './manifest.ts';
import { metadataOf } from './metadata.ts';
import { type Package, readPackage } from './package.ts';

const LIMITS = { what: 'EPUB', entries: 20_000, inflated: 2 * 1024 ** 3, swellFrom: 1024 ** 2 };
const MOST_PACKAGE = 16 * 1024 * 1024;

async function packageOf(archive: Archive, name: string): Promise<Package> {
  const entry = archive.byName.get(name);
  const bytes = entry === undefined ? null : await inflate(archive, entry, MOST_PACKAGE);
  const found = bytes === null ? null : readPackage(bytes);
  if (found === null || (found.items.length === 0 && found.metadata.length === 0))
    throw unreadable(
      'The package of this EPUB lists nothing that could be read: it is damaged or no package. Export it again.',
    );
  return found;
}

async function namedCopyrightPage(
  archive: Archive,
  found: Package,
  packagePath: string,
  manifest: ReadonlyMap<string, Listed>,
): Promise<string | null> {
  const navigation = navigationOf(manifest)?.entry;
  const bytes = navigation === undefined ? null : await inflate(archive, navigation, MOST_PACKAGE);
  const landmark = bytes === null || navigation === undefined ? null : landmarkOf(bytes, navigation.name);
  return landmark ?? guideOf(found, packagePath);
}

async function factsOf(archive: Archive, watch: Watch): Promise<EpubFacts> {
  const findings = new Findings();
  const { packageName, locked } = await readContainer(archive, findings);
  const found = await packageOf(archive, packageName);
  const manifest = readManifest(archive, found, packageName, findings);
  checkPackage(found, manifest, findings);
  const spine = readSpine(found, manifest, findings);
  const named = await namedCopyrightPage(archive, found, packageName, manifest);
  const body = await readBody({ archive, manifest, spine, locked, findings, watch });
  const page = copyrightPage(body.documents, named);
  const cover = await readCover(archive, found, manifest, locked, findings);
  return {
    of: 'epub',
    ...metadataOf(found),
    lines: body.linesWith(page),
    copyrightPage: page,
    isbns: body.isbns,
    cover,
    documents: spine.length,
    scripts: body.scripts,
    faults: findings.faults,
    unread: findings.unread,
  };
}

/**
 * Reads an e-book (EPUB 3.3, EPUB 2.0.1) in memory, piece by piece; nothing is unpacked to disk and nothing in it is run.
 * Throws BAD_INPUT with one sentence for what cannot be read at all, CANCELLED when called off.
 */
export async function readEpub(path: string, watch: Watch): Promise<EpubFacts> {
  told(watch, 0, null, 'Looking into the archive');
  const archive = await openArchive(path, LIMITS, watch);
  try {
    return await factsOf(archive, watch);
  } finally {
    archive.close();
  }
}
