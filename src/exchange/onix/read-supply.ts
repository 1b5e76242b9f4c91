import { amountOf } from '../../rules/onix/codes.ts';
import { AT_STANDING } from '../../rules/onix/products.ts';
import { all, type Element, first, holdsOnly, parts, text } from './element.ts';
import { keep, type Reading } from './read-product.ts';

/** Price types (List 58) taken for a retail price: recommended, fixed and publisher's, without or with tax. */
export const RETAIL: Record<string, 'excluding' | 'including'> = {
  '01': 'excluding',
  '03': 'excluding',
  '41': 'excluding',
  '02': 'including',
  '04': 'including',
  '42': 'including',
};

export interface FoundPrice {
  element: Element;
  currency: string;
  amountMinor: number;
  tax: 'excluding' | 'including';
}

/** A retail price in the catalogue's own terms, or null for prices it does not hold (net, for some customers, …). */
export function priceIn(element: Element, currency: string | null): FoundPrice | null {
  const tax = RETAIL[text(element, 'PriceType')];
  const code = text(element, 'CurrencyCode') || (currency ?? '');
  const qualifier = text(element, 'PriceQualifier');
  if (tax === undefined || !/^[A-Z]{3}$/.test(code) || !['', '00', '05'].includes(qualifier)) return null;
  const free = text(element, 'UnpricedItemType') === '01';
  const amountMinor = free ? 0 : amountOf(text(element, 'PriceAmount'), code);
  return amountMinor === null ? null : { element, currency: code, amountMinor, tax };
}

/** The first retail price of each currency, through all parts of the supply. */
export function retailPrices(supplies: readonly Element[], currency: string | null): FoundPrice[] {
  const found = new Map<string, FoundPrice>();
  for (const supply of supplies)
    for (const detail of all(supply, 'SupplyDetail'))
      for (const element of all(detail, 'Price')) {
        const price = priceIn(element, currency);
        if (price && !found.has(price.currency) && found.size < 50) found.set(price.currency, price);
      }
  return [...found.values()];
}

/** Parts of a price before its currency. */
const BEFORE_CURRENCY = ['PriceAmount', 'PriceCoded', 'Tax', 'TaxExempt', 'UnpricedItemType'];

/** Writes the message's own currency into a price that relies on it, since it leaves the message. */
function spellOut(price: Element, currency: string | null): void {
  if (currency === null || first(price, 'CurrencyCode')) return;
  const last = price.children.findLastIndex(
    (part) => typeof part !== 'string' && BEFORE_CURRENCY.includes(part.name),
  );
  price.children.splice(last + 1, 0, { name: 'CurrencyCode', attributes: {}, children: [currency] });
}

const OWN_SUPPLY = [
  'Supplier',
  'ReturnsConditions',
  'ProductAvailability',
  'SupplyDate',
  'UnpricedItemType',
  'Price',
];
const OWN_PRICE = ['PriceType', 'PriceAmount', 'UnpricedItemType', 'CurrencyCode'];

/** Whether a supply says no more than our own would of the same values. */
function isOwnForm(to: Reading, supplies: readonly Element[], prices: readonly FoundPrice[]): boolean {
  const [supply] = supplies;
  const [detail] = supply ? all(supply, 'SupplyDetail') : [];
  const supplier = detail && first(detail, 'Supplier');
  return (
    supply !== undefined &&
    supplies.length === 1 &&
    parts(supply).length === 1 &&
    detail !== undefined &&
    supplier !== undefined &&
    text(supplier, 'SupplierRole') === '01' &&
    text(supplier, 'SupplierName') === to.house.sender &&
    holdsOnly(supplier, ['SupplierRole', 'SupplierName']) &&
    parts(detail).every((part) => OWN_SUPPLY.includes(part.name)) &&
    all(detail, 'ReturnsConditions').length === 0 &&
    all(detail, 'Price').every(
      (price) => holdsOnly(price, OWN_PRICE) && prices.some((found) => found.element === price),
    )
  );
}

/** Block 6: the retail prices. What else a supply tells is kept whole, and mended where the record changes. */
export function readSupply(to: Reading, supplies: readonly Element[]): void {
  const prices = retailPrices(supplies, to.house.currency);
  to.product.format.prices = prices
    .map(({ currency, amountMinor, tax }) => ({ currency, amountMinor, tax }))
    .sort((a, b) => (a.currency < b.currency ? -1 : 1));
  const currencies = prices.map((price) => price.currency);
  for (const supply of supplies)
    for (const detail of all(supply, 'SupplyDetail'))
      for (const price of all(detail, 'Price')) {
        const code = text(price, 'CurrencyCode') || (to.house.currency ?? '');
        if (currencies.includes(code) || !RETAIL[text(price, 'PriceType')] || !text(price, 'PriceAmount'))
          continue;
        const amount = `The price of ${text(price, 'PriceAmount')}`;
        to.product.notes.push(
          code === ''
            ? `${amount} names no currency and is kept beside.`
            : `${amount} ${code} is no amount of that currency and is kept beside.`,
        );
      }
  if (isOwnForm(to, supplies, prices)) return;
  for (const supply of supplies) {
    for (const detail of all(supply, 'SupplyDetail'))
      for (const price of all(detail, 'Price')) spellOut(price, to.house.currency);
    keep(to, 'Product', supply, `*${AT_STANDING}`);
  }
}
