import type { Element } from '../../../src/exchange/onix/element.ts';
import { all, first, text, textOf } from '../../../src/exchange/onix/element.ts';
import { MessageParser } from '../../../src/exchange/onix/xml-in.ts';

// What a schema cannot see: check digits and hyphens of numbers, and the notes of the code lists (STANDARDS.md
// section C5, Issue 73).

const inside = (element: Element | undefined, ...path: string[]): Element[] =>
  path.reduce<Element[]>((found, name) => found.flatMap((one) => all(one, name)), element ? [element] : []);

const has = (elements: Element[], name: string, value: string) =>
  elements.some((one) => text(one, name) === value);

function numberFaults(product: Element): string[] {
  const ids = [
    ...all(product, 'ProductIdentifier'),
    ...inside(product, 'RelatedMaterial', 'RelatedProduct', 'ProductIdentifier'),
  ];
  return ids.flatMap((id) => {
    const [type, value] = [text(id, 'ProductIDType'), text(id, 'IDValue')];
    if (type !== '15' && type !== '03') return [];
    if (!/^97[89]\d{10}$/.test(value)) return [`${value} is not thirteen digits without hyphens`];
    const sum = [...value].reduce((total, digit, at) => total + Number(digit) * (at % 2 === 0 ? 1 : 3), 0);
    return sum % 10 === 0 ? [] : [`${value} has a wrong check digit`];
  });
}

function statusFaults(product: Element): string[] {
  const publishing = first(product, 'PublishingDetail');
  const status = publishing ? text(publishing, 'PublishingStatus') : '';
  const dates = inside(publishing, 'PublishingDate');
  const published = has(dates, 'PublishingDateRole', '01');
  const faults: string[] = [];
  if ((status === '01' || status === '03') && published)
    faults.push(`status ${status} with a publication date`);
  if (status === '02' && !published) faults.push('status 02 without a publication date');
  if (status === '12') faults.push('status 12 is deprecated');
  if (text(product, 'NotificationType') === '05') faults.push('a deletion that was not meant');
  return faults;
}

const MAY_BE_DATED = ['10', '11', '12', '30', '31', '32', '33', '34'];

function supplyFaults(product: Element): string[] {
  const relations = inside(product, 'RelatedMaterial', 'RelatedProduct', 'ProductRelationCode').map(textOf);
  return inside(product, 'ProductSupply', 'SupplyDetail').flatMap((detail) => {
    const code = text(detail, 'ProductAvailability');
    const expected = has(all(detail, 'SupplyDate'), 'SupplyDateRole', '08');
    const faults: string[] = [];
    if (expected && !MAY_BE_DATED.includes(code)) faults.push(`availability ${code} with an expected date`);
    if (code === '41' && !relations.includes('05')) faults.push('availability 41 names no successor');
    if (code === '42' && !relations.includes('06')) faults.push('availability 42 names no other format');
    if (code === '45' && !relations.includes('02')) faults.push('availability 45 without relation 02');
    const returns = all(detail, 'ReturnsConditions').find((one) => text(one, 'ReturnsCodeType') === '02');
    if (returns && !/^[YNCS]$/.test(text(returns, 'ReturnsCode'))) faults.push('returns code of no list');
    for (const price of all(detail, 'Price')) {
      const amount = text(price, 'PriceAmount');
      if (amount !== '' && !(Number(amount) > 0))
        faults.push('a price of nothing that is not free of charge');
    }
    return faults;
  });
}

/** Forms that a detail of List 175 goes with, as its notes say. */
const GOES_WITH: Record<string, string> = { B102: 'BC', B401: 'BB', B402: 'BB' };

function formFaults(product: Element): string[] {
  const block = first(product, 'DescriptiveDetail');
  const form = block ? text(block, 'ProductForm') : '';
  const faults = inside(block, 'ProductFormDetail').flatMap((detail) => {
    const wanted = GOES_WITH[textOf(detail)];
    return wanted && wanted !== form ? [`${textOf(detail)} does not go with ${form}`] : [];
  });
  const subjects = inside(block, 'Subject');
  const qualifiers = subjects.filter((one) => /^9[4-9]$/.test(text(one, 'SubjectSchemeIdentifier')));
  const mains = qualifiers.filter((one) => first(one, 'MainSubject'));
  return mains.length > 0 ? [...faults, 'a qualifier as main subject'] : faults;
}

function productFaults(product: Element): string[] {
  return [numberFaults, statusFaults, supplyFaults, formFaults].flatMap((check) => check(product));
}

/** What is wrong with a message beyond its schema, as `record: fault`. */
export function codeNoteFaults(message: string): string[] {
  const faults: string[] = [];
  const parser = new MessageParser({
    root: () => {},
    header: () => {},
    product: (element) => {
      for (const fault of productFaults(element))
        faults.push(`${text(element, 'RecordReference')}: ${fault}`);
    },
  });
  parser.write(message);
  parser.close();
  return faults;
}
