import { SaxesParser } from 'saxes';
import { Refusal } from '../../contract/refusal.ts';
import type { Element } from './element.ts';
import { OLD_ENTITIES } from './entities.ts';
import { isData, referenceName } from './tags.ts';

/** Why a message cannot be read: one sentence with its line where there is one. */
export class OnixProblem extends Refusal {
  constructor(message: string) {
    super('BAD_INPUT', message, 'file');
    this.name = 'OnixProblem';
  }
}

// A message of ONIX nests about a dozen elements deep and describes a product in some kilobytes. What goes far
// beyond was made to hurt.
const MOST_DEPTH = 48;
const MOST_ELEMENTS = 20_000;
const MOST_TEXT = 4_000_000;
const MOST_PRODUCTS = 500_000;
const MOST_ATTRIBUTES = 24;
/** Characters that may come without a tag or text among them being finished. */
const MOST_QUIET = 8_000_000;

/** What a reader is told: the root with its attributes, the header, then each product with the line it begins on. */
export interface MessageEvents {
  root(name: string, attributes: Record<string, string>): void;
  header(element: Element): void;
  product(element: Element, line: number): void;
}

interface Open {
  element: Element;
  /** Inside a data element: names are XHTML and stay. */
  data: boolean;
}

/** A document type that only names its own file, which is never fetched, as messages of 2.1 do. */
const PLAIN_DOCTYPE = /^\s*(?:\w+:)?ONIX[Mm]essage\s+(?:SYSTEM|PUBLIC)\s[^[\]<>]*$/;

const localName = (name: string) => name.slice(name.indexOf(':') + 1);

/** Takes a message apart as its text comes in, product by product. Throws OnixProblem. */
export class MessageParser {
  readonly #parser = new SaxesParser({ xmlns: false, position: true });
  readonly #events: MessageEvents;
  readonly #open: Open[] = [];
  #depth = 0;
  #elements = 0;
  #text = 0;
  #products = 0;
  #line = 1;
  #quiet = 0;

  constructor(events: MessageEvents) {
    this.#events = events;
    const parser = this.#parser;
    parser.on('error', (error) => this.#refuse(`it is not well-formed XML (${plain(error.message)})`));
    parser.on('doctype', (doctype) => this.#doctype(doctype));
    parser.on('opentag', (tag) => this.#start(tag.name, tag.attributes));
    parser.on('closetag', () => this.#end());
    parser.on('text', (text) => this.#add(text));
    parser.on('cdata', (text) => this.#add(text));
  }

  write(text: string): void {
    this.#quiet += text.length;
    this.#parser.write(text);
    if (this.#quiet > MOST_QUIET) this.#refuse('one tag or text runs on for millions of characters');
  }

  close(): void {
    this.#parser.close();
    if (this.#depth > 0 || this.#elements === 0) this.#refuse('it holds no message');
  }

  #refuse(what: string): never {
    throw new OnixProblem(
      `The file cannot be read: ${what}, line ${this.#parser.line}. Nothing was taken from it.`,
    );
  }

  #doctype(doctype: string): void {
    if (!PLAIN_DOCTYPE.test(doctype))
      this.#refuse('it declares entities or elements of its own, which an ONIX message never needs');
    Object.assign(this.#parser.ENTITIES, OLD_ENTITIES);
  }

  #start(tag: string, attributes: Record<string, string>): void {
    this.#quiet = 0;
    this.#depth += 1;
    this.#elements += 1;
    if (this.#depth > MOST_DEPTH) this.#refuse(`its elements are nested more than ${MOST_DEPTH} deep`);
    if (Object.keys(attributes).length > MOST_ATTRIBUTES)
      this.#refuse(`one element has more than ${MOST_ATTRIBUTES} attributes`);
    if (this.#depth === 1) {
      this.#events.root(localName(tag), { ...attributes });
      return;
    }
    const parent = this.#open.at(-1);
    const data = parent?.data ?? false;
    const name = data ? localName(tag) : referenceName(localName(tag));
    if (parent === undefined) {
      if (this.#depth > 2) return;
      if (name !== 'Product' && name !== 'Header') return;
      this.#elements = 1;
      this.#text = 0;
      this.#line = this.#parser.line;
    }
    if (this.#elements > MOST_ELEMENTS) this.#refuse(`one product has more than ${MOST_ELEMENTS} elements`);
    const element: Element = { name, attributes: ownAttributes(attributes), children: [] };
    parent?.element.children.push(element);
    this.#open.push({ element, data: data || isData(name) });
  }

  #end(): void {
    this.#depth -= 1;
    const closed = this.#open.pop();
    if (closed === undefined || this.#open.length > 0) return;
    if (closed.element.name === 'Header') {
      this.#events.header(closed.element);
      return;
    }
    this.#products += 1;
    if (this.#products > MOST_PRODUCTS) this.#refuse(`it has more than ${MOST_PRODUCTS} products`);
    this.#events.product(closed.element, this.#line);
  }

  #add(text: string): void {
    const parent = this.#open.at(-1);
    if (parent === undefined) return;
    if (!parent.data && text.trim() === '') return;
    this.#text += text.length;
    if (this.#text > MOST_TEXT) this.#refuse('one product has more than four million characters');
    parent.element.children.push(text);
  }
}

/** Attributes without those that only say how the message was written. */
function ownAttributes(attributes: Record<string, string>): Record<string, string> {
  const own: Record<string, string> = {};
  for (const [name, value] of Object.entries(attributes))
    if (!/^xmlns|:|^refname$|^shortname$/.test(name)) own[name] = value;
  return own;
}

/** What the parser says, without its own account of the place. */
const plain = (message: string) => message.replace(/^(?:[^:]*:)?\d+:\d+:\s*/, '').replace(/[.\s]+$/, '');

/** Reads XML of ours again: one element in reference names. */
export function parseElement(xml: string): Element | null {
  let found: Element | null = null;
  const parser = new MessageParser({
    root: () => {},
    header: () => {},
    product: (element) => {
      const [inside] = element.children;
      if (typeof inside === 'object') found = inside;
    },
  });
  try {
    parser.write(`<m><Product>${xml}</Product></m>`);
    parser.close();
  } catch (error) {
    if (error instanceof OnixProblem) return null;
    throw error;
  }
  return found;
}
