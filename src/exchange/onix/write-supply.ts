import { amountText, PRICE_TYPES } from '../../rules/onix/codes.ts';
import { availability, expectedOn } from '../../rules/onix/standings.ts';
import { type OnixHouse, type OnixRecord, onixDay } from './product.ts';
import { lifeOf } from './write-publishing.ts';
import type { XmlOut } from './xml-out.ts';

/** Availability with the day it is expected, as the notes of List 65 want them together. */
export function writeAvailability(out: XmlOut, record: OnixRecord, house: OnixHouse): void {
  const life = lifeOf(record);
  out.leaf('ProductAvailability', availability(life, house.today));
  const expected = expectedOn(life, house.today);
  if (expected === null) return;
  out.open('SupplyDate');
  out.leaf('SupplyDateRole', '08');
  out.leaf('Date', onixDay(expected), ' dateformat="00"');
  out.close('SupplyDate');
}

/** One retail price; a price of nothing is an item free of charge (List 57 code 01), never an amount of 0. */
export function writePrice(out: XmlOut, price: OnixRecord['format']['prices'][number]): void {
  out.open('Price');
  out.leaf('PriceType', PRICE_TYPES[price.tax]);
  if (price.amountMinor === 0) out.leaf('UnpricedItemType', '01');
  else out.leaf('PriceAmount', amountText(price.amountMinor, price.currency));
  out.leaf('CurrencyCode', price.currency);
  out.close('Price');
}

/** Why there is no price (List 57): to be announced while it is to come, else the supplier tells. */
function unpriced(record: OnixRecord, house: OnixHouse): string {
  return availability(lifeOf(record), house.today) === '10' ? '02' : '04';
}

/** Prices, or why there are none. */
export function writePrices(out: XmlOut, record: OnixRecord, house: OnixHouse): void {
  const { prices } = record.format;
  if (prices.length === 0) out.leaf('UnpricedItemType', unpriced(record, house));
  for (const price of prices) writePrice(out, price);
}

/** Returns conditions by the BISAC indicator (List 66). */
export function writeReturns(out: XmlOut, code: string): void {
  out.open('ReturnsConditions');
  out.leaf('ReturnsCodeType', '02');
  out.leaf('ReturnsCode', code);
  out.close('ReturnsConditions');
}

/** Block 6: the press itself supplies resellers (List 93 code 01). */
export function writeSupply(out: XmlOut, record: OnixRecord, house: OnixHouse): void {
  out.open('ProductSupply');
  out.open('SupplyDetail');
  out.open('Supplier');
  out.leaf('SupplierRole', '01');
  out.leaf('SupplierName', house.sender);
  out.close('Supplier');
  if (record.returns) writeReturns(out, record.returns);
  writeAvailability(out, record, house);
  writePrices(out, record, house);
  out.close('SupplyDetail');
  out.close('ProductSupply');
}
