import { z } from 'zod';
import { Refusal } from '../../contract/refusal.ts';

const amountText =
  'The price in the add-on must be more than nothing, in whole minor units such as cents: choose no price (90000) otherwise.';
const currencyText = 'Give the currency of the price as three capital letters, such as USD.';
const digitsText = 'The add-on takes exactly five digits.';

/** What stands in the five-digit add-on: a price, the sign for 'no price', or five digits of one's own. */
export const addOnChoice = z.discriminatedUnion(
  'kind',
  [
    z.object({
      kind: z.literal('price'),
      /** In minor units: 1995 is 19.95. */
      amountMinor: z.int(amountText).positive(amountText),
      currency: z.string(currencyText).regex(/^[A-Z]{3}$/, currencyText),
    }),
    z.object({ kind: z.literal('none') }),
    z.object({ kind: z.literal('digits'), digits: z.string(digitsText).regex(/^\d{5}$/, digitsText) }),
  ],
  'The add-on must be a price, no price, or five digits.',
);
export type AddOnChoice = z.output<typeof addOnChoice>;

/**
 * First digit by currency (STANDARDS B4). The tables give pounds both 0 and 1 without saying what sets them
 * apart; 0 alone is used here.
 */
const FIRST_DIGIT: ReadonlyMap<string, string> = new Map([
  ['USD', '5'],
  ['CAD', '6'],
  ['NZD', '4'],
  ['AUD', '3'],
  ['GBP', '0'],
]);

/** Four digits of minor units: 99.99 is the largest price that fits. */
const LARGEST_MINOR = 9999;

/** Says that no price is given (STANDARDS B4). */
const NO_PRICE = '90000';

/**
 * The five digits of an add-on: currency digit and four digits of minor units. In US dollars 59999 stands
 * for 99.99 and everything above; no such rule is known for the other currencies, so there more is refused.
 * @throws Refusal BAD_INPUT when the price has no form in five digits
 */
export function addOnDigits(choice: AddOnChoice): string {
  if (choice.kind === 'none') return NO_PRICE;
  if (choice.kind === 'digits') return choice.digits;
  const { amountMinor, currency } = choice;
  const first = FIRST_DIGIT.get(currency);
  if (first === undefined)
    throw new Refusal(
      'BAD_INPUT',
      `A price in ${currency} cannot stand in the add-on, which knows only ${[...FIRST_DIGIT.keys()].join(', ')}: choose one of these or no price (90000).`,
      'addOn.currency',
    );
  if (amountMinor > LARGEST_MINOR && currency !== 'USD')
    throw new Refusal(
      'BAD_INPUT',
      `${currency} ${(amountMinor / 100).toFixed(2)} cannot stand in the add-on, whose four digits end at 99.99: choose no price (90000).`,
      'addOn.amountMinor',
    );
  return first + String(Math.min(amountMinor, LARGEST_MINOR)).padStart(4, '0');
}

/** Advice that goes with a choice, one sentence each. */
export function addOnNotes(choice: AddOnChoice): string[] {
  if (choice.kind !== 'price') return [];
  const notes: string[] = [];
  if (choice.currency !== 'USD' && choice.currency !== 'CAD')
    notes.push(
      'Price add-ons are in use in the United States and Canada only; elsewhere leave the add-on out.',
    );
  if (choice.amountMinor > LARGEST_MINOR)
    notes.push('The add-on 59999 only says that the price is 99.99 US dollars or more.');
  return notes;
}
