import type { Listed } from './manifest.ts';
import type { Package } from './package.ts';
import { inArchive } from './paths.ts';
import { attribute, readXml } from './xml.ts';

/**
 * The file that landmarks of the navigation document (EPUB 3) name as copyright page; null where they name none.
 */
export function landmarkOf(navigation: Uint8Array, navigationPath: string): string | null {
  let path: string | null = null;
  readXml(navigation, {
    open(name, attributes) {
      const types = (attributes['epub:type'] ?? '').split(/\s+/);
      if (name === 'a' && types.includes('copyright-page'))
        path ??= inArchive(navigationPath, attribute(attributes, 'href') ?? '');
    },
  });
  return path;
}

/** The same of the guide of EPUB 2. */
export function guideOf(found: Package, packagePath: string): string | null {
  const named = found.guide.find(({ type }) => type === 'copyright-page' || type === 'other.copyright-page');
  return named === undefined ? null : inArchive(packagePath, named.href);
}

/** What a copyright page says, and how much each speaks for one (common practice, no source). */
const SIGNS: readonly (readonly [pattern: RegExp, weight: number])[] = [
  [/\be?-?isbn\b/i, 3],
  [/©|\bcopyright\b|\(c\) ?\d{4}/i, 3],
  [/all rights reserved|alle rechte vorbehalten|tous droits réservés|alle rechten voorbehouden/i, 3],
  [/\b(?:first )?published (?:by|in)\b/i, 1],
  [/\bedition\b/i, 1],
  [/\bcataloguing|cataloging|bibliograph/i, 1],
];
const ENOUGH = 4;

/** How much a document looks like a copyright page; below `ENOUGH` it does not. A long chapter may speak of anything. */
function likeness(lines: readonly string[]): number {
  if (lines.length > 120) return 0;
  const text = lines.join('\n').slice(0, 12_000);
  return SIGNS.reduce((sum, [pattern, weight]) => sum + (pattern.test(text) ? weight : 0), 0);
}

/** A document in reading order, counted from 1. */
export interface Numbered {
  page: number;
  path: string;
  types: ReadonlySet<string>;
  lines: readonly string[];
}

/** The copyright page: as landmarks or guide name it, as a document says of itself, or the one that looks most like it. */
export function copyrightPage(documents: readonly Numbered[], named: string | null): number | null {
  const byName = named === null ? undefined : documents.find(({ path }) => path === named);
  const bySaying = documents.find(({ types }) => types.has('copyright-page'));
  const marked = byName ?? bySaying;
  if (marked !== undefined) return marked.page;
  let best: { page: number; likeness: number } | null = null;
  for (const { page, lines } of documents) {
    const like = likeness(lines);
    if (like >= ENOUGH && (best === null || like > best.likeness)) best = { page, likeness: like };
  }
  return best?.page ?? null;
}

/** The navigation document, where there is one. */
export function navigationOf(manifest: ReadonlyMap<string, Listed>): Listed | undefined {
  return [...manifest.values()].find(({ item }) => item.properties.includes('nav'));
}
