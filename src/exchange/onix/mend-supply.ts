import { amountText, PRICE_TYPES } from '../../rules/onix/codes.ts';
import type { KeptPart } from '../../rules/onix/products.ts';
import { availability, expectedOn, publishingStatus } from '../../rules/onix/standings.ts';
import { all, type Element, elementXml, first, parts, text } from './element.ts';
import { type OnixHouse, type OnixRecord, onixDay } from './product.ts';
import { type FoundPrice, RETAIL, retailPrices } from './read-supply.ts';
import { lifeOf } from './write-publishing.ts';
import { parseElement } from './xml-in.ts';

// A supply that came in is given back as it came, except for what the record has said otherwise since: prices,
// returns, and availability once the format has moved on.

const leaf = (name: string, value: string, attributes: Record<string, string> = {}): Element => ({
  name,
  attributes,
  children: [value],
});

/** Puts a value into a part that is there, or the part behind the last of the named ones. */
function put(parent: Element, part: Element, after: readonly string[]): void {
  const old = first(parent, part.name);
  if (old) {
    parent.children.splice(parent.children.indexOf(old), 1, part);
    return;
  }
  const last = parent.children.findLastIndex(
    (child) => typeof child !== 'string' && after.includes(child.name),
  );
  parent.children.splice(last + 1, 0, part);
}

const remove = (parent: Element, gone: (part: Element) => boolean): void => {
  parent.children = parent.children.filter((child) => typeof child === 'string' || !gone(child));
};

type Price = OnixRecord['format']['prices'][number];

function ownPrice(price: Price): Element {
  const amount =
    price.amountMinor === 0
      ? leaf('UnpricedItemType', '01')
      : leaf('PriceAmount', amountText(price.amountMinor, price.currency));
  const children = [leaf('PriceType', PRICE_TYPES[price.tax]), amount, leaf('CurrencyCode', price.currency)];
  return { name: 'Price', attributes: {}, children };
}

/** Gives a price its new amount; what was reckoned from the old one goes. */
function mendPrice({ element, amountMinor, tax }: FoundPrice, price: Price): void {
  if (amountMinor === price.amountMinor && tax === price.tax) return;
  if (RETAIL[text(element, 'PriceType')] !== price.tax)
    put(element, leaf('PriceType', PRICE_TYPES[price.tax]), ['PriceIdentifier']);
  remove(element, (part) => ['Tax', 'TaxExempt', 'PriceCoded'].includes(part.name));
  const [amount] = ownPrice(price).children.filter(
    (part): part is Element => typeof part !== 'string' && /^(PriceAmount|UnpricedItemType)$/.test(part.name),
  );
  const old = parts(element).find((part) => part.name === 'PriceAmount' || part.name === 'UnpricedItemType');
  if (amount && old) element.children.splice(element.children.indexOf(old), 1, amount);
}

function mendPrices(supplies: readonly Element[], record: OnixRecord, house: OnixHouse): void {
  const found = retailPrices(supplies, null);
  const wanted = new Map(record.format.prices.map((price) => [price.currency, price]));
  const gone = new Set<Element>();
  for (const price of found) {
    const now = wanted.get(price.currency);
    if (now) mendPrice(price, now);
    else gone.add(price.element);
  }
  const details = supplies.flatMap((supply) => all(supply, 'SupplyDetail'));
  for (const detail of details) remove(detail, (part) => gone.has(part));
  const known = new Set(found.map((price) => price.currency));
  for (const price of record.format.prices) {
    if (known.has(price.currency)) continue;
    details[0]?.children.push(ownPrice(price));
  }
  for (const detail of details) {
    const priced = all(detail, 'Price').length > 0;
    if (priced) remove(detail, (part) => part.name === 'UnpricedItemType');
    else if (!first(detail, 'UnpricedItemType'))
      detail.children.push(
        leaf('UnpricedItemType', availability(lifeOf(record), house.today) === '10' ? '02' : '04'),
      );
  }
}

const BEFORE_AVAILABILITY = ['Supplier', 'SupplyContact', 'SupplierOwnCoding', 'ReturnsConditions'];

/** Says how it stands now, where the format has moved on since it came in. */
function mendStanding(supplies: readonly Element[], record: OnixRecord, house: OnixHouse): void {
  const life = lifeOf(record);
  const expected = expectedOn(life, house.today);
  for (const supply of supplies) {
    for (const market of all(supply, 'MarketPublishingDetail'))
      put(market, leaf('MarketPublishingStatus', publishingStatus(life, house.today)), [
        'PublisherRepresentative',
      ]);
    for (const detail of all(supply, 'SupplyDetail')) {
      put(detail, leaf('ProductAvailability', availability(life, house.today)), BEFORE_AVAILABILITY);
      remove(detail, (part) => part.name === 'SupplyDate' && text(part, 'SupplyDateRole') === '08');
      if (expected === null) continue;
      const date = leaf('Date', onixDay(expected), { dateformat: '00' });
      const at = detail.children.findIndex(
        (part) => typeof part !== 'string' && part.name === 'ProductAvailability',
      );
      detail.children.splice(at + 1, 0, {
        name: 'SupplyDate',
        attributes: {},
        children: [leaf('SupplyDateRole', '08'), date],
      });
    }
  }
}

/** Puts the returns terms that the listings agree on into the BISAC indicator of each supply. */
function mendReturns(supplies: readonly Element[], code: string | null): void {
  if (code === null) return;
  for (const detail of supplies.flatMap((supply) => all(supply, 'SupplyDetail'))) {
    const terms = all(detail, 'ReturnsConditions').find((part) => text(part, 'ReturnsCodeType') === '02');
    if (terms) put(terms, leaf('ReturnsCode', code), ['ReturnsCodeType']);
  }
}

/** The kept supplies of a record as they are to be given back. */
export function mendedSupplies(record: OnixRecord, house: OnixHouse): KeptPart[] {
  const supplies: { part: KeptPart; element: Element }[] = [];
  for (const part of record.kept) {
    if (part.name !== 'ProductSupply') continue;
    const element = parseElement(part.xml);
    if (element) supplies.push({ part, element });
  }
  const elements = supplies.map(({ element }) => element);
  mendPrices(elements, record, house);
  mendReturns(elements, record.returns);
  if (supplies.some(({ part }) => part.key !== `*${record.standing}`)) mendStanding(elements, record, house);
  return supplies.map(({ part, element }) => ({ ...part, xml: elementXml(element) }));
}
