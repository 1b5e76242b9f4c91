import type { KeptPart } from '../../rules/onix/products.ts';
import { placeOf } from './order.ts';
import { tagOf } from './tags.ts';
import type { XmlOut } from './xml-out.ts';

/**
 * Writes the parts of one composite: name, what writes it, and the key that a kept part may stand under (worked out
 * only where something is kept).
 */
export type Items = (name: string, write: () => void, key?: string | (() => string)) => void;

const START = /<(\/?)([A-Za-z][A-Za-z0-9]*)/g;

/** Kept XML in the tag set of the message. XHTML inside is in small letters and stays. */
export function inTags(xml: string, out: XmlOut): string {
  if (out.tags === 'reference') return xml;
  return xml.replace(START, (whole, slash: string, name: string) =>
    /^[A-Z]/.test(name) ? `<${slash}${tagOf(name, out.tags)}` : whole,
  );
}

interface Part {
  name: string;
  place: number;
  text: string;
}

/** What says that something is not there, and the parts that say otherwise. */
const DENIALS: Record<string, string[]> = {
  NoCollection: ['Collection'],
  NoContributor: ['Contributor'],
  NoEdition: ['EditionType', 'EditionNumber', 'EditionStatement'],
};

/** Takes out what a kept part gives the lie to. */
function dropDenials(parts: Part[]): void {
  const there = new Set(parts.map((part) => part.name));
  for (let at = parts.length - 1; at >= 0; at -= 1)
    if (DENIALS[parts[at]?.name ?? '']?.some((name) => there.has(name))) parts.splice(at, 1);
}

/** Numbers contributors in their order: kept ones carry the place they once had. */
function renumber(parts: Part[]): void {
  let place = 0;
  for (const part of parts) {
    if (part.name !== 'Contributor' || part.text === '') continue;
    place += 1;
    part.text = part.text.replace(/<(SequenceNumber|b034)>\d+</, `<$1>${place}<`);
  }
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
  const yielding = new Set<string>();
  const parts: Part[] = [];
  const before = out.take();
  write((name, emit, lazy = '') => {
    const key = typeof lazy === 'string' ? lazy : lazy();
    const group = `${key.split('|', 1)[0]}|*`;
    yielding.add(`${name} ${group}`);
    if (free.some((part) => part.name === name && (part.key === key || part.key.startsWith('*')))) return;
    const same = bound.find((part) => part.name === name && part.key === key && !used.has(part));
    if (same) used.add(same);
    else emit();
    const text = same ? inTags(same.xml, out) : out.take();
    parts.push({ name, place: placeOf(parent, name), text });
  });
  for (const part of free) {
    if (yielding.has(`${part.name} ${part.key}`)) continue;
    parts.push({ name: part.name, place: placeOf(parent, part.name), text: inTags(part.xml, out) });
  }
  dropDenials(parts);
  parts.sort((a, b) => a.place - b.place);
  out.raw(before);
  renumber(parts);
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
