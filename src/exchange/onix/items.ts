import type { OnixVersion } from '../../contract/onix.ts';
import { placeOf } from './order.ts';
import type { KeptPart } from './product.ts';
import { isKnown, tagOf } from './tags.ts';
import type { XmlOut } from './xml-out.ts';

/** Writes the parts of one composite: name, what writes it, and the key that a kept part may stand under. */
export type Items = (name: string, write: () => void, key?: string) => void;

const START = /<(\/?)([A-Za-z][A-Za-z0-9]*)/g;

/** Whether a version of the standard has every element of a kept part. What came as 2.1 has no place in 3. */
export function canGiveBack(part: KeptPart, version: OnixVersion): boolean {
  if (part.version === '2.1') return false;
  if (part.version === version) return true;
  for (const [, , name = ''] of part.xml.matchAll(START))
    if (/^[A-Z]/.test(name) && !isKnown(name, version)) return false;
  return true;
}

/** Kept XML in the tag set of the message. XHTML inside is in small letters and stays. */
export function inTags(xml: string, out: XmlOut): string {
  if (out.tags === 'reference') return xml;
  return xml.replace(START, (whole, slash: string, name: string) =>
    /^[A-Z]/.test(name) ? `<${slash}${tagOf(name, out.tags)}` : whole,
  );
}

interface Part {
  place: number;
  text: string;
}

/** Puts own parts and kept ones together in the order of the standard. */
function merge(
  out: XmlOut,
  parent: string,
  kept: readonly KeptPart[],
  write: (items: Items) => void,
): boolean {
  const bound = kept.filter((part) => part.bound);
  const free = kept.filter((part) => !part.bound);
  const used = new Set<KeptPart>();
  const parts: Part[] = [];
  const before = out.take();
  write((name, emit, key = '') => {
    if (free.some((part) => part.name === name && (part.key === key || part.key === '*'))) return;
    const same = bound.find((part) => part.name === name && part.key === key && !used.has(part));
    if (same) used.add(same);
    else emit();
    const text = same ? inTags(same.xml, out) : out.take();
    parts.push({ place: placeOf(parent, name), text });
  });
  for (const part of free) parts.push({ place: placeOf(parent, part.name), text: inTags(part.xml, out) });
  parts.sort((a, b) => a.place - b.place);
  out.raw(before);
  for (const part of parts) out.raw(part.text);
  return parts.length > 0;
}

const plainly: Items = (_name, emit) => emit();

/**
 * Writes the parts of a composite: straight on where nothing is kept, else merged with what is kept. Own parts
 * must come in the order of the standard.
 */
export function writeParts(
  out: XmlOut,
  parent: string,
  kept: readonly KeptPart[],
  write: (items: Items) => void,
): boolean {
  if (kept.length > 0) return merge(out, parent, kept, write);
  write(plainly);
  return true;
}
