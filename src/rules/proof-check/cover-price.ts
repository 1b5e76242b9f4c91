import type { BarcodeFacts, CheckLine } from '../../contract/proof-checks/facts.ts';
import { coverLine } from './cover-line.ts';
import type { ProofRecord } from './record.ts';

/** Currency by the first digit (STANDARDS B4). */
const CURRENCY: Readonly<Record<string, string>> = {
  '0': 'GBP',
  '1': 'GBP',
  '3': 'AUD',
  '4': 'NZD',
  '5': 'USD',
  '6': 'CAD',
};
/** In US dollars 59999 stands for 99.99 and everything above; 90000 says that no price is given (STANDARDS B4). */
const TOP = '59999';
const TOP_MINOR = 9_999;
const NO_PRICE = '90000';

const LABEL = 'Price in the bar code';

/** '19.95 USD' */
const money = (minor: number, currency: string) => `${(minor / 100).toFixed(2)} ${currency}`;

/** The five-digit add-on against the recorded price in its currency; one that is not there claims nothing. */
export function priceLine(code: BarcodeFacts, record: ProofRecord): CheckLine {
  const { addOn, page, box } = code;
  const at = { page, box };
  if (addOn === null)
    return coverLine('barcode.price', LABEL, 'agreed', {
      expected: 'None needed',
      found: 'no add-on',
      ...at,
    });
  if (addOn === NO_PRICE)
    return coverLine('barcode.price', LABEL, 'agreed', {
      expected: 'None needed',
      found: `${addOn}: no price`,
      ...at,
    });
  const currency = CURRENCY[addOn[0] ?? ''];
  if (currency === undefined)
    return coverLine('barcode.price', LABEL, 'cannot tell', {
      found: addOn,
      advice: `${addOn} is no price but a sign of a publisher’s or the trade’s own; see that it is meant.`,
      ...at,
    });
  const recorded = record.prices.find((price) => price.currency === currency);
  const minor = Number(addOn.slice(1));
  const found = `${addOn}: ${addOn === TOP ? `${money(TOP_MINOR, currency)} or more` : money(minor, currency)}`;
  if (recorded === undefined)
    return coverLine('barcode.price', LABEL, 'differs', {
      expected: `no price in ${currency} on record`,
      found,
      advice: `Record the price in ${currency}, or have the add-on changed to ${NO_PRICE} or taken out.`,
      ...at,
    });
  const same = recorded.amountMinor === minor || (addOn === TOP && recorded.amountMinor >= TOP_MINOR);
  return coverLine('barcode.price', LABEL, same ? 'agreed' : 'differs', {
    expected: money(recorded.amountMinor, currency),
    found,
    advice: same
      ? ''
      : 'A shop that scans it would sell at the printed price; have the add-on drawn anew, or correct the record.',
    ...at,
  });
}
