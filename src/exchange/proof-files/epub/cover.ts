import type { EpubFacts } from '../../../contract/proof-checks/facts.ts';
import type { Archive } from '../zip/archive.ts';
import { inflate } from '../zip/inflate.ts';
import { shownName } from '../zip/names.ts';
import type { Findings } from './faults.ts';
import type { Listed } from './manifest.ts';
import type { Package } from './package.ts';
import { pictureSize } from './picture-size.ts';

/** A picture larger than this is not looked into. */
const MOST_PICTURE = 64 * 1024 * 1024;

/** The picture that is named as cover: the property `cover-image` of EPUB 3, or the `cover` of EPUB 2's metadata. */
function named(found: Package, manifest: ReadonlyMap<string, Listed>): Listed | undefined {
  const all = [...manifest.values()];
  const marked = all.find(({ item }) => item.properties.includes('cover-image'));
  const old = found.properties.get('cover')?.[0];
  if (marked !== undefined || old === undefined) return marked;
  return manifest.get(old) ?? all.find(({ item }) => item.href === old);
}

/** The cover picture with its size by its own header; null where none is named or it is no picture. */
export async function readCover(
  archive: Archive,
  found: Package,
  manifest: ReadonlyMap<string, Listed>,
  locked: ReadonlySet<string>,
  findings: Findings,
): Promise<EpubFacts['cover']> {
  const cover = named(found, manifest);
  if (cover?.entry === undefined) return null;
  const name = cover.entry.name.slice(0, 500);
  if (!cover.item.mediaType.startsWith('image/')) {
    findings.fault(`“${shownName(name)}” is named as the cover, but it is no picture.`);
    return null;
  }
  const bytes = locked.has(name) ? null : await inflate(archive, cover.entry, MOST_PICTURE);
  const size = bytes === null ? null : pictureSize(bytes);
  if (bytes !== null && size === null)
    findings.fault(`The cover picture “${shownName(name)}” is damaged or no picture.`);
  return { name, widthPx: size?.widthPx ?? 0, heightPx: size?.heightPx ?? 0 };
}
