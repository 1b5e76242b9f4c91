import { SaxesParser } from 'saxes';
import { OLD_ENTITIES } from '../../onix/entities.ts';

/** Why XML was not read to its end, and the line; what came before it was read. */
export interface XmlTrouble {
  what: string;
  line: number;
}

/** What is told while XML is read: local names in lower case, attributes by their names as written. */
export interface XmlListener {
  open?(name: string, attributes: Readonly<Record<string, string>>, full: string): void;
  text?(text: string): void;
  close?(name: string): void;
}

// Books nest some dozen elements deep, their parts have some thousand elements; what goes far beyond was made to hurt.
const MOST_DEPTH = 250;
const MOST_ELEMENTS = 400_000;
const MOST_ATTRIBUTES = 100;
/** Characters given to the parser at once. */
const PIECE = 256 * 1024;

class Stop extends Error {}

const local = (name: string) => name.slice(name.indexOf(':') + 1);

/** What the parser says, without its own account of the place. */
const plain = (message: string) => message.replace(/^(?:[^:]*:)?\d+:\d+:\s*/, '').replace(/[.\s]+$/, '');

/** The text of an XML file by its byte order mark, UTF-8 without one (XML 1.0, appendix F). */
function decoded(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  return new TextDecoder('utf-8').decode(bytes);
}

/** A document type that names a public one; nothing is ever fetched. One that declares entities of its own has brackets. */
const OWN_DECLARATIONS = /\[/;

/**
 * Reads XML up to its end or its first fault, which is answered; null when there was none. Entities that a file declares
 * itself are never taken: they are how XML is made to grow. Names of characters are those of HTML 4 where a public
 * document type declares them (EPUB 2), unknown ones are then passed over; elsewhere they are faults.
 */
export function readXml(bytes: Uint8Array, listener: XmlListener): XmlTrouble | null {
  const parser = new SaxesParser({ xmlns: false, position: true });
  let trouble: XmlTrouble | null = null;
  let depth = 0;
  let elements = 0;
  let typed = false;
  const stop = (what: string): never => {
    trouble = { what, line: parser.line };
    throw new Stop();
  };
  parser.on('error', (error) => {
    const said = plain(error.message);
    if (!(typed && /undefined entity/.test(said))) stop(`is not well-formed XML: ${said}`);
  });
  parser.on('doctype', (doctype) => {
    if (OWN_DECLARATIONS.test(doctype)) stop('declares entities or elements of its own, which are not read');
    typed = /\bPUBLIC\b/.test(doctype);
    if (typed) Object.assign(parser.ENTITIES, OLD_ENTITIES);
  });
  parser.on('opentag', ({ name, attributes }) => {
    depth += 1;
    elements += 1;
    if (depth > MOST_DEPTH) stop(`nests its elements more than ${MOST_DEPTH} deep`);
    if (elements > MOST_ELEMENTS) stop(`has more than ${MOST_ELEMENTS.toLocaleString('en')} elements`);
    if (Object.keys(attributes).length > MOST_ATTRIBUTES)
      stop(`has an element of more than ${MOST_ATTRIBUTES} attributes`);
    listener.open?.(local(name).toLowerCase(), attributes, name);
  });
  parser.on('text', (text) => listener.text?.(text));
  parser.on('cdata', (text) => listener.text?.(text));
  parser.on('closetag', ({ name }) => {
    depth -= 1;
    listener.close?.(local(name).toLowerCase());
  });
  try {
    const text = decoded(bytes);
    for (let at = 0; at < text.length; at += PIECE) parser.write(text.slice(at, at + PIECE));
    parser.close();
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
  }
  return trouble;
}

/** An attribute by its name without prefix. */
export function attribute(attributes: Readonly<Record<string, string>>, name: string): string | undefined {
  const direct = attributes[name];
  if (direct !== undefined) return direct;
  const full = Object.keys(attributes).find((key) => local(key) === name);
  return full === undefined ? undefined : attributes[full];
}
