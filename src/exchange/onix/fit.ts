import type { OnixVersion } from '../../contract/onix.ts';
import type { KeptPart } from '../../rules/onix/products.ts';
import { type Element, elementXml, first, textOf } from './element.ts';
import { placeOf } from './order.ts';
import { isKnown } from './tags.ts';
import { parseElement } from './xml-in.ts';

// A part that came in by one version of ONIX 3 and goes out by the other leaves behind what the other does not have there.

/** Children that only 3.1 has, by parent (the content models of the two schemas set side by side). */
const ONLY_31: Record<string, string> = {
  CitedContent: 'SequenceNumber',
  ContentItem: 'CopyrightStatement CopyrightStatementText EpubLicense EpubUsageConstraint Publisher',
  NewSupplier: 'Website',
  Prize: 'SequenceNumber',
  ProductContact: 'CountryCode FaxNumber LocationName PostalCode RegionCode StreetAddress',
  ResourceVersion: 'EpubLicense EpubUsageConstraint',
  SupplyContact: 'CountryCode FaxNumber LocationName PostalCode RegionCode StreetAddress',
  SupportingResource: 'SequenceNumber',
  TextContent: 'EpubLicense EpubUsageConstraint SequenceNumber',
};
const PAIRS = new Map(Object.entries(ONLY_31).map(([parent, names]) => [parent, new Set(names.split(' '))]));

/** The date format of 3.0 as the attribute that both versions know. */
function moveDateFormat(element: Element): void {
  const format = first(element, 'DateFormat');
  const date = first(element, 'Date');
  if (format && date) date.attributes = { dateformat: textOf(format), ...date.attributes };
}

function prune(element: Element, version: OnixVersion): void {
  moveDateFormat(element);
  element.children = element.children.filter((child) => {
    if (typeof child === 'string' || !/^[A-Z]/.test(child.name)) return true;
    if (version === '3.0' && PAIRS.get(element.name)?.has(child.name)) return false;
    return isKnown(child.name, version);
  });
  for (const child of element.children) if (typeof child !== 'string') prune(child, version);
}

const NAMES = /<([A-Z]\w*)/g;

/** Whether a part is of elements that a version has, so that nothing in it need be looked at. */
function isFit(part: KeptPart, version: OnixVersion): boolean {
  for (const [, name = ''] of part.xml.matchAll(NAMES)) {
    if (!isKnown(name, version)) return false;
    if (part.version !== version && (PAIRS.has(name) || name === 'DateFormat')) return false;
  }
  return true;
}

/**
 * A kept part as a message of this version can give it back, or null: what came as 2.1, and what the standard does not
 * have at that place, stays in the catalogue.
 */
export function fitted(part: KeptPart, version: OnixVersion): KeptPart | null {
  if (part.version === '2.1') return null;
  if (part.xml === '') return part;
  if (!isKnown(part.name, version) || placeOf(part.place, part.name) < 0) return null;
  if (isFit(part, version)) return part;
  const elements = part.xml
    .split(/(?<=>)\n(?=<)/)
    .map(parseElement)
    .filter((element) => element !== null && isKnown(element.name, version));
  for (const element of elements) if (element) prune(element, version);
  const xml = elements.map((element) => (element ? elementXml(element) : '')).join('');
  return xml === '' ? null : { ...part, xml };
}
