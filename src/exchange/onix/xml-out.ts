import type { TagSet } from '../../contract/onix.ts';
import { tagOf } from './tags.ts';

/** Characters XML cannot hold (XML 1.0, section 2.2), lone halves of pairs among them. */
const ILLEGAL =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
const SPECIAL = /[&<>\r\u0000-\u0008\u000b\u000c\u000e-\u001f\ud800-\udfff\ufffe\uffff]/;

/** The schemas want the text of an element on one line, but for descriptions. */
const BREAKS = /[\t\r\n]/;

/** Text as XML content: exact escapes, and without the characters XML cannot hold. */
export function escapeText(text: string): string {
  if (!SPECIAL.test(text)) return text;
  return text
    .replace(ILLEGAL, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('\r', '&#13;');
}

/** Text as the value of an attribute in double quotes. */
export function escapeAttribute(text: string): string {
  return escapeText(text).replaceAll('"', '&quot;').replaceAll('\n', '&#10;').replaceAll('\t', '&#9;');
}

/** A writer of XML text in one tag set. Names are reference names; the text so far is taken out with `take`. */
export interface XmlOut {
  readonly tags: TagSet;
  open(name: string): void;
  close(name: string): void;
  /** An element with escaped text; `attributes` is ready XML, such as ` dateformat="00"`. */
  leaf(name: string, text: string, attributes?: string): void;
  /** An element with ready XML inside. */
  filled(name: string, xml: string, attributes: string): void;
  /** An empty element. */
  empty(name: string): void;
  /** Ready XML. */
  raw(xml: string): void;
  /** The text since the last take. */
  take(): string;
}

interface Tag {
  start: string;
  end: string;
  open: string;
}

const KNOWN: Record<TagSet, Map<string, Tag>> = { reference: new Map(), short: new Map() };

/** The ready brackets of an element, made once for each tag set. */
function tagFor(name: string, tags: TagSet): Tag {
  const known = KNOWN[tags].get(name);
  if (known) return known;
  const tag = tagOf(name, tags);
  const made = { start: `<${tag}>`, end: `</${tag}>\n`, open: `<${tag}` };
  KNOWN[tags].set(name, made);
  return made;
}

/** Makes a writer for a tag set. */
export function xmlOut(tags: TagSet): XmlOut {
  let out = '';
  return {
    tags,
    open: (name) => {
      out += `${tagFor(name, tags).start}\n`;
    },
    close: (name) => {
      out += tagFor(name, tags).end;
    },
    leaf: (name, text, attributes) => {
      const tag = tagFor(name, tags);
      out += attributes ? `${tag.open}${attributes}>` : tag.start;
      out += escapeText(BREAKS.test(text) ? text.replace(/[\t\r\n]+/g, ' ') : text);
      out += tag.end;
    },
    filled: (name, xml, attributes) => {
      const tag = tagFor(name, tags);
      out += `${tag.open}${attributes}>${xml}${tag.end}`;
    },
    empty: (name) => {
      out += `${tagFor(name, tags).open}/>\n`;
    },
    raw: (xml) => {
      out += xml;
    },
    take: () => {
      const text = out;
      out = '';
      return text;
    },
  };
}
