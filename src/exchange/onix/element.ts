import { escapeAttribute, escapeText } from './xml-out.ts';

/** An element of a message under its reference name; XHTML inside a data element keeps its own names. */
export interface Element {
  name: string;
  attributes: Record<string, string>;
  children: (Element | string)[];
}

/** The elements right inside an element. */
export const parts = (element: Element): Element[] =>
  element.children.filter((child): child is Element => typeof child !== 'string');

/** The elements of a name right inside an element. */
export const all = (element: Element, name: string): Element[] =>
  parts(element).filter((part) => part.name === name);

/** The first element of a name right inside an element. */
export const first = (element: Element, name: string): Element | undefined =>
  parts(element).find((part) => part.name === name);

/** The text of an element with everything in it, ends trimmed. */
export function textOf(element: Element | undefined): string {
  if (element === undefined) return '';
  return element.children
    .map((child) => (typeof child === 'string' ? child : textOf(child)))
    .join('')
    .trim();
}

/** The text of the first element of a name right inside, on one line. */
export const text = (element: Element, name: string): string =>
  textOf(first(element, name)).replace(/\s+/g, ' ');

/** Whether an element holds nothing but parts of these names, none with attributes. */
export function holdsOnly(element: Element, names: readonly string[]): boolean {
  return (
    Object.keys(element.attributes).length === 0 &&
    parts(element).every((part) => names.includes(part.name) && Object.keys(part.attributes).length === 0)
  );
}

const attributesXml = (element: Element): string =>
  Object.entries(element.attributes)
    .map(([name, value]) => ` ${name}="${escapeAttribute(value)}"`)
    .join('');

/** What is inside an element, as XML. */
export function insideXml(element: Element): string {
  return element.children
    .map((child) => (typeof child === 'string' ? escapeText(child) : inlineXml(child)))
    .join('');
}

function inlineXml(element: Element): string {
  const inside = insideXml(element);
  const start = `<${element.name}${attributesXml(element)}`;
  return inside === '' ? `${start}/>` : `${start}>${inside}</${element.name}>`;
}

/** An element as XML in reference names, ending a line. */
export const elementXml = (element: Element): string => `${inlineXml(element)}\n`;
