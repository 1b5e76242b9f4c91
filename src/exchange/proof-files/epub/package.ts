import { attribute, readXml, type XmlTrouble } from './xml.ts';

/** An element of the metadata, with what refines it. */
export interface Meta {
  /** 'title', 'creator', 'meta': local name in lower case. */
  name: string;
  text: string;
  attributes: Readonly<Record<string, string>>;
  refinements: { property: string; scheme: string; text: string }[];
}

export interface Item {
  id: string;
  href: string;
  mediaType: string;
  properties: readonly string[];
  fallback: string;
}

/** The package document (EPUB 3.3 section 5; OPF 2.0.1). */
export interface Package {
  version: string;
  uniqueId: string;
  metadata: Meta[];
  /** Values of `meta` elements of EPUB 3 that refine nothing, by property, and of EPUB 2 by name. */
  properties: Map<string, string[]>;
  items: Item[];
  spine: { idref: string }[];
  spineToc: string;
  /** References of the guide (EPUB 2): type and href. */
  guide: { type: string; href: string }[];
  trouble: XmlTrouble | null;
}

const words = (text: string | undefined) => (text ?? '').trim().split(/\s+/).filter(Boolean);
const tidy = (text: string) => text.replaceAll(/\s+/g, ' ').trim();

// A book has some thousand files and some dozen lines of metadata.
const MOST_META = 2_000;
const MOST_ITEMS = 20_000;

class PackageReader {
  readonly found: Package = {
    version: '',
    uniqueId: '',
    metadata: [],
    properties: new Map(),
    items: [],
    spine: [],
    spineToc: '',
    guide: [],
    trouble: null,
  };
  #inMetadata = false;
  #current: Meta | null = null;
  #seen = false;

  open(name: string, attributes: Readonly<Record<string, string>>): void {
    const get = (key: string) => attribute(attributes, key) ?? '';
    if (!this.#seen) {
      this.#seen = true;
      if (name === 'package') {
        this.found.version = get('version').trim();
        this.found.uniqueId = get('unique-identifier').trim();
      }
      return;
    }
    if (name === 'metadata') this.#inMetadata = true;
    else if (this.#inMetadata) this.#meta(name, attributes);
    else if (name === 'item' && this.found.items.length < MOST_ITEMS)
      this.found.items.push({
        id: get('id').trim(),
        href: get('href').trim(),
        mediaType: get('media-type').trim().toLowerCase(),
        properties: words(get('properties')),
        fallback: get('fallback').trim(),
      });
    else if (name === 'spine') this.found.spineToc = get('toc').trim();
    else if (name === 'itemref' && this.found.spine.length < MOST_ITEMS)
      this.found.spine.push({ idref: get('idref').trim() });
    else if (name === 'reference' && this.found.guide.length < MOST_META)
      this.found.guide.push({ type: get('type').trim().toLowerCase(), href: get('href').trim() });
  }

  #meta(name: string, attributes: Readonly<Record<string, string>>): void {
    // Containers of the oldest packages hold the elements themselves.
    if (name === 'dc-metadata' || name === 'x-metadata') return;
    if (this.#current === null && this.found.metadata.length < MOST_META)
      this.#current = { name, text: '', attributes, refinements: [] };
  }

  text(text: string): void {
    if (this.#current !== null && this.#current.text.length < 20_000) this.#current.text += text;
  }

  close(name: string): void {
    if (name === 'metadata') this.#inMetadata = false;
    const current = this.#current;
    if (current === null || current.name !== name) return;
    this.#current = null;
    this.found.metadata.push({ ...current, text: tidy(current.text) });
  }

  /** Refinements put to what they refine, and properties by name. */
  settled(): Package {
    const { metadata, properties } = this.found;
    const byId = new Map(metadata.map((meta) => [attribute(meta.attributes, 'id')?.trim(), meta]));
    byId.delete('');
    for (const meta of metadata.filter(({ name }) => name === 'meta')) {
      const refines = attribute(meta.attributes, 'refines')?.trim();
      const property = attribute(meta.attributes, 'property')?.trim();
      const name = attribute(meta.attributes, 'name')?.trim();
      if (refines !== undefined && property !== undefined)
        byId.get(refines.replace(/^#/, '') || undefined)?.refinements.push({
          property,
          scheme: (attribute(meta.attributes, 'scheme') ?? '').trim().toLowerCase(),
          text: meta.text,
        });
      else if (property !== undefined)
        properties.set(property, [...(properties.get(property) ?? []), meta.text]);
      else if (name !== undefined)
        properties.set(name, [
          ...(properties.get(name) ?? []),
          tidy(attribute(meta.attributes, 'content') ?? ''),
        ]);
    }
    return this.found;
  }
}

/** Reads a package document; what comes after a fault in its XML is missing, and the fault is told. */
export function readPackage(bytes: Uint8Array): Package {
  const reader = new PackageReader();
  const trouble = readXml(bytes, {
    open: (name, attributes) => reader.open(name, attributes),
    text: (text) => reader.text(text),
    close: (name) => reader.close(name),
  });
  return { ...reader.settled(), trouble };
}
