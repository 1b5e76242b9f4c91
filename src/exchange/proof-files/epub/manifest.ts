import type { Archive, Entry } from '../zip/archive.ts';
import { shownName } from '../zip/names.ts';
import type { Findings } from './faults.ts';
import type { Item, Package } from './package.ts';
import { inArchive, isRemote } from './paths.ts';

/** An item of the manifest with the file it names; no file where it lies on the network or is missing. */
export interface Listed {
  item: Item;
  path: string | null;
  entry: Entry | undefined;
}

/** A name that differs from a wanted one in capitals alone: works on one computer and fails on another. */
function nearMiss(archive: Archive, path: string): string | undefined {
  const wanted = path.toLowerCase();
  return archive.entries.find(({ name }) => name.toLowerCase() === wanted)?.name;
}

function missing(archive: Archive, path: string): string {
  const near = nearMiss(archive, path);
  return near === undefined
    ? `The package lists “${shownName(path)}”, but the file is not in the archive.`
    : `The package lists “${shownName(path)}”, but the file is called “${shownName(near)}”; capitals count.`;
}

/** What a book may draw from the network: sound, film and fonts (EPUB 3.3, remote resources). */
const MAY_BE_REMOTE = /^(?:audio\/|video\/|font\/|application\/(?:font-|vnd\.ms-opentype|x-font))/;

function listed(archive: Archive, item: Item, packagePath: string, findings: Findings): Listed {
  if (isRemote(item.href)) {
    if (MAY_BE_REMOTE.test(item.mediaType))
      findings.skipped(
        `“${shownName(item.href)}” is on the internet and not in the file, so it was not looked at.`,
      );
    else
      findings.fault(
        `The package lists “${shownName(item.href)}” on the internet; the book has to carry it itself.`,
      );
    return { item, path: null, entry: undefined };
  }
  const path = inArchive(packagePath, item.href);
  if (path === null) {
    if (!item.href.startsWith('data:'))
      findings.fault(`The package lists “${shownName(item.href)}”, which leads to no file of the book.`);
    return { item, path, entry: undefined };
  }
  const entry = archive.byName.get(path) ?? archive.byName.get(item.href);
  if (entry === undefined) findings.fault(missing(archive, path));
  return { item, path, entry };
}

/** The manifest by identifier (EPUB 3.3 section 5.6); what is listed twice, missing, or leads outside is a fault. */
export function readManifest(
  archive: Archive,
  found: Package,
  packagePath: string,
  findings: Findings,
): Map<string, Listed> {
  const byId = new Map<string, Listed>();
  const paths = new Set<string>();
  for (const item of found.items) {
    const one = listed(archive, item, packagePath, findings);
    if (byId.has(item.id)) findings.fault(`The package lists two files as “${shownName(item.id)}”.`);
    if (one.path !== null && paths.has(one.path))
      findings.fault(`The package lists the file “${shownName(one.path)}” twice.`);
    if (one.path !== null) paths.add(one.path);
    byId.set(item.id, one);
  }
  return byId;
}

/** The documents in reading order (EPUB 3.3 section 5.7), without those that are missing. */
export function readSpine(
  found: Package,
  manifest: ReadonlyMap<string, Listed>,
  findings: Findings,
): Listed[] {
  const order: Listed[] = [];
  const seen = new Set<string>();
  for (const { idref } of found.spine) {
    const one = manifest.get(idref);
    if (one === undefined)
      findings.fault(`The reading order names “${shownName(idref)}”, which the package does not list.`);
    else if (seen.has(idref)) findings.fault(`The reading order names “${shownName(idref)}” twice.`);
    else if (one.entry !== undefined) order.push(one);
    seen.add(idref);
  }
  if (found.spine.length === 0) findings.fault('The package has no reading order, so the book opens empty.');
  return order;
}

/** dcterms:modified is given once and to the second, in UTC (EPUB 3.3, last modified date). */
const MODIFIED = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/;

/** Faults of the package itself that no rule on the record looks at. */
export function checkPackage(
  found: Package,
  manifest: ReadonlyMap<string, Listed>,
  findings: Findings,
): void {
  if (found.trouble !== null)
    findings.fault(
      `The package ${found.trouble.what} (line ${found.trouble.line}); what follows was not read.`,
    );
  const identifiers = found.metadata.filter(({ name }) => name === 'identifier');
  if (
    !identifiers.some(({ attributes }) => attributes.id?.trim() === found.uniqueId && found.uniqueId !== '')
  )
    findings.fault(
      'The package does not say which of its identifiers is the book’s own (unique-identifier).',
    );
  const items = [...manifest.values()];
  if (/^3/.test(found.version)) {
    const modified = found.properties.get('dcterms:modified') ?? [];
    if (modified.length !== 1 || !MODIFIED.test(modified[0] ?? ''))
      findings.fault(
        'The package has to say once when it was last changed (dcterms:modified, such as 2026-11-25T12:00:00Z).',
      );
    if (!items.some(({ item }) => item.properties.includes('nav')))
      findings.fault('The package names no navigation document, so the book has no table of contents.');
  } else if (/^2/.test(found.version)) {
    if (manifest.get(found.spineToc) === undefined)
      findings.fault('The reading order names no table of contents (NCX).');
  } else
    findings.fault(`The package names “${shownName(found.version)}” as its version; 2.0 and 3.0 are known.`);
}
