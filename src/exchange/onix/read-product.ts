import type { KeptPart, ReadProduct } from '../../rules/onix/products.ts';
import { type Element, elementXml } from './element.ts';

/** What the reader must know of the house to tell its own words from others'. */
export interface ReadHouse {
  publisher: string;
  sender: string;
  country: string;
  /** Language and currency of the message where a product tells none. */
  language: string;
  currency: string | null;
}

/** Collects what one product tells while its blocks are read. */
export interface Reading {
  product: ReadProduct;
  house: ReadHouse;
  version: string;
}

/** Keeps a part that is always given back; own parts of this key ('*': any) then stay out. */
export function keep(to: Reading, place: KeptPart['place'], element: Element, key = ''): void {
  const { product, version } = to;
  product.kept.push({ place, name: element.name, key, bound: false, version, xml: elementXml(element) });
}

/** Keeps a part that stands for a value, under the name and key that our own part would have; parts beside it go with it. */
export function bind(
  to: Reading,
  place: KeptPart['place'],
  element: Element,
  key: string,
  name: string = element.name,
  beside: readonly Element[] = [],
): void {
  const { product, version } = to;
  const xml = [element, ...beside].map(elementXml).join('');
  product.kept.push({ place, name, key, bound: true, version, xml });
}

/** Keeps our own part of a name and key out: a bound part says it already. */
export function cover(to: Reading, place: KeptPart['place'], name: string, key: string): void {
  to.product.kept.push({ place, name, key, bound: true, version: to.version, xml: '' });
}

/** A text within the contract's bounds; a longer one is cut and said so. */
export function bounded(to: Reading, value: string, what: string, most = 2000): string {
  if (value.length <= most) return value;
  to.product.notes.push(`The ${what} is longer than ${most.toLocaleString('en')} characters and was cut.`);
  return value.slice(0, most).trim();
}

/** A full day of an ONIX date (List 55: 00, 13 and 14 begin with the day), or null. */
export function dayOf(text: string): string | null {
  const found = /^(\d{4})-?(\d{2})-?(\d{2})(?:T.*)?$/.exec(text.trim());
  if (!found) return null;
  const day = `${found[1]}-${found[2]}-${found[3]}`;
  const time = Date.parse(`${day}T00:00:00Z`);
  return Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== day ? null : day;
}
